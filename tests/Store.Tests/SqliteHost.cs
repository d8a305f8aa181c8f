namespace SecondShore.Store.Tests;

/// <summary>A host on a SQLite file, with backups and restores.</summary>
internal sealed class SqliteHost : SimulatedHost
{
    private readonly TempData _folder = new();
    private SqliteDatabase _database;
    private string _path;
    private int _life;
    private HashSet<string> _inBackup = [];
    private bool _hasBackup;

    private SqliteHost()
    {
        _path = _folder.File("0.db");
        _database = SqliteDatabase.Open(_path);
    }

    public static async Task<SqliteHost> StartAsync()
    {
        SqliteHost host = new();
        await host.BeginAsync(host._database);
        return host;
    }

    /// <summary>Pages of the database file that may still be taken: from now on the disk is full but for these. Null frees it.</summary>
    public override async Task FillDiskAsync(int? pagesLeft)
    {
        long pages = new FileInfo(_path).Length / 4096;
        await _database.DisposeAsync();
        await StartOnAsync(_path, pagesLeft is int left ? (int)Math.Max(8, pages + left) : null);
    }

    /// <summary>What the next life finds is the file as it lay there, log and all.</summary>
    public override async Task CutPowerAsync()
    {
        string next = _folder.File($"{++_life}.db");
        File.Copy(_path, next);
        if (File.Exists(_path + "-wal")) File.Copy(_path + "-wal", next + "-wal");
        await _database.DisposeAsync();
        await StartOnAsync(next);
    }

    public void BackUp()
    {
        _database.BackUp(_folder.File("backup.db"));
        (_inBackup, _hasBackup) = ([.. Acknowledged], true);
    }

    /// <summary>The last backup takes the place of the database; what was acknowledged since must come again from the devices.</summary>
    public async Task RestoreAsync()
    {
        if (!_hasBackup) return;
        await _database.DisposeAsync();
        SqliteBackup.Restore(_folder.File("backup.db"), _path, DateTimeOffset.UnixEpoch.AddSeconds(_life++));
        Acknowledged = [.. _inBackup];
        await StartOnAsync(_path);
    }

    public override async ValueTask DisposeAsync()
    {
        await _database.DisposeAsync();
        _folder.Dispose();
    }

    private Task StartOnAsync(string path, int? maxPages = null)
    {
        (_path, _database) = (path, SqliteDatabase.Open(path, maxPages: maxPages));
        return OpenAsync(_database);
    }
}
