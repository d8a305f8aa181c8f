using System.Globalization;
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
            PrivateFiles.MakeFolder(Path.GetDirectoryName(full)!);
            RequireElsewhere(path, full);
            DeleteWithJournals(part);
            PrivateFiles.Make(part);
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
            throw new StorageException(StorageFault.Unreachable, $"The backup {full} cannot be written: its folder may be missing, full, or closed to this account. The database itself is untouched.", e);
        }
        finally
        {
            DeleteWithJournals(part);
        }
    }

    // The database itself, its journals and the host's own files, by whatever links the folder is called: to put a copy in the place
    // of one of them destroys what a running host writes.
    private static void RequireElsewhere(string path, string to)
    {
        string database = Path.GetFullPath(path), name = Path.GetFileName(to);
        string[] own = [.. ((string[])["", "-wal", "-shm", "-journal"]).Select(end => Path.GetFileName(database) + end), "host.lock", "host.key"];
        bool isOwn = own.Contains(name, StringComparer.OrdinalIgnoreCase) || own.Contains(name + ".part", StringComparer.OrdinalIgnoreCase);
        if ((isOwn && PrivateFiles.IsSameFolder(Path.GetDirectoryName(to)!, Path.GetDirectoryName(database)!)) || LeadsTo(to, database))
            throw new StorageException(StorageFault.Unreachable, $"{to} is the database itself, or a file that the host needs: nothing was written. Name another file for the backup.");
    }

    // A link that is called otherwise. (A second name of the same file does no harm: the copy takes that name from it, and the file stays.)
    private static bool LeadsTo(string to, string database)
    {
        FileInfo target = new(to);
        if (target.LinkTarget is not null && target.ResolveLinkTarget(returnFinalTarget: true) is { } final)
            return PrivateFiles.IsSameFolder(Path.GetDirectoryName(final.FullName)!, Path.GetDirectoryName(database)!) && string.Equals(final.Name, Path.GetFileName(database), StringComparison.OrdinalIgnoreCase);
        return false;
    }

    /// <summary>
    /// Puts a backup in the place of the database, which is kept beside it, and gives the store a new epoch, so that every
    /// device sends again what the backup lacks. What was revoked since the backup stays revoked, and no pairing code of it holds.
    /// </summary>
    /// <exception cref="StorageException">The backup is not sound, or of a newer program; the database is untouched.</exception>
    public static Restored Restore(string from, string path, DateTimeOffset now)
    {
        if (!File.Exists(from)) throw new StorageException(StorageFault.Unreachable, $"There is no backup {from}. Name the file that 'backup' wrote.");
        string part = path + ".restoring";
        string? kept = null;
        try
        {
            PrivateFiles.MakeFolder(Path.GetDirectoryName(Path.GetFullPath(path))!);
            DeleteWithJournals(part);
            File.Copy(from, part, overwrite: true);
            PrivateFiles.Make(part);
            RestoredDevices devices;
            using (SqliteConnection copy = new(Unpooled(part, SqliteOpenMode.ReadWrite)))
            {
                copy.Open();
                Require(copy, from);
                RequireKnownForm(copy, from);
                Scalar(copy, "update store set value = $epoch where key = 'epoch'", Migrations.NewEpoch());
                devices = RestoredDevices.Settle(copy, path, now);
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
            return new Restored(kept, devices);
        }
        catch (SqliteException e)
        {
            throw SqliteFaults.Explain(e, from);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new StorageException(StorageFault.Unreachable, $"{from} cannot be put in the place of {path}: a file there cannot be read or written. Look at the rights of both.", e);
        }
        finally
        {
            DeleteWithJournals(part);
        }
    }

    private static string Unpooled(string path, SqliteOpenMode mode) =>
        new SqliteConnectionStringBuilder { DataSource = path, Mode = mode, Pooling = false }.ToString();

    private static void Require(SqliteConnection connection, string path)
    {
        if (Scalar(connection, "pragma integrity_check") is not "ok" || Scalar(connection, "select value from store where key = 'form'") is null)
            throw new StorageException(StorageFault.Damaged, $"{path} is damaged, or no database of this program; it is not used.");
    }

    private static void RequireKnownForm(SqliteConnection connection, string path)
    {
        if (!int.TryParse(Scalar(connection, "select value from store where key = 'form'"), NumberStyles.None, CultureInfo.InvariantCulture, out int form) || form > Migrations.Current)
            throw new StorageException(StorageFault.Newer, $"{path} is of a newer program than this one, which knows forms up to {Migrations.Current}; it is not used. Restore it with the program that wrote it.");
    }

    private static string? Scalar(SqliteConnection connection, string sql, string? epoch = null)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = sql;
        if (epoch is not null) command.Parameters.AddWithValue("$epoch", epoch);
        return command.ExecuteScalar() as string;
    }

    // A copy that failed leaves journals of its own.
    private static void DeleteWithJournals(string path)
    {
        foreach (string end in (string[])["", "-journal", "-wal", "-shm"])
        {
            try { File.Delete(path + end); }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException) { /* Left over; the next backup replaces it. */ }
        }
    }
}

/// <summary>What a restore did.</summary>
/// <param name="Kept">Where the database is that stood there; null when there was none.</param>
/// <param name="Devices">What became of the devices.</param>
public sealed record Restored(string? Kept, RestoredDevices Devices);
