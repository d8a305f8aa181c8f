using SecondShore.Records;

namespace SecondShore.Store.Tests;

/// <summary>The real store on a real SQLite file, with power cuts, backups and restores.</summary>
internal sealed class SimulatedHost : IAsyncDisposable
{
    private readonly TempData _folder = new();
    private SqliteDatabase _database;
    private string _path;
    private int _life;
    private HashSet<string> _inBackup = [];
    private bool _hasBackup;

    private SimulatedHost()
    {
        _path = _folder.File("0.db");
        _database = SqliteDatabase.Open(_path);
        Store = new RecordStore(_database, Clock, StoreQuota.Default);
    }

    public RecordStore Store { get; private set; }

    /// <summary>Ids that a device was told are safe.</summary>
    public HashSet<string> Acknowledged { get; private set; } = new(StringComparer.Ordinal);

    /// <summary>Requests that will come once more.</summary>
    public List<IReadOnlyList<LakeRecord>> Late { get; } = [];

    public static async Task<SimulatedHost> StartAsync()
    {
        SimulatedHost host = new();
        await host.Store.OpenAsync(default);
        await host.Store.AddLakeAsync("lake", "Lake", default);
        return host;
    }

    /// <summary>The host's clock, which may be set wrong and put right again.</summary>
    public JumpingClock Clock { get; } = new();

    /// <summary>Pages of the database file that may still be taken: from now on the disk is full but for these. Null frees it.</summary>
    public async Task FillDiskAsync(int? pagesLeft)
    {
        long pages = new FileInfo(_path).Length / 4096;
        await _database.DisposeAsync();
        await StartOnAsync(_path, pagesLeft is int left ? (int)Math.Max(8, pages + left) : null);
    }

    /// <summary>The power goes: what the next life finds is what lay on the disk at this moment, log and all.</summary>
    public async Task CutPowerAsync()
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

    public async ValueTask DisposeAsync()
    {
        await _database.DisposeAsync();
        _folder.Dispose();
    }

    private async Task StartOnAsync(string path, int? maxPages = null)
    {
        _path = path;
        _database = SqliteDatabase.Open(path, maxPages: maxPages);
        Store = new RecordStore(_database, Clock, StoreQuota.Default);
        await Store.OpenAsync(default);
    }
}

/// <summary>A clock that is set wrong.</summary>
internal sealed class JumpingClock : TimeProvider
{
    /// <summary>How far off it is.</summary>
    public TimeSpan Off { get; set; }

    public override DateTimeOffset GetUtcNow() => TimeProvider.System.GetUtcNow() + Off;
}
