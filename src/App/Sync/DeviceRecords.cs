using System.Text.Json;
using SecondShore.App.Shell;
using SecondShore.Desk;
using SecondShore.Desk.Entries;
using SecondShore.Records;

namespace SecondShore.App.Sync;

/// <summary>One lake's records in the browser's database, as a sync sees them.</summary>
internal sealed class DeviceRecords(Browser browser, LakeLink link) : ILocalRecords
{
    /// <inheritdoc/>
    public Task<SyncPlace> PlaceAsync(CancellationToken cancel) => Task.FromResult(new SyncPlace(link.Epoch, link.Cursor));

    /// <inheritdoc/>
    public async Task<IReadOnlyList<LakeRecord>> WaitingAsync(CancellationToken cancel)
    {
        if (!link.MayWrite) return [];
        IReadOnlyList<RecordRow> rows = await ReadAsync("waitingJson", link.Lake, HostCalls.RecordsAtOnce);
        if (!rows.All(r => RecordIds.IsWellFormed(r.Id)))
        {
            await RenewIdsAsync();
            rows = await ReadAsync("waitingJson", link.Lake, HostCalls.RecordsAtOnce);
        }

        return [.. rows.Select(SharedRecords.ToShared)];
    }

    /// <inheritdoc/>
    public async Task<int> AddAsync(IReadOnlyList<LakeRecord> records, CancellationToken cancel) => records.Count == 0 ? 0
        : (int)await browser.Number("addRecordsJson", Json([.. records.Select(r => SharedRecords.ToRow(r, link.Lake))]));

    /// <inheritdoc/>
    public async Task SettleAsync(SyncPlace place, IReadOnlyList<string> acknowledged, IReadOnlyList<string> refused, CancellationToken cancel) =>
        await browser.Do("settleJson", link.Lake, place.Epoch, place.Cursor, JsonSerializer.Serialize(new Settled(acknowledged, refused), SyncJson.Default.Settled));

    /// <summary>Records that name versions of the lake's files.</summary>
    public async Task<IReadOnlyList<LakeRecord>> FileRecordsAsync() =>
        [.. (await ReadAsync("fileRecordsJson", link.Lake)).Select(SharedRecords.ToShared)];

    // Kept by a version of the app that did not yet make ids of the content.
    private async Task RenewIdsAsync()
    {
        IReadOnlyList<RecordRow> all = await ReadAsync("allRecordsJson", link.Lake), renewed = SharedRecords.WithContentIds(all);
        HashSet<string> now = new(renewed.Select(r => r.Id), StringComparer.Ordinal);
        await browser.Do("exchangeRecordsJson", Json([.. all.Where(r => !now.Contains(r.Id))]), Json(renewed));
    }

    private async Task<IReadOnlyList<RecordRow>> ReadAsync(string function, params object?[] arguments) =>
        JsonSerializer.Deserialize(await browser.Text(function, arguments) ?? "[]", DeskJson.Default.IReadOnlyListRecordRow) ?? [];

    private static string Json(IReadOnlyList<RecordRow> rows) => JsonSerializer.Serialize(rows, DeskJson.Default.IReadOnlyListRecordRow);
}

/// <summary>One lake's records at the host, as a sync sees them.</summary>
internal sealed class HostRecords(HostCalls calls, LakeLink link) : IHostRecords
{
    /// <inheritdoc/>
    public Task<PushAnswer> PushAsync(PushRequest request, CancellationToken cancel) => calls.PushAsync(link.At, request);

    /// <inheritdoc/>
    public Task<PullAnswer> PullAsync(string epoch, long cursor, CancellationToken cancel) => calls.PullAsync(link.At, epoch, cursor);
}
