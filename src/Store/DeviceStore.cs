using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace SecondShore.Store;

/// <summary>A paired device.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">What the user calls it.</param>
/// <param name="Owner">Whether it may see every lake and manage devices; 1 or 0.</param>
/// <param name="MayMake">Whether it may add lakes of its own; 1 or 0.</param>
/// <param name="Bytes">Bytes it added, to whatever lakes.</param>
/// <param name="PairedAt">When it was paired, ISO-8601.</param>
/// <param name="RevokedAt">When its token was revoked; null while it holds.</param>
public sealed record DeviceRow(string Id, string Name, long Owner, long MayMake, long Bytes, string PairedAt, string? RevokedAt);

/// <summary>A line of what happened with devices.</summary>
public sealed record AuditRow(string At, string Device, string Action, string Detail, string Remote);

/// <summary>What a pairing code grants.</summary>
/// <param name="Owner">Every lake, and managing devices.</param>
/// <param name="Lake">Else one lake and no other; null for those that the device adds itself.</param>
/// <param name="MayWrite">Whether it may add to that lake.</param>
public sealed record PairingGrant(bool Owner, string? Lake, bool MayWrite);

/// <summary>
/// Devices: paired once by a code that the host shows, then known by a token. Codes and tokens are kept as hashes only: who
/// reads the database cannot use them. Tokens have 256 random bits, so a plain hash cannot be searched.
/// </summary>
/// <remarks>A code's first letters name it and the others are its secret: a wrong secret costs a try of the code that is named, and a
/// code that names none costs nobody anything.</remarks>
public sealed class DeviceStore(IDatabase database, TimeProvider clock)
{
    /// <summary>How long a code holds.</summary>
    public static readonly TimeSpan CodeLife = TimeSpan.FromMinutes(10);

    private const string CodeLetters = "ABCDEFGHJKLMNPQRSTUVWXYZ23456789";
    private static readonly int CodeLength = 12;
    private static readonly int NameLength = 4;
    private static readonly int CodeTries = 5;
    private static readonly int AuditLines = 10_000;

    private static readonly string Columns =
        "id as Id, name as Name, owner as Owner, may_make as MayMake, bytes as Bytes, paired_at as PairedAt, revoked_at as RevokedAt";

    private long _latestTicks;

    /// <summary>A new code, shown once. Earlier codes of the same grant stay until they are used or run out.</summary>
    /// <exception cref="StorageException">The lake that it would be for is not there.</exception>
    public async Task<string> NewCodeAsync(PairingGrant grant, CancellationToken cancel)
    {
        string code = RandomNumberGenerator.GetString(CodeLetters, CodeLength);
        DateTimeOffset now = Now();
        await database.WriteAsync(async work =>
        {
            await DropOldCodesAsync(work, now).ConfigureAwait(false);
            if (grant.Lake is not null && !await HasLakeAsync(work, grant.Lake).ConfigureAwait(false))
                throw new StorageException(StorageFault.Unreachable, $"There is no lake {grant.Lake} here, so no code was made; 'lakes' lists those there are.");
            return await work.DoAsync(
                "insert into pairing_codes (code_hash, name_hash, made_at, expires_at, tries_left, owner, lake, may_write) values (@hash, @name, @made, @expires, @tries, @owner, @lake, @write)",
                new
                {
                    hash = HashOf(code),
                    name = NameOf(code),
                    made = Stamp(now),
                    expires = Stamp(now + CodeLife),
                    tries = (long)CodeTries,
                    owner = grant.Owner ? 1L : 0L,
                    lake = grant.Lake,
                    write = grant.MayWrite ? 1L : 0L,
                }).ConfigureAwait(false);
        }, cancel).ConfigureAwait(false);
        return $"{code[..4]}-{code[4..8]}-{code[8..]}";
    }

    /// <summary>Pairs a device with a code, which then holds no more.</summary>
    /// <returns>Device and token; null when the code is wrong, used, or ran out, or its lake is gone.</returns>
    public Task<(string Device, string Token)?> PairAsync(string code, string name, string remote, CancellationToken cancel) => database.WriteAsync<(string, string)?>(async work =>
    {
        DateTimeOffset now = Now();
        await DropOldCodesAsync(work, now).ConfigureAwait(false);
        string plain = new([.. (code ?? "").ToUpperInvariant().Where(char.IsAsciiLetterOrDigit)]);
        // Made later than now: the clock went back, and nobody knows whether the code ran out meanwhile.
        CodeRow? row = await work.FirstAsync<CodeRow>(
            "select code_hash as Hash, owner as Owner, lake as Lake, may_write as MayWrite from pairing_codes "
            + "where code_hash = @hash and made_at <= @now and expires_at >= @now and tries_left > 0",
            new { hash = HashOf(plain), now = Stamp(now) }).ConfigureAwait(false);
        if (row is null || (row.Lake is not null && !await HasLakeAsync(work, row.Lake).ConfigureAwait(false)))
        {
            await work.DoAsync("update pairing_codes set tries_left = tries_left - 1 where name_hash = @name", new { name = NameOf(plain) }).ConfigureAwait(false);
            return null;
        }

        string device = "d" + Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(8));
        string token = "ss1_" + Convert.ToBase64String(RandomNumberGenerator.GetBytes(32)).TrimEnd('=').Replace('+', '-').Replace('/', '_');
        await work.DoAsync("delete from pairing_codes where code_hash = @Hash", new { row.Hash }).ConfigureAwait(false);
        await work.DoAsync("insert into devices (id, name, token_hash, owner, may_make, paired_at) values (@device, @name, @hash, @Owner, @make, @now)",
            new { device, name, hash = HashOf(token), row.Owner, make = row.Owner != 0 || row.Lake is null ? 1L : 0L, now = Stamp(now) }).ConfigureAwait(false);
        if (row.Lake is not null)
            await work.DoAsync("insert into rights (device, lake, may_write) values (@device, @Lake, @MayWrite)", new { device, row.Lake, row.MayWrite }).ConfigureAwait(false);
        await AuditAsync(work, device, "paired", name, remote).ConfigureAwait(false);
        return (device, token);
    }, cancel);

    /// <summary>Writes down that pairing was refused; how many times is the caller's to count, so that nobody can flood the list.</summary>
    public Task NoteRefusedAsync(string remote, int times, CancellationToken cancel) => database.WriteAsync(work =>
        AuditAsync(work, "", "pairing refused", times == 1 ? "" : string.Create(CultureInfo.InvariantCulture, $"{times} times"), remote), cancel);

    /// <summary>The device of a token; null when there is none, or it was revoked.</summary>
    public Task<DeviceRow?> FindAsync(string token, CancellationToken cancel) => database.ReadAsync(work => work.FirstAsync<DeviceRow>(
        $"select {Columns} from devices where token_hash = @hash and revoked_at is null", new { hash = HashOf(token) }), cancel);

    /// <summary>Whether a device's token still holds, and its right to a lake; the owner's has a right to every lake.</summary>
    public Task<bool> StillMayAsync(string device, string lake, CancellationToken cancel) => database.ReadAsync(async work =>
        await work.FirstAsync<long?>("select owner from devices where id = @device and revoked_at is null", new { device }).ConfigureAwait(false) is { } owner
        && (owner != 0 || await work.FirstAsync<long?>("select may_write from rights where device = @device and lake = @lake", new { device, lake }).ConfigureAwait(false) is not null), cancel);

    /// <summary>Whether a device may read a lake, or add to it.</summary>
    public Task<bool> MayAsync(string device, string lake, bool write, CancellationToken cancel) => database.ReadAsync(async work =>
        await work.FirstAsync<long?>("select may_write from rights where device = @device and lake = @lake", new { device, lake }).ConfigureAwait(false) is { } right && (!write || right != 0), cancel);

    /// <summary>Lakes a device may read, with whether it may add to each.</summary>
    public async Task<IReadOnlyDictionary<string, bool>> RightsAsync(string device, CancellationToken cancel) =>
        (await database.ReadAsync(work => work.RowsAsync<RightRow>("select lake as Lake, may_write as MayWrite from rights where device = @device", new { device }), cancel).ConfigureAwait(false))
            .ToDictionary(r => r.Lake, r => r.MayWrite != 0, StringComparer.Ordinal);

    /// <summary>Gives a device a right on a lake.</summary>
    public Task GrantAsync(string device, string lake, bool write, CancellationToken cancel) => database.WriteAsync(work => work.DoAsync(
        "insert into rights (device, lake, may_write) values (@device, @lake, @write) on conflict (device, lake) do update set may_write = excluded.may_write",
        new { device, lake, write = write ? 1L : 0L }), cancel);

    /// <summary>All devices, the newest last.</summary>
    public Task<IReadOnlyList<DeviceRow>> AllAsync(CancellationToken cancel) => database.ReadAsync(work => work.RowsAsync<DeviceRow>(
        $"select {Columns} from devices order by paired_at, id"), cancel);

    /// <summary>Ends a device's token at once; whether there was such a device with a token that held.</summary>
    public Task<bool> RevokeAsync(string device, string by, string remote, CancellationToken cancel) => database.WriteAsync(async work =>
    {
        if (await work.DoAsync("update devices set revoked_at = @now where id = @device and revoked_at is null", new { now = Stamp(Now()), device }).ConfigureAwait(false) == 0) return false;
        await AuditAsync(work, device, "revoked", by, remote).ConfigureAwait(false);
        return true;
    }, cancel);

    /// <summary>The newest lines of what happened with devices, the newest first.</summary>
    public Task<IReadOnlyList<AuditRow>> AuditLogAsync(int count, CancellationToken cancel) => database.ReadAsync(work => work.RowsAsync<AuditRow>(
        "select at as At, device as Device, action as Action, detail as Detail, remote as Remote from audit order by n desc limit @count", new { count }), cancel);

    private async Task<int> AuditAsync(Work work, string device, string action, string detail, string remote)
    {
        await work.DoAsync("delete from audit where n <= (select coalesce(max(n), 0) from audit) - @AuditLines", new { AuditLines }).ConfigureAwait(false);
        return await work.DoAsync("insert into audit (at, device, action, detail, remote) values (@at, @device, @action, @detail, @remote)",
            new { at = Stamp(Now()), device, action, detail, remote }).ConfigureAwait(false);
    }

    // Gone for good once it is noticed that they ran out, so that a clock that is put back brings none of them to life.
    private static Task<int> DropOldCodesAsync(Work work, DateTimeOffset now) =>
        work.DoAsync("delete from pairing_codes where expires_at < @now or tries_left <= 0", new { now = Stamp(now) });

    private static async Task<bool> HasLakeAsync(Work work, string lake) => await work.FirstAsync<string>("select id from lakes where id = @lake", new { lake }).ConfigureAwait(false) is not null;

    // Never earlier than was seen before: the system's clock may be put back while the host runs.
    private DateTimeOffset Now()
    {
        long now = clock.GetUtcNow().UtcTicks, seen = Interlocked.Read(ref _latestTicks);
        while (now > seen && Interlocked.CompareExchange(ref _latestTicks, now, seen) is { } other && other != seen) seen = other;
        return new DateTimeOffset(Math.Max(now, seen), TimeSpan.Zero);
    }

    private static string NameOf(string code) => code.Length < NameLength ? "none" : HashOf("name of a code:" + code[..NameLength]);

    private static string HashOf(string secret) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes("second-shore:" + secret)));

    private static string Stamp(DateTimeOffset at) => at.UtcDateTime.ToString("O", CultureInfo.InvariantCulture);

    private sealed record CodeRow(string Hash, long Owner, string? Lake, long MayWrite);

    private sealed record RightRow(string Lake, long MayWrite);
}
