using Microsoft.Data.Sqlite;

namespace SecondShore.Store;

/// <summary>Backup and restore of the SQLite file, by the database's own online backup.</summary>
public static class SqliteBackup
{
    /// <summary>Copies a database that others may be writing.</summary>
    /// <exception cref="StorageException">The copy cannot be written, or is not sound.</exception>
    public static void Copy(string connectionText, string path, string to)
    {
        string full = Path.GetFullPath(to), part = full + ".part";
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(full)!);
            File.Delete(part);
            using (SqliteConnection source = new(connectionText))
            using (SqliteConnection copy = new(Unpooled(part, SqliteOpenMode.ReadWriteCreate)))
            {
                source.Open();
                copy.Open();
                source.BackupDatabase(copy);
                // The copy is one file, and its journal is not left beside it.
                Scalar(copy, "pragma journal_mode = delete");
                Require(copy, part);
            }

            using (FileStream flush = new(part, FileMode.Open, FileAccess.ReadWrite)) flush.Flush(flushToDisk: true);
            File.Move(part, full, overwrite: true);
        }
        catch (SqliteException e)
        {
            throw SqliteFaults.Explain(e, e.SqliteErrorCode is 8 or 13 or 14 ? part : path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new StorageException(StorageFault.Unreachable, $"The backup {full} cannot be written: {e.Message} The database itself is untouched.", e);
        }
        finally
        {
            TryDelete(part);
        }
    }

    /// <summary>
    /// Puts a backup in the place of the database, which is kept beside it, and gives the store a new epoch, so that every
    /// device sends again what the backup lacks.
    /// </summary>
    /// <returns>Where the database was that stood there; null when there was none.</returns>
    /// <exception cref="StorageException">The backup is not sound; the database is untouched.</exception>
    public static string? Restore(string from, string path, DateTimeOffset now)
    {
        if (!File.Exists(from)) throw new StorageException(StorageFault.Unreachable, $"There is no backup {from}. Name the file that 'backup' wrote.");
        string part = path + ".restoring";
        string? kept = null;
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(path))!);
            File.Copy(from, part, overwrite: true);
            using (SqliteConnection copy = new(Unpooled(part, SqliteOpenMode.ReadWrite)))
            {
                copy.Open();
                Require(copy, from);
                Scalar(copy, "update store set value = $epoch where key = 'epoch'", Migrations.NewEpoch());
            }

            if (File.Exists(path))
            {
                // What the log still holds goes into the file that is kept.
                using (SqliteConnection old = new(Unpooled(path, SqliteOpenMode.ReadWrite)))
                {
                    old.Open();
                    try { Scalar(old, "pragma wal_checkpoint(truncate)"); }
                    catch (SqliteException) { /* Damaged, which may be why a backup is restored: it is kept with its log as it is. */ }
                }

                kept = FormattableString.Invariant($"{path}.before-restore-{now.UtcDateTime:yyyyMMddTHHmmss}");
                File.Move(path, kept, overwrite: true);
                foreach (string end in (string[])["-wal", "-shm"])
                    if (File.Exists(path + end)) File.Move(path + end, kept + end, overwrite: true);
            }

            File.Move(part, path);
            return kept;
        }
        catch (SqliteException e)
        {
            throw SqliteFaults.Explain(e, from);
        }
        finally
        {
            TryDelete(part);
        }
    }

    private static string Unpooled(string path, SqliteOpenMode mode) =>
        new SqliteConnectionStringBuilder { DataSource = path, Mode = mode, Pooling = false }.ToString();

    private static void Require(SqliteConnection connection, string path)
    {
        if (Scalar(connection, "pragma integrity_check") is not "ok" || Scalar(connection, "select value from store where key = 'form'") is null)
            throw new StorageException(StorageFault.Damaged, $"{path} is damaged, or no database of this program; it is not used.");
    }

    private static string? Scalar(SqliteConnection connection, string sql, string? epoch = null)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = sql;
        if (epoch is not null) command.Parameters.AddWithValue("$epoch", epoch);
        return command.ExecuteScalar() as string;
    }

    private static void TryDelete(string path)
    {
        try { File.Delete(path); }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException) { /* Left over; the next backup replaces it. */ }
    }
}
