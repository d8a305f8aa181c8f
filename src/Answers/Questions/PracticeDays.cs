using SecondShore.Answers.Lake;
using SecondShore.Engine.Basin.Forms;

namespace SecondShore.Answers.Questions;

/// <summary>Days in a row: practice that covers kinds of bottom and depths, then the day that fishes the best.</summary>
public static class PracticeDays
{
    /// <summary>Plans days in a row.</summary>
    /// <param name="lake">The lake, with a survey.</param>
    /// <param name="wish">The first day; the others ask the same on the days after it.</param>
    /// <param name="days">Number of days.</param>
    /// <param name="lastCounts">Whether the last fishes the best; false makes every day practice.</param>
    /// <param name="units">Units of the words.</param>
    /// <param name="progress">Share done, 0 to 1.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns>The days in order. The last is planned on what is believed now: plan it again when practice is logged.</returns>
    /// <exception cref="CouldNotComputeException">A day cannot be planned; the message says why.</exception>
    public static IReadOnlyList<DayResult> Compute(PreparedLake lake, DayWish wish, int days, bool lastCounts, UnitSystem units,
        IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(lake);
        ArgumentNullException.ThrowIfNull(wish);
        ArgumentOutOfRangeException.ThrowIfLessThan(days, 1);
        FormMap forms = ShoreAnswer.Forms(lake, null, cancel);
        StagedProgress staged = new(progress, [.. Enumerable.Repeat(1.0 / days, days)]);
        return InTurn(wish, days, lastCounts, day => DayAnswer.Compute(lake, day, units, staged.Next(), forms, cancel));
    }

    /// <summary>Days in a row, each planned on what practice has covered before it.</summary>
    /// <param name="wish">The first day; the others ask the same on the days after it.</param>
    /// <param name="days">Number of days.</param>
    /// <param name="lastCounts">Whether the last fishes the best; false makes every day practice.</param>
    /// <param name="plan">Plans one of them.</param>
    public static IReadOnlyList<DayResult> InTurn(DayWish wish, int days, bool lastCounts, Func<DayWish, DayResult> plan)
    {
        ArgumentNullException.ThrowIfNull(wish);
        ArgumentNullException.ThrowIfNull(plan);
        PracticeSoFar practice = PracticeSoFar.Nothing;
        List<DayResult> results = [];
        for (int d = 0; d < days; d++)
        {
            bool counts = lastCounts && d == days - 1;
            DayResult day = plan(wish with { Date = wish.Date.AddDays(d), Practice = counts ? null : practice });
            results.Add(day);
            if (!counts) practice = practice.After(day);
        }

        return results;
    }
}
