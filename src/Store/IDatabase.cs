namespace SecondShore.Store;

/// <summary>
/// The seam between what is stored and where: SQLite or PostgreSQL. The statements above it are written once, in what both
/// understand.
/// </summary>
public interface IDatabase : IAsyncDisposable
{
    /// <summary>What kind it is, for people.</summary>
    string Kind { get; }

    /// <summary>Types of this database that differ.</summary>
    SqlDialect Dialect { get; }

    /// <summary>Does work in a transaction of its own. When the task ends well, the work is on disk.</summary>
    /// <exception cref="StorageException">Nothing of the work was kept; the message says why.</exception>
    /// <param name="work">The work; may be run again by nobody but the caller.</param>
    /// <param name="cancel">Stops it before the commit.</param>
    /// <param name="holdsBytes">Bytes of memory that the work holds while it waits: only so many wait at once.</param>
    Task<T> WriteAsync<T>(Func<Work, Task<T>> work, CancellationToken cancel, long holdsBytes = 0);

    /// <summary>Reads one consistent state.</summary>
    /// <exception cref="StorageException">It cannot be read; the message says why.</exception>
    Task<T> ReadAsync<T>(Func<Work, Task<T>> work, CancellationToken cancel);
}

/// <summary>Words in which the databases differ.</summary>
/// <param name="Bytes">Type of a column of bytes.</param>
/// <param name="Counter">Type of a key that counts up by itself.</param>
/// <param name="StoreBytes">Query of the room that the whole store takes on its disk, bytes; what was freed and will be used again counts not.</param>
/// <param name="OneAtATime">Statement after which no other program migrates until the commit; empty where a write holds the whole file anyway.</param>
public sealed record SqlDialect(string Bytes, string Counter, string StoreBytes, string OneAtATime)
{
    /// <summary>SQLite's.</summary>
    public static SqlDialect Sqlite { get; } = new("blob", "integer primary key autoincrement",
        "select (c.page_count - f.freelist_count) * s.page_size from pragma_page_count() c, pragma_freelist_count() f, pragma_page_size() s", "");

    /// <summary>PostgreSQL's.</summary>
    public static SqlDialect Postgres { get; } = new("bytea", "bigint generated always as identity primary key",
        "select pg_database_size(current_database())", "select pg_advisory_xact_lock(5080)");
}
