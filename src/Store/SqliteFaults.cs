using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace SecondShore.Store;

/// <summary>SQLite's error numbers in words.</summary>
public static class SqliteFaults
{
    /// <summary>The fault in one sentence.</summary>
    public static StorageException Explain(SqliteException e, string path) => e.SqliteErrorCode switch
    {
        raw.SQLITE_FULL => new StorageException(StorageFault.Full, $"There is no room left for {path}: nothing of this was kept. Make room on the disk and try again.", e),
        raw.SQLITE_READONLY => new StorageException(StorageFault.ReadOnly, $"{path} may not be written: nothing of this was kept. Make the disk and the file writable for the account that runs the host.", e),
        raw.SQLITE_CANTOPEN => new StorageException(StorageFault.Unreachable, $"{path} cannot be opened or made. Check that its folder exists and may be written by the account that runs the host.", e),
        raw.SQLITE_BUSY or raw.SQLITE_LOCKED => new StorageException(StorageFault.Busy, $"{path} is held by another program. Try again in a moment.", e),
        raw.SQLITE_CORRUPT or raw.SQLITE_NOTADB => new StorageException(StorageFault.Damaged, $"{path} is damaged, or no database of this program. Restore the last backup with 'restore'; devices send again what it lacks.", e),
        raw.SQLITE_IOERR => new StorageException(StorageFault.Full, $"The disk of {path} refused to write or read: nothing of this was kept. Look at its room and its health.", e),
        _ => new StorageException(StorageFault.Unreachable, $"{path} cannot be used just now (SQLite error {e.SqliteErrorCode}): {e.Message}", e),
    };

    /// <summary>Whether the whole transaction is lost, and not only the statement.</summary>
    public static bool EndsTransaction(SqliteException e) => e.SqliteErrorCode
        is raw.SQLITE_FULL or raw.SQLITE_IOERR or raw.SQLITE_NOMEM or raw.SQLITE_BUSY or raw.SQLITE_INTERRUPT or raw.SQLITE_READONLY or raw.SQLITE_CORRUPT;
}
