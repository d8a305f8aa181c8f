using System.Globalization;
using System.Security.Cryptography;

namespace SecondShore.Store;

/// <summary>Steps from one form of the database to the next. A step that was ever released is never changed.</summary>
public static class Migrations
{
    /// <summary>The form this program works with.</summary>
    public static int Current => Steps.Count;

    /// <summary>The steps, the first from an empty database. <c>{bytes}</c> and <c>{counter}</c> stand for the dialect's types.</summary>
    public static IReadOnlyList<string> Steps { get; } =
    [
        """
        create table lakes (id text primary key, name text not null, added_at text not null, last_seq bigint not null,
            bytes bigint not null);
        create table records (lake text not null references lakes (id), seq bigint not null, id text not null, kind text not null,
            at text not null, replaces text, removed bigint not null, body text not null, device text not null, received_at text not null,
            primary key (lake, seq), unique (lake, id));
        create table blobs (lake text not null references lakes (id), sha256 text not null, size bigint not null, stored bigint not null,
            complete bigint not null, primary key (lake, sha256));
        create table blob_chunks (lake text not null, sha256 text not null, n bigint not null, bytes {bytes} not null,
            primary key (lake, sha256, n));
        """,
        """
        create table devices (id text primary key, name text not null, token_hash text not null unique, owner bigint not null,
            paired_at text not null, revoked_at text);
        create table rights (device text not null references devices (id), lake text not null, may_write bigint not null,
            primary key (device, lake));
        create table pairing_codes (code_hash text primary key, expires_at text not null, tries_left bigint not null, owner bigint not null,
            lake text, may_write bigint not null);
        create table audit (n {counter}, at text not null, device text not null, action text not null, detail text not null,
            remote text not null);
        """,
        """
        create index records_by_kind on records (lake, kind, seq);
        create index rights_by_lake on rights (lake);
        alter table lakes add column made_by text not null default '';
        create index lakes_by_maker on lakes (made_by);
        alter table devices add column may_make bigint not null default 1;
        alter table devices add column bytes bigint not null default 0;
        update devices set may_make = 0 where owner = 0 and id in (select device from rights)
            and id not in (select device from rights where may_write = 1);
        alter table pairing_codes add column made_at text not null default '';
        alter table pairing_codes add column name_hash text not null default '';
        """,
    ];

    /// <summary>Brings a database to the current form, and gives it an epoch when it has none.</summary>
    /// <exception cref="StorageException">It is of a newer program.</exception>
    public static async Task<string> RunAsync(IDatabase database, CancellationToken cancel) => await database.WriteAsync(async work =>
    {
        if (database.Dialect.OneAtATime.Length > 0) await work.DoAsync(database.Dialect.OneAtATime).ConfigureAwait(false);
        await work.DoAsync("create table if not exists store (key text primary key, value text not null)").ConfigureAwait(false);
        await work.DoAsync("insert into store (key, value) values ('form', '0') on conflict (key) do nothing").ConfigureAwait(false);
        int form = int.Parse(await work.FirstAsync<string>("select value from store where key = 'form'").ConfigureAwait(false) ?? "0", CultureInfo.InvariantCulture);
        if (form > Current)
            throw new StorageException(StorageFault.Newer, $"The database has form {form}, and this program knows forms up to {Current}. Start the newer program that wrote it, or restore an older backup.");
        for (int step = form; step < Current; step++)
            foreach (string statement in Statements(Steps[step], database.Dialect))
                await work.DoAsync(statement).ConfigureAwait(false);
        await work.DoAsync("update store set value = @form where key = 'form'", new { form = Current.ToString(CultureInfo.InvariantCulture) }).ConfigureAwait(false);
        await work.DoAsync("insert into store (key, value) values ('epoch', @epoch) on conflict (key) do nothing", new { epoch = NewEpoch() }).ConfigureAwait(false);
        return await work.FirstAsync<string>("select value from store where key = 'epoch'").ConfigureAwait(false) ?? "";
    }, cancel).ConfigureAwait(false);

    /// <summary>A new epoch: no device's cursor of an earlier one counts any more.</summary>
    public static string NewEpoch() => Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(8));

    private static string[] Statements(string step, SqlDialect dialect) =>
        step.Replace("{bytes}", dialect.Bytes, StringComparison.Ordinal).Replace("{counter}", dialect.Counter, StringComparison.Ordinal)
            .Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
}
