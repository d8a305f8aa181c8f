using System.Globalization;
using SecondShore.Records;

namespace SecondShore.Store;

/// <summary>Room granted, so that one paired device cannot fill the disk.</summary>
/// <param name="Lakes">Most lakes.</param>
/// <param name="RecordsPerLake">Most records of a lake.</param>
/// <param name="BytesPerLake">Most bytes of a lake: bodies of records and files.</param>
public sealed record StoreQuota(int Lakes, long RecordsPerLake, long BytesPerLake)
{
    /// <summary>Where none is given.</summary>
    public static StoreQuota Default { get; } = new(500, 1_000_000, 4L << 30);
}

/// <summary>Lakes and their records: sets that only grow. Each new record of a lake gets the lake's next number.</summary>
public sealed class RecordStore(IDatabase database, TimeProvider clock, StoreQuota quota)
{
    private static readonly int PageSize = RecordRules.MaxRecordsPerMessage;
    private static readonly int PageCharacters = 512 * 1024;

    /// <summary>The store's epoch; empty until <see cref="OpenAsync"/>.</summary>
    public string Epoch { get; private set; } = "";

    /// <summary>Brings the database to the current form.</summary>
    /// <exception cref="StorageException">It cannot be used.</exception>
    public async Task OpenAsync(CancellationToken cancel) => Epoch = await Migrations.RunAsync(database, cancel).ConfigureAwait(false);

    /// <summary>Makes a lake, or leaves it as it is when it is there; whether it was made.</summary>
    /// <exception cref="StorageException">There are as many lakes as granted.</exception>
    public Task<bool> AddLakeAsync(string lake, string name, CancellationToken cancel) => database.WriteAsync(async work =>
    {
        if (await work.FirstAsync<string>("select id from lakes where id = @lake", new { lake }).ConfigureAwait(false) is not null) return false;
        long count = await work.FirstAsync<long>("select count(*) from lakes").ConfigureAwait(false);
        if (count >= quota.Lakes) throw new StorageException(StorageFault.Full, $"This host keeps at most {quota.Lakes} lakes. Remove one, or raise the limit in its settings.");
        return await work.DoAsync("insert into lakes (id, name, added_at, last_seq, bytes) values (@lake, @name, @now, 0, 0) on conflict (id) do nothing",
            new { lake, name, now = Now() }).ConfigureAwait(false) == 1;
    }, cancel);

    /// <summary>Every lake with its name and number of records.</summary>
    public Task<IReadOnlyList<LakeRow>> LakesAsync(CancellationToken cancel) =>
        database.ReadAsync(work => work.RowsAsync<LakeRow>("select id as Id, name as Name, last_seq as Records from lakes order by name, id"), cancel);

    /// <summary>Whether a lake is there.</summary>
    public Task<bool> HasLakeAsync(string lake, CancellationToken cancel) =>
        database.ReadAsync(async work => await work.FirstAsync<string>("select id from lakes where id = @lake", new { lake }).ConfigureAwait(false) is not null, cancel);

    /// <summary>Adds records to a lake; those that are there stay as they are. On return all are on disk, save the refused.</summary>
    /// <exception cref="StorageException">Nothing was kept: no room, or no such lake.</exception>
    public Task<PushAnswer> PushAsync(string lake, string device, IReadOnlyList<LakeRecord> records, CancellationToken cancel)
    {
        List<RefusedRecord> refused = [];
        List<LakeRecord> good = new(records.Count);
        foreach (LakeRecord record in records)
        {
            if (RecordRules.Refusal(record) is { } why) refused.Add(new RefusedRecord(record?.Id ?? "", why));
            else good.Add(record);
        }

        return database.WriteAsync(async work =>
        {
            // Takes the lake's row until the commit, so that numbers are given in the order in which they become visible.
            long? last = await work.FirstAsync<long?>("update lakes set last_seq = last_seq where id = @lake returning last_seq", new { lake }).ConfigureAwait(false);
            if (last is not { } seq) throw new StorageException(StorageFault.Unreachable, "This host has no such lake. Add it first.");
            int added = 0;
            long bytes = 0;
            foreach (LakeRecord record in good)
            {
                int rows = await work.DoAsync(
                    "insert into records (lake, seq, id, kind, at, replaces, removed, body, device, received_at) "
                    + "values (@lake, @seq, @Id, @Kind, @At, @Replaces, @removed, @Body, @device, @now) on conflict (lake, id) do nothing",
                    new { lake, seq = seq + 1, record.Id, record.Kind, record.At, record.Replaces, removed = record.Removed ? 1L : 0L, record.Body, device, now = Now() }).ConfigureAwait(false);
                if (rows == 0) continue;
                seq++;
                added++;
                bytes += record.Body.Length;
            }

            long total = await work.FirstAsync<long>("update lakes set last_seq = @seq, bytes = bytes + @bytes where id = @lake returning bytes", new { seq, bytes, lake }).ConfigureAwait(false);
            if (added > 0 && (seq > quota.RecordsPerLake || total > quota.BytesPerLake))
                throw new StorageException(StorageFault.Full, "This lake has used the room that the host grants it: nothing of this was kept. Raise the limit in the host's settings.");
            return new PushAnswer(Epoch, added, good.Count - added, refused);
        }, cancel);
    }

    /// <summary>The records after a cursor, a page of them. A cursor of another epoch starts from the first.</summary>
    public Task<PullAnswer> PullAsync(string lake, string epoch, long cursor, CancellationToken cancel) => PullAsync(lake, epoch, cursor, PageSize, cancel);

    /// <summary>The same in pages of at most so many records, and never more than <see cref="RecordRules.MaxRecordsPerMessage"/>.</summary>
    public async Task<PullAnswer> PullAsync(string lake, string epoch, long cursor, int most, CancellationToken cancel)
    {
        int size = Math.Clamp(most, 1, PageSize);
        long after = string.Equals(epoch, Epoch, StringComparison.Ordinal) ? Math.Max(0, cursor) : 0;
        IReadOnlyList<StoredRecord> rows = await database.ReadAsync(work => work.RowsAsync<StoredRecord>(
            "select seq as Seq, id as Id, kind as Kind, at as At, replaces as Replaces, removed as Removed, body as Body from records "
            + "where lake = @lake and seq > @after order by seq limit @limit", new { lake, after, limit = size + 1 }), cancel).ConfigureAwait(false);
        List<LakeRecord> page = [];
        int characters = 0;
        long last = after;
        foreach (StoredRecord row in rows)
        {
            if (page.Count == size || (page.Count > 0 && characters + row.Body.Length > PageCharacters)) break;
            page.Add(row.ToRecord());
            characters += row.Body.Length;
            last = row.Seq;
        }

        return new PullAnswer(Epoch, last, page.Count < rows.Count, page);
    }

    /// <summary>Every record of a lake.</summary>
    public async Task<IReadOnlyList<LakeRecord>> AllAsync(string lake, CancellationToken cancel)
    {
        List<LakeRecord> all = [];
        for (long cursor = 0; ;)
        {
            PullAnswer page = await PullAsync(lake, Epoch, cursor, cancel).ConfigureAwait(false);
            all.AddRange(page.Records);
            if (!page.More) return all;
            cursor = page.Cursor;
        }
    }

    private string Now() => clock.GetUtcNow().UtcDateTime.ToString("O", CultureInfo.InvariantCulture);
}

/// <summary>A lake's row.</summary>
public sealed record LakeRow(string Id, string Name, long Records);

/// <summary>A record's row.</summary>
public sealed record StoredRecord(long Seq, string Id, string Kind, string At, string? Replaces, long Removed, string Body)
{
    /// <summary>The record.</summary>
    public LakeRecord ToRecord() => new(Id, Kind, At, Replaces, Removed != 0, Body);
}
