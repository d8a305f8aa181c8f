using SecondShore.Records;

namespace SecondShore.Store.Tests;

/// <summary>What both databases must do, run on each.</summary>
public abstract class RecordStoreTests
{
    protected static readonly DateTimeOffset At = new(2026, 10, 4, 17, 0, 0, TimeSpan.Zero);

    protected abstract Task<IStoreUnderTest> NewAsync();

    [Fact]
    public async Task What_is_pushed_is_pulled_once_letter_by_letter_and_in_order()
    {
        using IStoreUnderTest under = await NewAsync();
        await using IDatabase database = under.Open();
        RecordStore store = await OpenAsync(database);
        LakeRecord[] records = [Note("it's 9.5 m, \"haze\" \u20ac \U0001F41F \\ \n", 2), Note("b", 1), LakeRecord.Make("note", At, Note("b", 1).Id, true, "{}")];
        Assert.Equal(3, (await store.PushAsync("lake", "phone", records, default)).Added);
        PushAnswer again = await store.PushAsync("lake", "laptop", [records[1], records[0], Note("new", 5)], default);
        Assert.Equal((1, 2), (again.Added, again.Known));
        Assert.Equal([.. records, Note("new", 5)], await store.AllAsync("lake", default));
    }

    [Theory]
    [InlineData(500, 500)]
    [InlineData(60, 60)]
    [InlineData(0, 1)]
    [InlineData(100_000, 500)]
    public async Task Pages_follow_the_cursor_without_a_hole_or_a_repetition(int asked, int most)
    {
        using IStoreUnderTest under = await NewAsync();
        await using IDatabase database = under.Open();
        RecordStore store = await OpenAsync(database);
        LakeRecord[] records = [.. Enumerable.Range(0, 1234).Select(i => Note($"n{i}", i))];
        foreach (LakeRecord[] batch in records.Chunk(300)) await store.PushAsync("lake", "phone", batch, default);
        List<LakeRecord> got = [];
        long cursor = 0;
        for (bool more = true; more;)
        {
            PullAnswer page = await store.PullAsync("lake", store.Epoch, cursor, asked, default);
            Assert.InRange(page.Records.Count, 1, most);
            got.AddRange(page.Records);
            (cursor, more) = (page.Cursor, page.More);
        }

        Assert.Equal(records, got);
        Assert.Empty((await store.PullAsync("lake", store.Epoch, cursor, default)).Records);
        Assert.Equal(500, (await store.PullAsync("lake", "another epoch", cursor, default)).Records.Count);
    }

    [Fact]
    public async Task A_reader_never_steps_over_a_record_that_is_still_being_written()
    {
        using IStoreUnderTest under = await NewAsync();
        await using IDatabase database = under.Open();
        RecordStore store = await OpenAsync(database);
        bool writing = true;
        Task<HashSet<string>> reader = Task.Run(async () =>
        {
            HashSet<string> seen = [];
            long cursor = 0;
            for (bool last = false; ;)
            {
                PullAnswer page = await store.PullAsync("lake", store.Epoch, cursor, default);
                seen.UnionWith(page.Records.Select(r => r.Id));
                cursor = page.Cursor;
                if (page.Records.Count > 0) continue;
                if (last) return seen;
                last = !Volatile.Read(ref writing);
                await Task.Yield();
            }
        });
        await Task.WhenAll(Enumerable.Range(0, 8).Select(device => Task.Run(async () =>
        {
            for (int i = 0; i < 25; i++)
                await store.PushAsync("lake", $"d{device}", [.. Enumerable.Range(0, 1 + (i % 4)).Select(k => Note($"{device}/{i}/{k}", i))], default);
        })));
        Volatile.Write(ref writing, false);
        Assert.Equal((await store.AllAsync("lake", default)).Select(r => r.Id).ToHashSet(), await reader);
    }

    [Fact]
    public async Task A_refused_record_is_named_and_the_others_are_kept()
    {
        using IStoreUnderTest under = await NewAsync();
        await using IDatabase database = under.Open();
        RecordStore store = await OpenAsync(database);
        LakeRecord bad = Note("bad", 1) with { Body = """{"note":"changed"}""" };
        PushAnswer answer = await store.PushAsync("lake", "phone", [Note("good", 0), bad], default);
        Assert.Equal(1, answer.Added);
        Assert.Equal(bad.Id, Assert.Single(answer.Refused).Id);
        Assert.Equal([Note("good", 0)], await store.AllAsync("lake", default));
    }

    [Fact]
    public async Task Lakes_are_apart_and_a_lake_that_is_not_there_takes_nothing()
    {
        using IStoreUnderTest under = await NewAsync();
        await using IDatabase database = under.Open();
        RecordStore store = await OpenAsync(database);
        Assert.True(await store.AddLakeAsync("other", "Other", default));
        Assert.False(await store.AddLakeAsync("other", "Other again", default));
        await store.PushAsync("lake", "phone", [Note("a", 0)], default);
        await store.PushAsync("other", "phone", [Note("a", 0), Note("b", 0)], default);
        Assert.Equal([("Lake", 1L), ("Other", 2L)], (await store.LakesAsync(default)).Select(l => (l.Name, l.Records)));
        await Assert.ThrowsAsync<StorageException>(() => store.PushAsync("nowhere", "phone", [Note("a", 0)], default));
    }

    [Fact]
    public async Task More_than_the_room_granted_is_refused_whole_with_the_reason()
    {
        using IStoreUnderTest under = await NewAsync();
        await using IDatabase database = under.Open();
        RecordStore store = new(database, TimeProvider.System, new StoreQuota(1, 3, 1 << 20));
        await store.OpenAsync(default);
        await store.AddLakeAsync("lake", "Lake", default);
        await store.PushAsync("lake", "phone", [Note("a", 0), Note("b", 1)], default);
        StorageException full = await Assert.ThrowsAsync<StorageException>(() => store.PushAsync("lake", "phone", [Note("c", 2), Note("d", 3)], default));
        Assert.Equal(StorageFault.Full, full.Fault);
        Assert.Equal(2, (await store.AllAsync("lake", default)).Count);
        Assert.Equal(1, (await store.PushAsync("lake", "phone", [Note("c", 2)], default)).Added);
        await Assert.ThrowsAsync<StorageException>(() => store.AddLakeAsync("second", "Second", default));
    }

    [Fact]
    public async Task A_lake_is_removed_whole_and_its_room_is_free_again()
    {
        using IStoreUnderTest under = await NewAsync();
        await using IDatabase database = under.Open();
        RecordStore store = await OpenAsync(database);
        await store.AddLakeAsync("other", "Other", default);
        foreach (string lake in (string[])["lake", "other"])
        {
            await store.PushAsync(lake, "phone", [.. Enumerable.Range(0, 500).Select(i => Note($"n{i}", i))], default);
            await new FileStore(database, StoreQuota.Default).AppendAsync(lake, new string('a', 64), 4, 0, [1, 2, 3, 4], default);
        }

        Assert.True(await store.RemoveLakeAsync("lake", default));
        Assert.False(await store.RemoveLakeAsync("lake", default));
        Assert.Equal(["other"], (await store.LakesAsync(default)).Select(l => l.Id));
        foreach (string table in (string[])["records", "blobs", "blob_chunks"])
            Assert.Equal(0, await database.ReadAsync(work => work.FirstAsync<long>($"select count(*) from {table} where lake = 'lake'"), default));
        Assert.Equal(500, (await store.AllAsync("other", default)).Count);
        await Assert.ThrowsAsync<StorageException>(() => store.PushAsync("lake", "phone", [Note("late", 0)], default));
    }

    [Fact]
    public async Task The_whole_store_is_held_to_its_room_as_it_lies_on_the_disk()
    {
        using IStoreUnderTest under = await NewAsync();
        await using IDatabase database = under.Open();
        await OpenAsync(database);
        long now = await database.ReadAsync(work => work.FirstAsync<long>(database.Dialect.StoreBytes), default);
        RecordStore store = new(database, TimeProvider.System, StoreQuota.Default with { StoreBytes = now + (1 << 20) });
        await store.OpenAsync(default);
        int kept = 0;
        StorageException? full = null;
        for (int i = 0; i < 300 && full is null; i++)
        {
            try
            {
                await store.PushAsync("lake", "phone", [Note(Convert.ToHexString(System.Security.Cryptography.RandomNumberGenerator.GetBytes(7_500)), i)], default);
                kept++;
            }
            catch (StorageException e)
            {
                full = e;
            }
        }

        Assert.Equal(StorageFault.Full, full?.Fault);
        Assert.InRange(kept, 20, 80);
        Assert.Equal(kept, (await store.AllAsync("lake", default)).Count);
    }

    [Fact]
    public async Task Lake_and_right_come_in_one_write()
    {
        using IStoreUnderTest under = await NewAsync();
        await using IDatabase database = under.Open();
        RecordStore store = await OpenAsync(database);
        DeviceStore devices = new(database, TimeProvider.System);
        (string guest, _) = (await devices.PairAsync(await devices.NewCodeAsync(new PairingGrant(false, null, true), default), "guest", "", default))!.Value;
        Assert.True(await store.AddLakeAsync("given", "Given", new Writer(guest, false), default));
        Assert.True(await devices.MayAsync(guest, "given", write: true, default));
        // The right cannot be written: then there is no lake either, and its id is free.
        await Assert.ThrowsAsync<StorageException>(() => store.AddLakeAsync("half", "Half", new Writer("nobody", false), default));
        Assert.False(await store.HasLakeAsync("half", default));
    }

    [Fact]
    public async Task Writes_that_wait_are_bounded_by_the_memory_they_hold()
    {
        using IStoreUnderTest under = await NewAsync();
        await using IDatabase database = under.Open();
        await OpenAsync(database);
        TaskCompletionSource open = new();
        Task<int> first = database.WriteAsync(async _ =>
        {
            await open.Task;
            return 1;
        }, default, SqliteDatabase.MaxWaitingBytes);
        StorageException busy = await Assert.ThrowsAsync<StorageException>(() => database.WriteAsync(_ => Task.FromResult(2), default, 1));
        Assert.Equal(StorageFault.Busy, busy.Fault);
        open.SetResult();
        Assert.Equal(1, await first);
        Assert.Equal(3, await database.WriteAsync(_ => Task.FromResult(3), default, 1));
    }

    [Fact]
    public async Task Each_older_form_comes_to_the_present_one_with_its_records()
    {
        for (int form = 1; form < Migrations.Current; form++)
        {
            using IStoreUnderTest under = await NewAsync();
            await using (IDatabase old = under.Open())
            {
                await old.WriteAsync(async work =>
                {
                    await work.DoAsync("create table store (key text primary key, value text not null)");
                    await work.DoAsync($"insert into store (key, value) values ('form', '{form}'), ('epoch', 'e1')");
                    foreach (string step in Migrations.Steps.Take(form))
                        foreach (string statement in step.Replace("{bytes}", old.Dialect.Bytes).Replace("{counter}", old.Dialect.Counter).Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
                            await work.DoAsync(statement);
                    await work.DoAsync("insert into lakes values ('lake', 'Lake', '2026', 1, 2)");
                    return await work.DoAsync("insert into records values ('lake', 1, @Id, @Kind, @At, null, 0, @Body, 'd', '2026')", Note("old", 0));
                }, default);
            }

            await using IDatabase database = under.Open();
            RecordStore store = new(database, TimeProvider.System, StoreQuota.Default);
            await store.OpenAsync(default);
            Assert.Equal("e1", store.Epoch);
            Assert.Equal([Note("old", 0)], await store.AllAsync("lake", default));
            Assert.Equal(1, (await store.PushAsync("lake", "phone", [Note("new", 1)], default)).Added);
        }
    }

    [Fact]
    public async Task A_database_of_a_newer_program_is_left_alone_with_a_word_why()
    {
        using IStoreUnderTest under = await NewAsync();
        await using IDatabase database = under.Open();
        await OpenAsync(database);
        await database.WriteAsync(work => work.DoAsync("update store set value = '99' where key = 'form'"), default);
        StorageException newer = await Assert.ThrowsAsync<StorageException>(() => OpenAsync(database));
        Assert.Equal(StorageFault.Newer, newer.Fault);
    }

    [Fact]
    public async Task Two_programs_that_open_an_empty_database_at_once_agree_on_it()
    {
        using IStoreUnderTest under = await NewAsync();
        await using IDatabase first = under.Open();
        await using IDatabase second = under.Open();
        RecordStore[] stores = await Task.WhenAll(OpenAsync(first), OpenAsync(second));
        Assert.Equal(stores[0].Epoch, stores[1].Epoch);
    }

    protected static async Task<RecordStore> OpenAsync(IDatabase database)
    {
        RecordStore store = new(database, TimeProvider.System, StoreQuota.Default);
        await store.OpenAsync(default);
        await store.AddLakeAsync("lake", "Lake", default);
        return store;
    }

    protected static LakeRecord Note(string text, int minutes) =>
        LakeRecord.Make("note", At.AddMinutes(minutes), null, false, System.Text.Json.JsonSerializer.Serialize(new Dictionary<string, string> { ["note"] = text }));
}

public sealed class SqliteRecordStoreTests : RecordStoreTests
{
    protected override Task<IStoreUnderTest> NewAsync() => Task.FromResult<IStoreUnderTest>(new SqliteUnderTest());
}

public sealed class PostgresRecordStoreTests(PostgresServer server) : RecordStoreTests
{
    protected override async Task<IStoreUnderTest> NewAsync() => new PostgresUnderTest(await server.NewDatabaseAsync());
}
