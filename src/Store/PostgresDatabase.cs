using Npgsql;

namespace SecondShore.Store;

/// <summary>PostgreSQL, for a host that serves many: a transaction for each piece of work, connections from a pool.</summary>
public sealed class PostgresDatabase : IDatabase
{
    private readonly NpgsqlDataSource _source;
    private readonly WaitingBytes _room = new(SqliteDatabase.MaxWaitingBytes);

    private PostgresDatabase(NpgsqlDataSource source, string kind) => (_source, Kind) = (source, kind);

    /// <inheritdoc/>
    public string Kind { get; }

    /// <inheritdoc/>
    public SqlDialect Dialect => SqlDialect.Postgres;

    /// <summary>Prepares the pool; nothing is opened yet.</summary>
    /// <param name="connectionText">Npgsql's connection string.</param>
    /// <exception cref="StorageException">The text is no connection string.</exception>
    public static PostgresDatabase Open(string connectionText)
    {
        try
        {
            NpgsqlConnectionStringBuilder text = new(connectionText) { Timeout = 10, CommandTimeout = 30, MaxAutoPrepare = 40 };
            // The password stays out of every message.
            return new PostgresDatabase(NpgsqlDataSource.Create(text), $"PostgreSQL database {text.Database} at {text.Host}");
        }
        catch (ArgumentException e)
        {
            throw new StorageException(StorageFault.Unreachable, "The connection to PostgreSQL is not written as key=value pairs, such as 'Host=127.0.0.1;Database=shore;Username=shore'.", e);
        }
    }

    /// <inheritdoc/>
    public async Task<T> WriteAsync<T>(Func<Work, Task<T>> work, CancellationToken cancel, long holdsBytes = 0)
    {
        using WaitingBytes.Room room = _room.Take(holdsBytes);
        try
        {
            await using NpgsqlConnection connection = await _source.OpenConnectionAsync(cancel).ConfigureAwait(false);
            await using NpgsqlTransaction transaction = await connection.BeginTransactionAsync(cancel).ConfigureAwait(false);
            T result = await work(new Work(connection, transaction, cancel)).ConfigureAwait(false);
            await transaction.CommitAsync(CancellationToken.None).ConfigureAwait(false);
            return result;
        }
        catch (NpgsqlException e)
        {
            throw Explain(e);
        }
    }

    /// <inheritdoc/>
    public async Task<T> ReadAsync<T>(Func<Work, Task<T>> work, CancellationToken cancel)
    {
        try
        {
            await using NpgsqlConnection connection = await _source.OpenConnectionAsync(cancel).ConfigureAwait(false);
            await using NpgsqlTransaction transaction = await connection.BeginTransactionAsync(System.Data.IsolationLevel.RepeatableRead, cancel).ConfigureAwait(false);
            return await work(new Work(connection, transaction, cancel)).ConfigureAwait(false);
        }
        catch (NpgsqlException e)
        {
            throw Explain(e);
        }
    }

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => _source.DisposeAsync();

    private StorageException Explain(NpgsqlException e) => e is PostgresException { SqlState: var state } ? state switch
    {
        PostgresErrorCodes.DiskFull or PostgresErrorCodes.OutOfMemory => new StorageException(StorageFault.Full, $"There is no room left in the {Kind}: nothing of this was kept. Make room and try again.", e),
        PostgresErrorCodes.ReadOnlySqlTransaction => new StorageException(StorageFault.ReadOnly, $"The {Kind} may not be written: nothing of this was kept.", e),
        PostgresErrorCodes.TooManyConnections or PostgresErrorCodes.DeadlockDetected or PostgresErrorCodes.SerializationFailure => new StorageException(StorageFault.Busy, $"The {Kind} is busy. Try again in a moment.", e),
        _ => new StorageException(StorageFault.Unreachable, $"The {Kind} refused (code {state}). Look into its log.", e),
    }
    : new StorageException(StorageFault.Unreachable, $"The {Kind} cannot be reached. Check that it runs and that its address, user and password are right.", e);
}
