using SecondShore.Engine.Core;

namespace SecondShore.Engine.Learn;

/// <summary>A stretch of fishing with one rig at one place, and what it drew: the unit that rates are learned from.</summary>
/// <param name="Effort">The entry that gave the effort: its rig, spot, depth, form and wind describe the span.</param>
/// <param name="HoursH">Time the jig was in the water, H.</param>
/// <param name="Bites">Bites in it, fish included.</param>
/// <param name="Fish">Fish in the boat.</param>
/// <param name="Snags">Snags.</param>
public sealed record EffortSpan(LogEntry Effort, double HoursH, int Bites, int Fish, int Snags);

/// <summary>Turns a log into effort spans with their outcomes.</summary>
public static class EffortSpans
{
    /// <summary>Spans of a log, and the outcomes that no effort covers.</summary>
    /// <param name="entries">Entries that stand, each once, in any order.</param>
    /// <returns>
    /// Spans in order of time. An outcome belongs to the span that holds its time; when several do, to the one whose
    /// spot and rig agree best. Outcomes outside all effort are returned apart: without effort they teach no rate.
    /// </returns>
    public static (IReadOnlyList<EffortSpan> Spans, IReadOnlyList<LogEntry> WithoutEffort) Of(IEnumerable<LogEntry> entries)
    {
        Require.NotNull(entries);
        List<LogEntry> current = [.. entries];
        current.Sort(static (a, b) => a.At != b.At ? a.At.CompareTo(b.At) : string.CompareOrdinal(a.Id, b.Id));
        List<LogEntry> efforts = [];
        foreach (LogEntry entry in current)
            if (entry.IsEffort) efforts.Add(entry);
        int[] bites = new int[efforts.Count], fish = new int[efforts.Count], snags = new int[efforts.Count];
        List<LogEntry> without = [];
        foreach (LogEntry entry in current)
        {
            if (!entry.IsBite && entry.Kind != LogKind.Snag) continue;
            int span = BestSpan(efforts, entry);
            if (span < 0) { without.Add(entry); continue; }
            if (entry.Kind == LogKind.Snag) { snags[span]++; continue; }
            bites[span]++;
            if (entry.Kind == LogKind.Fish) fish[span]++;
        }

        List<EffortSpan> spans = [];
        for (int i = 0; i < efforts.Count; i++)
        {
            double hoursH = (efforts[i].Until!.Value - efforts[i].At).TotalHours;
            spans.Add(new EffortSpan(efforts[i], hoursH, bites[i], fish[i], snags[i]));
        }

        return (spans, without);
    }

    private static int BestSpan(List<LogEntry> efforts, LogEntry outcome)
    {
        int best = -1, bestAgreement = -1;
        for (int i = 0; i < efforts.Count; i++)
        {
            LogEntry effort = efforts[i];
            if (outcome.At < effort.At || outcome.At > effort.Until) continue;
            int agreement = (Agree(outcome.Spot, effort.Spot) ? 2 : 0) + (Agree(outcome.Rig.Trailer, effort.Rig.Trailer) ? 1 : 0)
                + (outcome.At < effort.Until ? 1 : 0) + (effort.Kind == LogKind.Effort ? 1 : 0);
            if (agreement > bestAgreement) { best = i; bestAgreement = agreement; }
        }

        return best;
    }

    private static bool Agree(string? a, string? b) => a is not null && string.Equals(a, b, StringComparison.OrdinalIgnoreCase);
}
