namespace SecondShore.Store.Tests;

/// <summary>Devices, run on both databases.</summary>
public abstract class DeviceStoreTests
{
    protected abstract Task<IStoreUnderTest> NewAsync();

    [Fact]
    public async Task A_code_runs_out()
    {
        using IStoreUnderTest under = await NewAsync();
        await using IDatabase database = under.Open();
        await Migrations.RunAsync(database, default);
        MovedClock clock = new();
        DeviceStore devices = new(database, clock);
        string early = await devices.NewCodeAsync(new PairingGrant(true, null, true), default);
        clock.Now += DeviceStore.CodeLife - TimeSpan.FromSeconds(1);
        Assert.NotNull(await devices.PairAsync(early, "phone", "", default));
        string late = await devices.NewCodeAsync(new PairingGrant(true, null, true), default);
        clock.Now += DeviceStore.CodeLife + TimeSpan.FromSeconds(1);
        Assert.Null(await devices.PairAsync(late, "phone", "", default));
    }

    [Fact]
    public async Task A_code_that_ran_out_stays_so_when_the_clock_goes_back()
    {
        using IStoreUnderTest under = await NewAsync();
        await using IDatabase database = under.Open();
        await Migrations.RunAsync(database, default);
        MovedClock clock = new();
        DeviceStore devices = new(database, clock);
        string code = await devices.NewCodeAsync(new PairingGrant(true, null, true), default);
        clock.Now += DeviceStore.CodeLife + TimeSpan.FromMinutes(1);
        // The later time is seen by something that drops no codes.
        Assert.False(await devices.RevokeAsync("nobody", "", "", default));
        clock.Now -= TimeSpan.FromMinutes(5);
        Assert.Null(await devices.PairAsync(code, "phone", "", default));
        // Another program, on a clock from before the code was made.
        string next = await devices.NewCodeAsync(new PairingGrant(true, null, true), default);
        clock.Now -= TimeSpan.FromDays(1);
        Assert.Null(await new DeviceStore(database, clock).PairAsync(next, "phone", "", default));
    }

    [Fact]
    public async Task A_wrong_code_costs_only_the_code_that_it_names()
    {
        using IStoreUnderTest under = await NewAsync();
        await using IDatabase database = under.Open();
        await Migrations.RunAsync(database, default);
        DeviceStore devices = new(database, TimeProvider.System);
        string named = await devices.NewCodeAsync(new PairingGrant(true, null, true), default), other = await devices.NewCodeAsync(new PairingGrant(true, null, true), default);
        for (int i = 0; i < 5; i++) Assert.Null(await devices.PairAsync(named[..5] + $"AAAA-AAA{i + 2}", "x", "", default));
        Assert.Null(await devices.PairAsync(named, "x", "", default));
        Assert.NotNull(await devices.PairAsync(other, "x", "", default));
    }

    [Fact]
    public async Task The_list_of_what_happened_does_not_grow_without_end()
    {
        using IStoreUnderTest under = await NewAsync();
        await using IDatabase database = under.Open();
        await Migrations.RunAsync(database, default);
        await database.WriteAsync(async work =>
        {
            for (int i = 0; i < 10_050; i++) await work.DoAsync("insert into audit (at, device, action, detail, remote) values ('2026', '', 'old', '', '')");
            return 0;
        }, default);
        DeviceStore devices = new(database, TimeProvider.System);
        await devices.NoteRefusedAsync("192.0.2.1", 4, default);
        Assert.InRange((await devices.AuditLogAsync(100_000, default)).Count, 9_990, 10_001);
    }

    [Fact]
    public async Task A_token_finds_its_device_until_it_is_revoked_and_rights_are_its_own()
    {
        using IStoreUnderTest under = await NewAsync();
        await using IDatabase database = under.Open();
        await Migrations.RunAsync(database, default);
        RecordStore records = new(database, TimeProvider.System, StoreQuota.Default);
        await records.OpenAsync(default);
        await records.AddLakeAsync("lake-0001", "Lake", default);
        await Assert.ThrowsAsync<StorageException>(() => new DeviceStore(database, TimeProvider.System).NewCodeAsync(new PairingGrant(false, "no-such-lake", false), default));
        DeviceStore devices = new(database, TimeProvider.System);
        (string first, string token) = (await devices.PairAsync(await devices.NewCodeAsync(new PairingGrant(false, "lake-0001", false), default), "it's mine", "192.0.2.1", default))!.Value;
        (string second, _) = (await devices.PairAsync(await devices.NewCodeAsync(new PairingGrant(false, null, true), default), "other", "", default))!.Value;
        Assert.Equal((first, "it's mine"), await devices.FindAsync(token, default) is { } d ? (d.Id, d.Name) : default);
        Assert.True(await devices.MayAsync(first, "lake-0001", write: false, default));
        Assert.False(await devices.MayAsync(first, "lake-0001", write: true, default));
        Assert.False(await devices.MayAsync(second, "lake-0001", write: false, default));
        await devices.GrantAsync(first, "lake-0001", write: true, default);
        Assert.True(await devices.MayAsync(first, "lake-0001", write: true, default));
        Assert.Equal(["lake-0001"], (await devices.RightsAsync(first, default)).Keys);
        Assert.True(await devices.RevokeAsync(first, "owner", "", default));
        Assert.False(await devices.RevokeAsync(first, "owner", "", default));
        Assert.Null(await devices.FindAsync(token, default));
        Assert.Equal(["revoked", "paired", "paired"], (await devices.AuditLogAsync(9, default)).Select(a => a.Action));
    }

    [Fact]
    public async Task Bytes_come_back_from_any_offset_and_a_lake_s_bytes_are_its_own()
    {
        using IStoreUnderTest under = await NewAsync();
        await using IDatabase database = under.Open();
        RecordStore records = new(database, TimeProvider.System, StoreQuota.Default);
        await records.OpenAsync(default);
        await records.AddLakeAsync("lake", "Lake", default);
        await records.AddLakeAsync("other", "Other", default);
        FileStore files = new(database, StoreQuota.Default with { BytesPerLake = 1000 });
        byte[] bytes = [.. Enumerable.Range(0, 700).Select(i => (byte)i)];
        string sha = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(bytes));
        Assert.Equal(300, await files.AppendAsync("lake", sha, 700, 0, bytes[..300], default));
        Assert.Equal(300, await files.AppendAsync("lake", sha, 700, 0, bytes[..300], default));
        Assert.False(await files.FinishAsync("lake", sha, default));
        Assert.Equal(700, await files.AppendAsync("lake", sha, 700, 300, bytes[300..], default));
        Assert.True(await files.FinishAsync("lake", sha, default));
        foreach (int from in (int[])[0, 1, 299, 300, 301, 699, 700])
        {
            List<byte> got = [];
            await foreach (byte[] piece in files.PiecesAsync("lake", sha, from, default)) got.AddRange(piece);
            Assert.Equal(bytes[from..], got);
        }

        Assert.Null(await files.StatusAsync("other", sha, default));
        await Assert.ThrowsAsync<StorageException>(() => files.AppendAsync("lake", new string('a', 64), 400, 0, new byte[400], default));
    }

    private sealed class MovedClock : TimeProvider
    {
        public DateTimeOffset Now { get; set; } = new(2026, 10, 4, 17, 0, 0, TimeSpan.Zero);

        public override DateTimeOffset GetUtcNow() => Now;
    }
}

public sealed class SqliteDeviceStoreTests : DeviceStoreTests
{
    protected override Task<IStoreUnderTest> NewAsync() => Task.FromResult<IStoreUnderTest>(new SqliteUnderTest());
}

public sealed class PostgresDeviceStoreTests(PostgresServer server) : DeviceStoreTests
{
    protected override async Task<IStoreUnderTest> NewAsync() => new PostgresUnderTest(await server.NewDatabaseAsync());
}
