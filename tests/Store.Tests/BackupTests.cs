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

        Assert.NotNull(SqliteBackup.Restore(backup, path, At));
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
            await store.PushAsync("lake", "phone", [.. Enumerable.Range(0, 200).Select(i => Note($"n{i}"))], default);
            database.BackUp(folder.File("b.db"));
        }

        byte[] bytes = await File.ReadAllBytesAsync(folder.File("b.db"));
        Array.Fill(bytes, (byte)0x5a, bytes.Length / 3, bytes.Length / 3);
        await File.WriteAllBytesAsync(folder.File("bad.db"), bytes);
        Assert.Throws<StorageException>(() => SqliteBackup.Restore(folder.File("bad.db"), path, At));
        Assert.Throws<StorageException>(() => SqliteBackup.Restore(folder.File("none.db"), path, At));
        await using SqliteDatabase still = SqliteDatabase.Open(path);
        Assert.Equal(200, (await (await OpenAsync(still)).AllAsync("lake", default)).Count);
    }

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
