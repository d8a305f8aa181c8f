namespace SecondShore.Records;

/// <summary>What a sync did.</summary>
/// <param name="Sent">Records the host had not.</param>
/// <param name="Received">Records this device had not.</param>
/// <param name="Refused">Records the host does not take.</param>
/// <param name="PassedOver">Records the host holds that break today's rules: it kept them by looser ones, and no device takes them.</param>
public sealed record SyncResult(int Sent, int Received, IReadOnlyList<RefusedRecord> Refused, int PassedOver = 0);

/// <summary>
/// One sync of one lake: pull all pages, then push what the host has not acknowledged. It may be cut off anywhere and run
/// again: every step adds to a set, and how far it is is only ever written after what it speaks of is on disk.
/// </summary>
public static class SyncRun
{
    /// <summary>Most characters of bodies in one push; a message stays well under the host's limit.</summary>
    private static readonly int MaxPushCharacters = 256 * 1024;

    /// <summary>Records looked at between two breaths.</summary>
    private static readonly int RecordsPerBreath = 20;

    /// <summary>Runs the sync.</summary>
    /// <param name="local">The device's records.</param>
    /// <param name="host">The host's records.</param>
    /// <param name="breathe">Called while many records are looked at, so that a page may draw in between; null for no pause.</param>
    /// <param name="cancel">Stops between steps.</param>
    public static async Task<SyncResult> RunAsync(ILocalRecords local, IHostRecords host, Func<Task>? breathe = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(local);
        ArgumentNullException.ThrowIfNull(host);
        (SyncPlace place, int received, int passed) = await PullAsync(local, host, await local.PlaceAsync(cancel).ConfigureAwait(false), breathe, cancel).ConfigureAwait(false);
        List<RefusedRecord> refused = [];
        int sent = 0;
        while (Batch(await local.WaitingAsync(cancel).ConfigureAwait(false)) is { Length: > 0 } batch)
        {
            PushAnswer answer = await host.PushAsync(new PushRequest(batch), cancel).ConfigureAwait(false);
            // Restored in between: what was thought acknowledged may be gone. The next sync starts from nothing.
            if (!string.Equals(answer.Epoch, place.Epoch, StringComparison.Ordinal))
            {
                await local.SettleAsync(SyncPlace.None, [], [], cancel).ConfigureAwait(false);
                return new SyncResult(sent, received, refused, passed);
            }

            sent += answer.Added;
            refused.AddRange(answer.Refused);
            HashSet<string> no = new(answer.Refused.Select(r => r.Id), StringComparer.Ordinal);
            string[] settled = [.. batch.Select(r => r.Id)];
            await local.SettleAsync(place, [.. settled.Where(id => !no.Contains(id))], [.. settled.Where(no.Contains)], cancel).ConfigureAwait(false);
        }

        return new SyncResult(sent, received, refused, passed);
    }

    private static async Task<(SyncPlace Place, int Received, int PassedOver)> PullAsync(ILocalRecords local, IHostRecords host, SyncPlace place, Func<Task>? breathe, CancellationToken cancel)
    {
        int received = 0, passed = 0;
        while (true)
        {
            PullAnswer page = await host.PullAsync(place.Epoch, place.Cursor, cancel).ConfigureAwait(false);
            // Damaged on the way: not kept, and asked for again next time, since the cursor stays. Whole, yet against the rules: the
            // host has it for good, and one such record must not hold up all that come after it.
            List<LakeRecord> good = new(page.Records.Count);
            int damaged = 0;
            for (int i = 0; i < page.Records.Count; i++)
            {
                if (breathe is not null && i % RecordsPerBreath == RecordsPerBreath - 1) await breathe().ConfigureAwait(false);
                LakeRecord record = page.Records[i];
                if (RecordRules.Refusal(record) is null) good.Add(record);
                else if (RecordIds.IsWhole(record)) passed++;
                else damaged++;
            }

            received += await local.AddAsync(good, cancel).ConfigureAwait(false);
            if (damaged > 0)
                throw new InvalidDataException($"{damaged} records came damaged from the host; they are not kept. Sync again.");
            SyncPlace next = new(page.Epoch, page.Cursor);
            if (next != place) await local.SettleAsync(next, [.. good.Select(r => r.Id)], [], cancel).ConfigureAwait(false);
            place = next;
            if (!page.More) return (place, received, passed);
        }
    }

    private static LakeRecord[] Batch(IReadOnlyList<LakeRecord> waiting)
    {
        int count = 0, characters = 0;
        while (count < waiting.Count && count < RecordRules.MaxRecordsPerMessage && (count == 0 || characters + waiting[count].Body.Length <= MaxPushCharacters))
            characters += waiting[count++].Body.Length;
        return [.. waiting.Take(count)];
    }
}
