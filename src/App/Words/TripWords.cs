using SecondShore.Desk.Entries;
using SecondShore.Desk.Views;

namespace SecondShore.App.Words;

/// <summary>What a reading did, in one line: to the answer, and to the kept plan.</summary>
internal static class TripWords
{
    /// <summary>What the water as it is known now does to the kept plan; null where it does nothing.</summary>
    public static string? Hold(HoldView? hold, Wording w)
    {
        if (hold is not { Changed: true, WasM: { } wasM }) return null;
        if (hold.NowM is not { } nowM) return w["hold.none", w.Depth(wasM), Letters(hold.Gone, w)];
        List<string> parts = [];
        if (hold.Slides.Count > 0)
        {
            string way = nowM > wasM ? "down" : "up";
            parts.Add(w[$"hold.{way}{(hold.Slides.Count == 1 ? ".one" : "")}", Letters(hold.Slides, w), w.Depth(Math.Abs(nowM - wasM))]);
        }

        if (hold.Gone.Count > 0) parts.Add(w[hold.Gone.Count == 1 ? "hold.gone.one" : "hold.gone", Letters(hold.Gone, w)]);
        return w["hold", w.Depth(nowM), w.DepthNumber(wasM), string.Join("; ", parts)];
    }

    /// <summary>What became of a reading just kept: used, used for little, or not used and why.</summary>
    public static string Fate(RecordRow row, OutlookView? outlook, Wording w)
    {
        if (outlook is null) return w["reading.kept"];
        if (NotUsed(row, outlook, w) is { } why) return w["reading.notused", why];
        if (outlook.Doubted.Any(d => d.StartsWith(row.Id, StringComparison.Ordinal))) return w["reading.doubted"];
        return outlook.ThermoclineM is { } depthM ? w["reading.used", w.Depth(depthM.P50), w.DepthRange(depthM.P10, depthM.P90)] : w["reading.used.mixed"];
    }

    /// <summary>Why a reading plays no part in the answer; null where it plays one.</summary>
    public static string? NotUsed(RecordRow row, OutlookView? outlook, Wording w)
    {
        if (outlook is null) return null;
        if (outlook.Refused.FirstOrDefault(r => r.Source == row.Id) is { } refused) return w["reading.refused", refused.Why];
        return outlook.Unused.FirstOrDefault(u => u.Source == row.Id) is { } unused
            ? w[unused.IsEarlier ? "reading.unused.earlier" : "reading.unused.after", $"{w.WeekdayDate(outlook.At)}, {w.Time(outlook.At)}"]
            : null;
    }

    /// <summary>A sentence of the engine with this device's entries called by what they say, not by their ids.</summary>
    public static string Named(string said, IEnumerable<RecordRow> records, Wording w)
    {
        foreach (RecordRow row in records)
            if (said.Contains(row.Id, StringComparison.Ordinal)) said = said.Replace(row.Id, $"{EntryWords.Sentence(row, w)} ({w.Time(RecordSet.At(row))})", StringComparison.Ordinal);
        return said;
    }

    private static string Letters(IReadOnlyList<string> letters, Wording w) => letters.Count switch
    {
        0 => "",
        1 => letters[0],
        _ => w["list.and", string.Join(", ", letters.Take(letters.Count - 1)), letters[^1]],
    };
}
