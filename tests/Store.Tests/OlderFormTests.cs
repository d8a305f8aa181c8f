using System.Globalization;
using SecondShore.Records;

namespace SecondShore.Store.Tests;

/// <summary>A database that an older program wrote opens in this one, whatever its form, with everything that was in it.</summary>
public abstract class OlderFormTests
{
    protected abstract Task<IStoreUnderTest> NewAsync();

    public static TheoryData<int> Forms => [.. Enumerable.Range(1, Migrations.Current - 1)];

    [Theory]
    [MemberData(nameof(Forms))]
    public async Task What_an_older_program_kept_is_there_and_more_is_taken(int form)
    {
        using IStoreUnderTest under = await NewAsync();
        await using IDatabase database = under.Open();
        await WriteAsOfAsync(database, form);

        RecordStore store = new(database, TimeProvider.System, StoreQuota.Default);
        await store.OpenAsync(default);
        Assert.Equal(Migrations.Current.ToString(CultureInfo.InvariantCulture), await FirstAsync<string>(database, "select value from store where key = 'form'"));
        // A device in step with the older program stays in step.
        PullAnswer rest = await store.PullAsync("lake", "0123456789abcdef", 1, default);
        Assert.Equal(["b"], rest.Records.Select(r => r.Id));
        Assert.Equal(["a", "b"], (await store.AllAsync("lake", default)).Select(r => r.Id).Order());
        PushAnswer pushed = await store.PushAsync("lake", "phone", [LakeRecord.Make("log", DateTimeOffset.UnixEpoch, null, false, """{"note":"new"}""")], default);
        Assert.Equal((1, 0), (pushed.Added, pushed.Refused.Count));
        Assert.Equal(3, (await store.AllAsync("lake", default)).Count);
        if (form < 2) return;
        DeviceStore devices = new(database, TimeProvider.System);
        Assert.Equal(["boat", "guest", "reader"], (await devices.AllAsync(default)).Select(d => d.Name).Order());
        // Who was let in to one lake to read makes none; who may write does as before.
        Assert.Equal(0, await FirstAsync<long>(database, "select may_make from devices where id = 'reader'"));
        Assert.Equal(1, await FirstAsync<long>(database, "select may_make from devices where id = 'guest'"));
    }

    // The rows are written as the program of that time wrote them, through the steps up to its form.
    private static Task<int> WriteAsOfAsync(IDatabase database, int form) => database.WriteAsync(async work =>
    {
        await work.DoAsync("create table store (key text primary key, value text not null)");
        foreach (string step in Migrations.Steps.Take(form))
        {
            string words = step.Replace("{bytes}", database.Dialect.Bytes, StringComparison.Ordinal).Replace("{counter}", database.Dialect.Counter, StringComparison.Ordinal);
            foreach (string statement in words.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)) await work.DoAsync(statement);
        }

        await work.DoAsync("insert into store (key, value) values ('form', @form), ('epoch', '0123456789abcdef')", new { form = form.ToString(CultureInfo.InvariantCulture) });
        await work.DoAsync("insert into lakes (id, name, added_at, last_seq, bytes) values ('lake', 'Lake', '2026-10-01T00:00:00Z', 2, 40)");
        foreach ((string id, int seq) in ((string, int)[])[("a", 1), ("b", 2)])
        {
            await work.DoAsync("""
                insert into records (lake, seq, id, kind, at, replaces, removed, body, device, received_at)
                values ('lake', @seq, @id, 'log', '2026-10-04T06:00:00.0000000Z',
                  null, 0, '{"note":"old"}', 'phone', '2026-10-04T06:00:01Z')
                """, new { seq, id });
        }

        if (form < 2) return 0;
        foreach ((string id, int owner) in ((string, int)[])[("boat", 1), ("guest", 0), ("reader", 0)])
            await work.DoAsync("insert into devices (id, name, token_hash, owner, paired_at) values (@id, @id, @id, @owner, '2026-10-01T00:00:00Z')", new { id, owner });
        await work.DoAsync("insert into rights (device, lake, may_write) values ('guest', 'lake', 1), ('reader', 'lake', 0)");
        return 0;
    }, default);

    private static Task<T?> FirstAsync<T>(IDatabase database, string query) => database.ReadAsync(work => work.FirstAsync<T>(query), default);
}

public sealed class SqliteOlderFormTests : OlderFormTests
{
    protected override Task<IStoreUnderTest> NewAsync() => Task.FromResult<IStoreUnderTest>(new SqliteUnderTest());
}

public sealed class PostgresOlderFormTests(PostgresServer server) : OlderFormTests
{
    protected override async Task<IStoreUnderTest> NewAsync() => new PostgresUnderTest(await server.NewDatabaseAsync());
}
