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

    /// <summary>Why the host did not do what was asked: its own sentence where it speaks the reader's language, else ours by its status.</summary>
    public static string Of(HostException refused, Wording w)
    {
        // The weather that did not come is told in the language it was asked in.
        if ((w.Text.Language == "en" || refused.Status == 502) && refused.Sentence.Length > 0) return refused.Sentence;
        return refused.Status switch
        {
            400 or 422 => w["host.says.odd"],
            401 => w["host.says.code"],
            403 => w["host.says.rights"],
            404 or 410 => w["host.says.gone"],
            413 or 507 => w["host.says.full"],
            429 => w["host.says.often"],
            _ => w["host.says.other", refused.Status],
        };
    }

    /// <summary>How many entries wait; empty for none.</summary>
    public static string Waiting(int count, Wording w) => count == 0 ? "" : w[count == 1 ? "sync.waiting.one" : "sync.waiting", count];
}
