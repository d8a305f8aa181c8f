using SecondShore.Engine.Learn;

namespace SecondShore.Answers.Learn;

/// <summary>Sums over stretches of fishing.</summary>
internal static class LearnSums
{
    public static LogTotals Of(IReadOnlyList<EffortSpan> spans, int withoutEffort)
    {
        DateOnly[] days = [.. spans.Select(DayOf).Distinct().Order()];
        return new LogTotals(spans.Sum(s => s.HoursH), spans.Sum(s => s.Bites), spans.Sum(s => s.Fish), spans.Sum(s => s.Snags),
            spans.Count(s => s.Bites == 0), spans.Count, days.Length, days.Length > 0 ? days[0] : null, days.Length > 0 ? days[^1] : null, withoutEffort);
    }

    public static DateOnly DayOf(EffortSpan span) => DateOnly.FromDateTime(span.Effort.At.DateTime);
}
