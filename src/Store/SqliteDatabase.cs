using System.Threading.Channels;
using Microsoft.Data.Sqlite;

namespace SecondShore.Store;

/// <summary>
/// SQLite in one file. One writer takes what is waiting into one transaction, so that many small writes share one
/// flush of the disk; each is answered only after that flush. Readers go on beside it (WAL).
/// </summary>
public sealed class SqliteDatabase : IDatabase
{
    /// <summary>Most bytes of memory that writes hold while they wait.</summary>
    public static readonly long MaxWaitingBytes = 64 << 20;

    private static readonly int MaxWaiting = 4096;
    private static readonly int MaxJobsPerTransaction = 256;

    private readonly string _path;
    private readonly string _connectionText;
    private readonly SqliteConnection _writer;
    private readonly Channel<WriteJob> _jobs = Channel.CreateBounded<WriteJob>(new BoundedChannelOptions(MaxWaiting) { SingleReader = true });
    private readonly WaitingBytes _room = new(MaxWaitingBytes);
    private readonly Task _writing;

    private SqliteDatabase(string path, string connectionText, SqliteConnection writer)
    {
        (_path, _connectionText, _writer) = (path, connectionText, writer);
        _writing = Task.Run(WriteLoopAsync);
    }

    /// <inheritdoc/>
    public string Kind => $"SQLite in {_path}";

    /// <inheritdoc/>
    public SqlDialect Dialect => SqlDialect.Sqlite;

    /// <summary>Opens or makes the file.</summary>
    /// <param name="path">The file.</param>
    /// <param name="maxPages">Most pages of 4 KiB the file may grow to; null for as much as the disk gives.</param>
    /// <exception cref="StorageException">It cannot be opened, made or written.</exception>
    public static SqliteDatabase Open(string path, long? maxPages = null)
    {
        string text = new SqliteConnectionStringBuilder { DataSource = path, Mode = SqliteOpenMode.ReadWriteCreate, Pooling = true, DefaultTimeout = 10 }.ToString();
        SqliteConnection writer = new(text + ";Pooling=False");
        try
        {
            PrivateFiles.Make(path);
            writer.Open();
            // FULL: a commit is answered only after the log is on the platter, not merely handed to the system.
            Run(writer, "pragma journal_mode = wal", "pragma synchronous = full", "pragma foreign_keys = on");
            if (maxPages is not null) Run(writer, $"pragma max_page_count = {maxPages}");
            return new SqliteDatabase(path, text, writer);
        }
        catch (SqliteException e)
        {
            writer.Dispose();
            throw SqliteFaults.Explain(e, path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            writer.Dispose();
            throw new StorageException(StorageFault.Unreachable, $"{path} cannot be opened or made. Check that its folder exists and may be written by the account that runs the host.", e);
        }
    }

    /// <inheritdoc/>
    public async Task<T> WriteAsync<T>(Func<Work, Task<T>> work, CancellationToken cancel, long holdsBytes = 0)
    {
        using WaitingBytes.Room room = _room.Take(holdsBytes);
        WriteJob<T> job = new(work, cancel);
        if (!_jobs.Writer.TryWrite(job)) throw new StorageException(StorageFault.Busy, "Too much is waiting to be written. Try again in a moment.");
        return await job.Done.ConfigureAwait(false);
    }

    /// <inheritdoc/>
    public async Task<T> ReadAsync<T>(Func<Work, Task<T>> work, CancellationToken cancel)
    {
        try
        {
            using SqliteConnection connection = new(_connectionText);
            connection.Open();
            using SqliteTransaction transaction = connection.BeginTransaction(deferred: true);
            return await work(new Work(connection, transaction, cancel)).ConfigureAwait(false);
        }
        catch (SqliteException e)
        {
            throw SqliteFaults.Explain(e, _path);
        }
    }

    /// <summary>The epoch of the database that lies at a path now, asked by a connection of its own; null for none.</summary>
    public static string? EpochAt(string path)
    {
        try
        {
            using SqliteConnection connection = new(new SqliteConnectionStringBuilder { DataSource = path, Mode = SqliteOpenMode.ReadWrite, Pooling = false, DefaultTimeout = 5 }.ToString());
            connection.Open();
            using SqliteCommand command = connection.CreateCommand();
            command.CommandText = "select value from store where key = 'epoch'";
            return command.ExecuteScalar() as string;
        }
        catch (SqliteException)
        {
            return null;
        }
    }

    /// <summary>Copies the database as it stands between two commits, while others go on, into a file that appears only when whole.</summary>
    /// <exception cref="StorageException">The copy cannot be written, or is not sound.</exception>
    public void BackUp(string to) => SqliteBackup.Copy(_connectionText, _path, to);

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        _jobs.Writer.TryComplete();
        await _writing.ConfigureAwait(false);
        _writer.Dispose();
        using SqliteConnection pooled = new(_connectionText);
        SqliteConnection.ClearPool(pooled);
    }

    private static void Run(SqliteConnection connection, params ReadOnlySpan<string> statements)
    {
        foreach (string statement in statements)
        {
            using SqliteCommand command = connection.CreateCommand();
            command.CommandText = statement;
            command.ExecuteNonQuery();
        }
    }

    private async Task WriteLoopAsync()
    {
        List<WriteJob> batch = [];
        while (await _jobs.Reader.WaitToReadAsync().ConfigureAwait(false))
        {
            batch.Clear();
            while (batch.Count < MaxJobsPerTransaction && _jobs.Reader.TryRead(out WriteJob? job)) batch.Add(job);
            try
            {
                await RunTogetherAsync(batch).ConfigureAwait(false);
                foreach (WriteJob job in batch) job.Answer();
            }
            catch (SqliteException e)
            {
                StorageException fault = SqliteFaults.Explain(e, _path);
                foreach (WriteJob job in batch) job.Fail(fault);
            }
            catch (Exception e) when (e is not OutOfMemoryException)
            {
                foreach (WriteJob job in batch) job.Fail(e);
            }
        }
    }

    private async Task RunTogetherAsync(List<WriteJob> batch)
    {
        using SqliteTransaction transaction = _writer.BeginTransaction(deferred: false);
        foreach (WriteJob job in batch)
        {
            transaction.Save("job");
            try
            {
                await job.RunAsync(_writer, transaction).ConfigureAwait(false);
                transaction.Release("job");
            }
            catch (SqliteException e) when (SqliteFaults.EndsTransaction(e))
            {
                throw;
            }
            catch (Exception e) when (e is not OutOfMemoryException)
            {
                // Only this job's own fault: the others stand.
                transaction.Rollback("job");
                transaction.Release("job");
                job.Fail(e is SqliteException s ? SqliteFaults.Explain(s, _path) : e);
            }
        }

        transaction.Commit();
    }
}
