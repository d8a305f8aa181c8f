using SecondShore.Answers.Learn;
using SecondShore.Desk.Entries;

namespace SecondShore.App.Trip;

/// <summary>When to leave the stop at hand unless it gives a bite: by what the log says of places, moved by each bite.</summary>
public static class LeaveTime
{
    /// <summary>The time to leave.</summary>
    /// <param name="open">The stretch under way.</param>
    /// <param name="rows">Minutes at a stop in all, by bites so far.</param>
    /// <param name="standing">Records that stand.</param>
    /// <returns>The time; null where the log says nothing of it.</returns>
    public static DateTimeOffset? Of(Stretch? open, IReadOnlyList<LeaveRow>? rows, IEnumerable<RecordRow> standing)
    {
        if (open is null || rows is not { Count: > 0 }) return null;
        int bites = standing.Count(r => (r.Kind == RecordKinds.Bite || r.Kind == RecordKinds.Fish) && RecordSet.At(r) >= open.From);
        LeaveRow row = rows.LastOrDefault(r => r.Bites <= bites) ?? rows[0];
        // More bites than the table knows leave the stop what its last row gives it.
        return open.From.AddMinutes(row.AfterMinutes);
    }
}
