using SecondShore.App.Words;

namespace SecondShore.App.Sync;

/// <summary>How this device stands with the host, in words.</summary>
internal static class SyncWords
{
    /// <summary>One or two short sentences.</summary>
    /// <param name="state">The state.</param>
    /// <param name="signal">Whether there is a signal.</param>
    /// <param name="w">The user's words.</param>
    public static string Of(SyncState state, bool signal, Wording w)
    {
        string waiting = Waiting(state.Waiting, w);
        if (!signal) return state.Waiting == 0 ? w["sync.nosignal"] : waiting + " " + w["sync.nosignal.wait"];
        return state.Mood switch
        {
            SyncMood.Talking => state.Share is { } share ? w["sync.files", (int)Math.Round(share * 100)] : w["sync.talking"],
            SyncMood.Away => state.Waiting == 0 ? w["sync.away"] : w["sync.away"] + " " + waiting,
            SyncMood.NotPaired => w["sync.notpaired"],
            SyncMood.Refused => w["sync.refused", state.Said],
            _ => state.Waiting > 0 ? waiting : state.At is { } at ? w["sync.instep.at", w.Time(at)] : w["sync.instep"],
        };
    }

    /// <summary>How many entries wait; empty for none.</summary>
    public static string Waiting(int count, Wording w) => count == 0 ? "" : w[count == 1 ? "sync.waiting.one" : "sync.waiting", count];
}
