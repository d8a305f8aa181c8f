using System.Globalization;
using SecondShore.Records;

namespace SecondShore.Store;

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
    public Task<bool> AddLakeAsync(string lake, string name, CancellationToken cancel) => AddLakeAsync(lake, name, Writer.Host, cancel);

    /// <summary>The same for a device, which gets the right to a lake that it makes: in one write, so that no lake is left without.</summary>
    /// <exception cref="StorageException">There are as many lakes as granted, in all or to this device.</exception>
    public Task<bool> AddLakeAsync(string lake, string name, Writer writer, CancellationToken cancel) => database.WriteAsync(async work =>
    {
        if (await work.FirstAsync<string>("select id from lakes where id = @lake", new { lake }).ConfigureAwait(false) is not null) return false;
        await RoomRules.RequireLakeAsync(work, quota, writer).ConfigureAwait(false);
        if (await work.DoAsync("insert into lakes (id, name, added_at, last_seq, bytes, made_by) values (@lake, @name, @now, 0, 0, @Device) on conflict (id) do nothing",
            new { lake, name, now = Now(), writer.Device }).ConfigureAwait(false) == 0) return false;
        // A right of an earlier lake of this id is none to this one.
        await work.DoAsync("delete from rights where lake = @lake", new { lake }).ConfigureAwait(false);
        if (!writer.IsOwner) await work.DoAsync("insert into rights (device, lake, may_write) values (@Device, @lake, 1)", new { writer.Device, lake }).ConfigureAwait(false);
        return true;
    }, cancel);

    /// <summary>Removes a lake with all its records, files and rights, in steps that hold up nobody for long; whether it was there.</summary>
    public async Task<bool> RemoveLakeAsync(string lake, CancellationToken cancel)
    {
        string[] steps =
        [
            "delete from blob_chunks where lake = @lake and (sha256, n) in (select sha256, n from blob_chunks where lake = @lake limit 50)",
            "delete from records where lake = @lake and seq in (select seq from records where lake = @lake limit 2000)",
        ];
        foreach (string step in steps)
            while (await database.WriteAsync(work => work.DoAsync(step, new { lake }), cancel).ConfigureAwait(false) > 0) cancel.ThrowIfCancellationRequested();
        return await database.WriteAsync(async work =>
        {
            // What came in between goes with the rest: whoever writes now waits for the lake's row and then finds none.
            await work.DoAsync("update lakes set bytes = bytes where id = @lake", new { lake }).ConfigureAwait(false);
            foreach (string table in (string[])["blob_chunks", "blobs", "records", "rights", "pairing_codes"])
                await work.DoAsync($"delete from {table} where lake = @lake", new { lake }).ConfigureAwait(false);
            return await work.DoAsync("delete from lakes where id = @lake", new { lake }).ConfigureAwait(false) == 1;
        }, cancel).ConfigureAwait(false);
    }

    /// <summary>Every lake with its name and number of records.</summary>
    public Task<IReadOnlyList<LakeRow>> LakesAsync(CancellationToken cancel) =>
        database.ReadAsync(work => work.RowsAsync<LakeRow>("select id as Id, name as Name, last_seq as Records, bytes as Bytes, added_at as AddedAt, made_by as MadeBy from lakes order by name, id"), cancel);

    /// <summary>Whether a lake is there.</summary>
    public Task<bool> HasLakeAsync(string lake, CancellationToken cancel) =>
        database.ReadAsync(async work => await work.FirstAsync<string>("select id from lakes where id = @lake", new { lake }).ConfigureAwait(false) is not null, cancel);

    /// <summary>Adds records to a lake; those that are there stay as they are. On return all are on disk, save the refused.</summary>
    /// <exception cref="StorageException">Nothing was kept: no room, or no such lake.</exception>
    public Task<PushAnswer> PushAsync(string lake, string device, IReadOnlyList<LakeRecord> records, CancellationToken cancel) =>
        PushAsync(lake, new Writer(device, true), records, cancel);

    /// <summary>The same for a device that is held to the room granted to it.</summary>
    /// <exception cref="StorageException">Nothing was kept: no room, or no such lake.</exception>
    public Task<PushAnswer> PushAsync(string lake, Writer writer, IReadOnlyList<LakeRecord> records, CancellationToken cancel)
    {
        string device = writer.Device;
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
            if (added == 0) return new PushAnswer(Epoch, added, good.Count - added, refused);
            if (seq > quota.RecordsPerLake || total > quota.BytesPerLake || await TooManyFilesAsync(work, lake, good).ConfigureAwait(false))
                throw RoomRules.Full("This lake has used the room that the host grants it: nothing of this was kept. Raise the limit in the host's settings.");
            await RoomRules.CountAsync(work, database.Dialect, quota, writer, bytes).ConfigureAwait(false);
            return new PushAnswer(Epoch, added, good.Count - added, refused);
        }, cancel, good.Sum(r => 2L * r.Body.Length));
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

    /// <summary>A lake's records that name versions of its files, in the order in which they were kept; nothing else of it is read.</summary>
    public Task<IReadOnlyList<LakeRecord>> FileRecordsAsync(string lake, CancellationToken cancel) => database.ReadAsync<IReadOnlyList<LakeRecord>>(async work =>
        [.. (await work.RowsAsync<StoredRecord>(
            "select seq as Seq, id as Id, kind as Kind, at as At, replaces as Replaces, removed as Removed, body as Body from records "
            + "where lake = @lake and kind = @kind and length(body) <= @longest order by seq limit @most",
            new { lake, kind = LakeRecord.FileKind, longest = FileVersion.MaxBodyLength, most = quota.FileRecordsPerLake }).ConfigureAwait(false)).Select(r => r.ToRecord())], cancel);

    private async Task<bool> TooManyFilesAsync(Work work, string lake, List<LakeRecord> added) => added.Any(r => r.Kind == LakeRecord.FileKind)
        && await work.FirstAsync<long>("select count(*) from records where lake = @lake and kind = @kind", new { lake, kind = LakeRecord.FileKind }).ConfigureAwait(false) > quota.FileRecordsPerLake;

    /// <summary>Every record of a lake, held together: for a lake that is known to be small, and for tests.</summary>
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
/// <param name="Id">Its id.</param>
/// <param name="Name">What it is called.</param>
/// <param name="Records">How many records it holds.</param>
/// <param name="Bytes">Bytes of its records' bodies and of its files.</param>
/// <param name="AddedAt">When it was added, ISO-8601.</param>
/// <param name="MadeBy">Id of the device that added it; empty where that is not known.</param>
public sealed record LakeRow(string Id, string Name, long Records, long Bytes, string AddedAt, string MadeBy);

/// <summary>A record's row.</summary>
public sealed record StoredRecord(long Seq, string Id, string Kind, string At, string? Replaces, long Removed, string Body)
{
    /// <summary>The record.</summary>
    public LakeRecord ToRecord() => new(Id, Kind, At, Replaces, Removed != 0, Body);
}
