namespace SecondShore.Records;

/// <summary>What a sync did.</summary>
/// <param name="Sent">Records the host had not.</param>
/// <param name="Received">Records this device had not.</param>
/// <param name="Refused">Records the host does not take.</param>
public sealed record SyncResult(int Sent, int Received, IReadOnlyList<RefusedRecord> Refused);

/// <summary>
/// One sync of one lake: pull all pages, then push what the host has not acknowledged. It may be cut off anywhere and run
/// again: every step adds to a set, and the state is only ever written after what it speaks of is on disk.
/// </summary>
public static class SyncRun
{
    /// <summary>Most characters of bodies in one push; a message stays well under the host's limit.</summary>
    private static readonly int MaxPushCharacters = 256 * 1024;

    /// <summary>Runs the sync.</summary>
    /// <param name="local">The device's records.</param>
    /// <param name="host">The host's records.</param>
    /// <param name="cancel">Stops between steps.</param>
    public static async Task<SyncResult> RunAsync(ILocalRecords local, IHostRecords host, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(local);
        ArgumentNullException.ThrowIfNull(host);
        SyncState state = await local.StateAsync(cancel).ConfigureAwait(false);
        (state, int received) = await PullAsync(local, host, state, cancel).ConfigureAwait(false);

        HashSet<string> settled = new(state.Acknowledged, StringComparer.Ordinal);
        settled.UnionWith(state.Refused);
        List<LakeRecord> waiting = [.. (await local.AllAsync(cancel).ConfigureAwait(false)).Where(r => !settled.Contains(r.Id))];
        List<RefusedRecord> refused = [];
        int sent = 0;
        foreach (LakeRecord[] batch in Batches(waiting))
        {
            PushAnswer answer = await host.PushAsync(new PushRequest(batch), cancel).ConfigureAwait(false);
            // Restored in between: what was thought acknowledged may be gone. The next sync starts from nothing.
            if (!string.Equals(answer.Epoch, state.Epoch, StringComparison.Ordinal))
            {
                await local.SaveStateAsync(SyncState.None, cancel).ConfigureAwait(false);
                return new SyncResult(sent, received, refused);
            }

            sent += answer.Added;
            refused.AddRange(answer.Refused);
            HashSet<string> no = new(answer.Refused.Select(r => r.Id), StringComparer.Ordinal);
            state = state with
            {
                Acknowledged = [.. state.Acknowledged, .. batch.Select(r => r.Id).Where(id => !no.Contains(id))],
                Refused = [.. state.Refused, .. no],
            };
            await local.SaveStateAsync(state, cancel).ConfigureAwait(false);
        }

        return new SyncResult(sent, received, refused);
    }

    private static async Task<(SyncState State, int Received)> PullAsync(ILocalRecords local, IHostRecords host, SyncState state, CancellationToken cancel)
    {
        int received = 0;
        while (true)
        {
            PullAnswer page = await host.PullAsync(state.Epoch, state.Cursor, cancel).ConfigureAwait(false);
            // Damaged on the way: not kept, and asked for again next time, since the cursor stays.
            LakeRecord[] good = [.. page.Records.Where(r => RecordRules.Refusal(r) is null)];
            received += await local.AddAsync(good, cancel).ConfigureAwait(false);
            if (good.Length < page.Records.Count)
                throw new InvalidDataException($"{page.Records.Count - good.Length} records came damaged from the host; they are not kept. Sync again.");
            bool sameEpoch = string.Equals(page.Epoch, state.Epoch, StringComparison.Ordinal);
            HashSet<string> acknowledged = new(sameEpoch ? state.Acknowledged : [], StringComparer.Ordinal);
            acknowledged.UnionWith(good.Select(r => r.Id));
            bool changed = !sameEpoch || page.Cursor != state.Cursor;
            state = new SyncState(page.Epoch, page.Cursor, [.. acknowledged], sameEpoch ? state.Refused : []);
            if (changed) await local.SaveStateAsync(state, cancel).ConfigureAwait(false);
            if (!page.More) return (state, received);
        }
    }

    private static IEnumerable<LakeRecord[]> Batches(List<LakeRecord> waiting)
    {
        List<LakeRecord> batch = [];
        int characters = 0;
        foreach (LakeRecord record in waiting)
        {
            if (batch.Count > 0 && (batch.Count == RecordRules.MaxRecordsPerMessage || characters + record.Body.Length > MaxPushCharacters))
            {
                yield return [.. batch];
                batch.Clear();
                characters = 0;
            }

            batch.Add(record);
            characters += record.Body.Length;
        }

        if (batch.Count > 0) yield return [.. batch];
    }
}
