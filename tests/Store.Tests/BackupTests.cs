using System.Runtime.Versioning;
using SecondShore.Records;

namespace SecondShore.Store.Tests;

public class BackupTests
{
    private static readonly DateTimeOffset At = new(2026, 10, 4, 17, 0, 0, TimeSpan.Zero);

    [Fact]
    public async Task A_backup_taken_under_load_restores_to_exactly_what_was_acknowledged_at_one_moment()
    {
        using TempData folder = new();
        string path = folder.File("d.db"), backup = folder.File("backup/b.db");
        HashSet<string> before, sent = [];
        List<string[]> pushes = [];
        await using (SqliteDatabase database = SqliteDatabase.Open(path))
        {
            RecordStore store = await OpenAsync(database);
            HashSet<string> acknowledged = [];
            using CancellationTokenSource stop = new();
            Task[] load = [.. Enumerable.Range(0, 4).Select(device => Task.Run(async () =>
            {
                for (int i = 0; !stop.IsCancellationRequested; i++)
                {
                    LakeRecord[] batch = [.. Enumerable.Range(0, 5).Select(k => Note($"{device}/{i}/{k}"))];
                    lock (sent)
                    {
                        sent.UnionWith(batch.Select(r => r.Id));
                        pushes.Add([.. batch.Select(r => r.Id)]);
                    }

                    await store.PushAsync("lake", $"d{device}", batch, default);
                    lock (acknowledged) acknowledged.UnionWith(batch.Select(r => r.Id));
                }
            }))];
            while (true)
            {
                lock (acknowledged) if (acknowledged.Count > 500) break;
                await Task.Yield();
            }

            lock (acknowledged) before = [.. acknowledged];
            await Task.Run(() => database.BackUp(backup));
            await stop.CancelAsync();
            await Task.WhenAll(load);
        }

        Assert.NotNull(SqliteBackup.Restore(backup, path, At).Kept);
        await using SqliteDatabase restored = SqliteDatabase.Open(path);
        RecordStore again = await OpenAsync(restored);
        HashSet<string> kept = [.. (await again.AllAsync("lake", default)).Select(r => r.Id)];
        Assert.Subset(kept, before);
        Assert.Subset(sent, kept);
        Assert.All(pushes, p => Assert.True(p.All(kept.Contains) || !p.Any(kept.Contains), "A push was torn by the backup."));
        // Commits up to one moment and none after it: no number is missing, and none beyond the count.
        long last = await restored.ReadAsync(work => work.FirstAsync<long>("select max(seq) from records"), default);
        Assert.Equal(kept.Count, last);
    }

    [Fact]
    public async Task After_a_restore_the_epoch_is_new_and_a_device_sends_again_what_the_backup_lacks()
    {
        using TempData folder = new();
        string path = folder.File("d.db");
        SimulatedDevice device = new("phone", TimeSpan.Zero);
        string epoch;
        await using (SqliteDatabase database = SqliteDatabase.Open(path))
        {
            RecordStore store = await OpenAsync(database);
            epoch = store.Epoch;
            device.Make(At, new Random(1));
            await SyncRun.RunAsync(device, new DirectWire(store));
            database.BackUp(folder.File("b.db"));
            device.Make(At.AddMinutes(1), new Random(2));
            await SyncRun.RunAsync(device, new DirectWire(store));
        }

        SqliteBackup.Restore(folder.File("b.db"), path, At);
        await using SqliteDatabase restored = SqliteDatabase.Open(path);
        RecordStore again = await OpenAsync(restored);
        Assert.NotEqual(epoch, again.Epoch);
        Assert.Single(await again.AllAsync("lake", default));
        await SyncRun.RunAsync(device, new DirectWire(again));
        Assert.Equal(device.Disk.Keys.Order(), (await again.AllAsync("lake", default)).Select(r => r.Id).Order());
    }

    [Fact]
    public async Task A_damaged_backup_is_refused_and_the_database_stays()
    {
        using TempData folder = new();
        string path = folder.File("d.db");
        await using (SqliteDatabase database = SqliteDatabase.Open(path))
        {
            RecordStore store = await OpenAsync(database);
            await store.PushAsync("lake", "phone", [.. Enumerable.Range(0, 2_000).Select(i => Note($"n{i}"))], default);
            database.BackUp(folder.File("b.db"));
        }

        byte[] bytes = await File.ReadAllBytesAsync(folder.File("b.db"));
        // Where nothing but records lies: only a look at every page finds it.
        Array.Fill(bytes, (byte)0x5a, bytes.Length * 6 / 10, bytes.Length / 10);
        await File.WriteAllBytesAsync(folder.File("bad.db"), bytes);
        Assert.Throws<StorageException>(() => SqliteBackup.Restore(folder.File("bad.db"), path, At));
        Assert.Throws<StorageException>(() => SqliteBackup.Restore(folder.File("none.db"), path, At));
        await using SqliteDatabase still = SqliteDatabase.Open(path);
        Assert.Equal(2_000, (await (await OpenAsync(still)).AllAsync("lake", default)).Count);
    }

    [Theory]
    [InlineData("second-shore.db")]
    [InlineData("SECOND-SHORE.DB")]
    [InlineData("second-shore.db-wal")]
    [InlineData("second-shore.db-shm")]
    [InlineData("host.lock")]
    [InlineData("link/second-shore.db")]
    [InlineData("link/second-shore.db-wal")]
    [InlineData("named.db")]
    public async Task A_backup_onto_the_database_or_a_file_of_the_host_is_refused_while_it_runs_and_nothing_is_lost(string target)
    {
        using TempData folder = new();
        string path = folder.File("second-shore.db");
        if (target.StartsWith("link", StringComparison.Ordinal)) Directory.CreateSymbolicLink(folder.File("link"), folder.Path);
        if (target == "named.db") File.CreateSymbolicLink(folder.File(target), path);
        List<LakeRecord> acknowledged = [];
        await using (SqliteDatabase database = SqliteDatabase.Open(path))
        {
            RecordStore store = await OpenAsync(database);
            await FillAsync("before");
            // From a connection of its own, as the console's.
            StorageException refused = Assert.Throws<StorageException>(() => SqliteBackup.Copy($"Data Source={path};Mode=ReadWrite;Pooling=False", path, folder.File(target)));
            Assert.Contains("nothing was written", refused.Message, StringComparison.Ordinal);
            await FillAsync("after");
            Assert.Empty(Directory.GetFiles(folder.Path, "*.part*"));

            async Task FillAsync(string when)
            {
                for (int i = 0; i < 20; i++)
                {
                    LakeRecord[] batch = [.. Enumerable.Range(0, 10).Select(k => Note($"{when}/{i}/{k}"))];
                    await store.PushAsync("lake", "phone", batch, default);
                    acknowledged.AddRange(batch);
                }
            }
        }

        await using SqliteDatabase again = SqliteDatabase.Open(path);
        Assert.Equal(acknowledged, await (await OpenAsync(again)).AllAsync("lake", default));
    }

    [Fact]
    public async Task What_was_revoked_since_the_backup_stays_revoked_and_its_codes_hold_no_more()
    {
        using TempData folder = new();
        string path = folder.File("d.db"), code, token, kept;
        await using (SqliteDatabase database = SqliteDatabase.Open(path))
        {
            await OpenAsync(database);
            DeviceStore devices = new(database, TimeProvider.System);
            (string lost, token) = (await devices.PairAsync(await devices.NewCodeAsync(new PairingGrant(true, null, true), default), "lost phone", "", default))!.Value;
            (_, kept) = (await devices.PairAsync(await devices.NewCodeAsync(new PairingGrant(true, null, true), default), "laptop", "", default))!.Value;
            code = await devices.NewCodeAsync(new PairingGrant(true, null, true), default);
            database.BackUp(folder.File("b.db"));
            Assert.True(await devices.RevokeAsync(lost, "console", "", default));
        }

        Restored restored = SqliteBackup.Restore(folder.File("b.db"), path, At);
        Assert.Single(restored.Devices.StillRevoked);
        Assert.Contains("laptop", Assert.Single(restored.Devices.Hold), StringComparison.Ordinal);
        Assert.True(restored.Devices.Known);
        await using (SqliteDatabase again = SqliteDatabase.Open(path))
        {
            DeviceStore devices = new(again, TimeProvider.System);
            Assert.Null(await devices.FindAsync(token, default));
            Assert.NotNull(await devices.FindAsync(kept, default));
            Assert.Null(await devices.PairAsync(code, "late", "", default));
        }

        // Where nobody knows any more what was revoked, the devices that are let in are named.
        Restored elsewhere = SqliteBackup.Restore(folder.File("b.db"), folder.File("elsewhere.db"), At);
        Assert.False(elsewhere.Devices.Known);
        Assert.Equal(2, elsewhere.Devices.Hold.Count);
    }

    [Fact]
    public async Task A_backup_of_a_newer_program_is_refused_and_the_database_stays()
    {
        using TempData folder = new();
        await using (SqliteDatabase database = SqliteDatabase.Open(folder.File("d.db")))
        {
            await OpenAsync(database);
            await database.WriteAsync(work => work.DoAsync("update store set value = '99' where key = 'form'"), default);
            database.BackUp(folder.File("b.db"));
            await database.WriteAsync(work => work.DoAsync($"update store set value = '{Migrations.Current}' where key = 'form'"), default);
        }

        Assert.Equal(StorageFault.Newer, Assert.Throws<StorageException>(() => SqliteBackup.Restore(folder.File("b.db"), folder.File("d.db"), At)).Fault);
        await using SqliteDatabase still = SqliteDatabase.Open(folder.File("d.db"));
        await OpenAsync(still);
    }

    [UnsupportedOSPlatform("windows")]
    [Fact]
    public async Task What_the_host_keeps_is_closed_to_other_accounts_whoever_makes_it()
    {
        if (OperatingSystem.IsWindows()) Assert.Skip("This system has no such file modes; run it on Linux or macOS.");
        using TempData folder = new();
        string data = folder.File("new/data"), path = Path.Combine(data, "second-shore.db"), backup = folder.File("kept/b.db");
        PrivateFiles.MakeFolder(data);
        await using (SqliteDatabase database = SqliteDatabase.Open(path))
        {
            await (await OpenAsync(database)).PushAsync("lake", "phone", [Note("a")], default);
            database.BackUp(backup);
            foreach (string file in Directory.GetFiles(data).Append(backup)) Assert.Equal(Own, File.GetUnixFileMode(file));
        }

        Assert.Equal(Own | UnixFileMode.UserExecute, File.GetUnixFileMode(data));
        Assert.Equal(Own | UnixFileMode.UserExecute, File.GetUnixFileMode(folder.File("kept")));
        // A database that an earlier version left open is closed.
        File.SetUnixFileMode(path, Own | UnixFileMode.OtherRead | UnixFileMode.GroupRead);
        File.SetUnixFileMode(backup, Own | UnixFileMode.OtherRead);
        await using (SqliteDatabase again = SqliteDatabase.Open(path)) Assert.Equal(Own, File.GetUnixFileMode(path));
        SqliteBackup.Restore(backup, path, At);
        Assert.Equal(Own, File.GetUnixFileMode(path));
    }

    [Fact]
    public async Task A_backup_that_fails_leaves_nothing_behind()
    {
        using TempData folder = new();
        await using SqliteDatabase database = SqliteDatabase.Open(folder.File("d.db"));
        await OpenAsync(database);
        Directory.CreateDirectory(folder.File("out/b.db"));
        Assert.Throws<StorageException>(() => database.BackUp(folder.File("out/b.db")));
        Assert.Equal([folder.File("out/b.db")], Directory.GetFileSystemEntries(folder.File("out")));
    }

    private static UnixFileMode Own => UnixFileMode.UserRead | UnixFileMode.UserWrite;

    private static async Task<RecordStore> OpenAsync(SqliteDatabase database)
    {
        RecordStore store = new(database, TimeProvider.System, StoreQuota.Default);
        await store.OpenAsync(default);
        await store.AddLakeAsync("lake", "Lake", default);
        return store;
    }

    private static LakeRecord Note(string text) => LakeRecord.Make("note", At, null, false, $$"""{"note":"{{text}}"}""");

    private sealed class DirectWire(RecordStore store) : IHostRecords
    {
        public Task<PushAnswer> PushAsync(PushRequest request, CancellationToken cancel) => store.PushAsync("lake", "phone", request.Records, cancel);

        public Task<PullAnswer> PullAsync(string epoch, long cursor, CancellationToken cancel) => store.PullAsync("lake", epoch, cursor, cancel);
    }
}
