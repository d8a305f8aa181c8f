using SecondShore.Records;
using SecondShore.TestKit;

namespace SecondShore.Store.Tests;

public class StorageFaultTests
{
    private static readonly DateTimeOffset At = new(2026, 10, 4, 17, 0, 0, TimeSpan.Zero);

    [Fact]
    public async Task A_full_database_says_so_keeps_what_it_acknowledged_and_goes_on_once_there_is_room()
    {
        using TempData folder = new();
        List<LakeRecord> acknowledged = [];
        await using (SqliteDatabase small = SqliteDatabase.Open(folder.File("d.db"), maxPages: 80))
            await FillAsync(small, acknowledged);
        await RequireAsync(folder.File("d.db"), acknowledged);
    }

    [Fact]
    public async Task A_full_disk_says_so_and_loses_nothing()
    {
        using TempData folder = new(onDisk: true);
        if (!Mount(folder.Path, "size=1m")) Assert.Skip("A small disk could not be mounted: run this test as root, with the command mount, where the system allows it.");
        try
        {
            List<LakeRecord> acknowledged = [];
            SqliteDatabase database = SqliteDatabase.Open(folder.File("d.db"));
            await FillAsync(database, acknowledged);
            await database.DisposeAsync();
            Mount(folder.Path, "remount,size=64m");
            await RequireAsync(folder.File("d.db"), acknowledged);
        }
        finally
        {
            Unmount(folder.Path);
        }
    }

    [Fact]
    public async Task A_disk_that_becomes_read_only_says_so_and_loses_nothing()
    {
        using TempData folder = new(onDisk: true);
        if (!Mount(folder.Path, "size=8m")) Assert.Skip("A disk could not be mounted to be made read-only: run this test as root, with the command mount, where the system allows it.");
        try
        {
            LakeRecord kept = Note("kept", 10);
            await using (SqliteDatabase database = SqliteDatabase.Open(folder.File("d.db")))
                await (await OpenAsync(database)).PushAsync("lake", "phone", [kept], default);
            Assert.True(Mount(folder.Path, "remount,ro"));
            StorageException folderFault = Assert.Throws<StorageException>(() => DataFolder.Take(folder.Path));
            Assert.Equal(StorageFault.ReadOnly, folderFault.Fault);
            Assert.Contains("may not be written", folderFault.Message, StringComparison.Ordinal);
            StorageException fileFault = Assert.Throws<StorageException>(() => SqliteDatabase.Open(folder.File("d.db")));
            Assert.True(fileFault.Fault is StorageFault.ReadOnly or StorageFault.Unreachable, fileFault.Message);
            Assert.True(Mount(folder.Path, "remount,rw"));
            await RequireAsync(folder.File("d.db"), [kept]);
        }
        finally
        {
            Unmount(folder.Path);
        }
    }

    [Fact]
    public async Task A_file_that_is_no_database_is_named_and_left_as_it_is()
    {
        using TempData folder = new();
        byte[] bytes = [.. Enumerable.Range(0, 8192).Select(i => (byte)(i * 7))];
        await File.WriteAllBytesAsync(folder.File("d.db"), bytes);
        StorageException damaged = Assert.Throws<StorageException>(() => SqliteDatabase.Open(folder.File("d.db")));
        Assert.Equal(StorageFault.Damaged, damaged.Fault);
        Assert.Equal(bytes, await File.ReadAllBytesAsync(folder.File("d.db")));
    }

    [Fact]
    public void A_data_folder_is_held_by_one_host_at_a_time()
    {
        using TempData folder = new();
        using (DataFolder.Take(folder.Path))
            Assert.Equal(StorageFault.Busy, Assert.Throws<StorageException>(() => DataFolder.Take(folder.Path)).Fault);
        DataFolder.Take(folder.Path).Dispose();
    }

    [Fact]
    public async Task Work_that_fails_takes_nothing_with_it_of_the_work_beside_it()
    {
        using TempData folder = new();
        await using SqliteDatabase database = SqliteDatabase.Open(folder.File("d.db"));
        RecordStore store = await OpenAsync(database);
        Task<PushAnswer>[] pushes = [.. Enumerable.Range(0, 50).Select(i => store.PushAsync(i % 5 == 0 ? "nowhere" : "lake", "phone", [Note($"n{i}", 10)], default))];
        await Task.WhenAll(pushes.Select(p => p.ContinueWith(_ => { }, TaskScheduler.Default)));
        Assert.Equal(10, pushes.Count(p => p.IsFaulted));
        Assert.Equal(40, (await store.AllAsync("lake", default)).Count);
    }

    private static async Task FillAsync(SqliteDatabase database, List<LakeRecord> acknowledged)
    {
        RecordStore store = await OpenAsync(database);
        StorageException? full = null;
        for (int i = 0; i < 2000 && full is null; i++)
        {
            LakeRecord[] batch = [.. Enumerable.Range(0, 4).Select(k => Note($"{i}/{k}", 800))];
            try
            {
                await store.PushAsync("lake", "phone", batch, default);
                acknowledged.AddRange(batch);
            }
            catch (StorageException e)
            {
                full = e;
            }
        }

        Assert.NotNull(full);
        Assert.Equal(StorageFault.Full, full.Fault);
        Assert.Contains("nothing of this was kept", full.Message, StringComparison.Ordinal);
        Assert.NotEmpty(acknowledged);
        Assert.Equal(acknowledged.Select(r => r.Id), (await store.AllAsync("lake", default)).Select(r => r.Id));
    }

    private static async Task RequireAsync(string path, List<LakeRecord> acknowledged)
    {
        await using SqliteDatabase database = SqliteDatabase.Open(path);
        RecordStore store = await OpenAsync(database);
        Assert.Equal(acknowledged, await store.AllAsync("lake", default));
        Assert.Equal(1, (await store.PushAsync("lake", "phone", [Note("after", 10)], default)).Added);
    }

    private static async Task<RecordStore> OpenAsync(SqliteDatabase database)
    {
        RecordStore store = new(database, TimeProvider.System, StoreQuota.Default);
        await store.OpenAsync(default);
        await store.AddLakeAsync("lake", "Lake", default);
        return store;
    }

    private static LakeRecord Note(string text, int length) =>
        LakeRecord.Make("note", At, null, false, $$"""{"note":"{{text}}","more":"{{new string('x', length)}}"}""");

    private static bool Mount(string path, string options) => Environment.UserName == "root" && OperatingSystem.IsLinux()
        && Programs.Runs("mount", "-t", "tmpfs", "-o", options, "tmpfs", path);

    private static void Unmount(string path) => Programs.Runs("umount", "-l", path);
}
