using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Answers.Documents;

/// <summary>A number with its doubt, as scripts see it.</summary>
/// <param name="P10">10th percentile.</param>
/// <param name="P50">Median.</param>
/// <param name="P90">90th percentile.</param>
public sealed record SpreadDocument(double P10, double P50, double P90)
{
    /// <summary>The document of a spread, rounded to a given number of decimals.</summary>
    public static SpreadDocument From(Spread spread, int decimals = 2) =>
        new(Math.Round(spread.P10, decimals), Math.Round(spread.P50, decimals), Math.Round(spread.P90, decimals));

    /// <summary>The document of a distribution, or null where there is none.</summary>
    public static SpreadDocument? From(SampleDistribution? distribution, int decimals = 2) =>
        distribution is null ? null : From(distribution.Spread, decimals);
}

/// <summary>Three dates with the same meaning as a spread.</summary>
/// <param name="P10">Early end.</param>
/// <param name="P50">Median.</param>
/// <param name="P90">Late end.</param>
public sealed record DateSpreadDocument(DateOnly P10, DateOnly P50, DateOnly P90)
{
    /// <summary>Dates from days after an instant, in local time; null where there is no distribution.</summary>
    public static DateSpreadDocument? From(SampleDistribution? inDays, DateTimeOffset localAt)
    {
        if (inDays is null) return null;
        Spread days = inDays.Spread;
        return new DateSpreadDocument(Day(days.P10), Day(days.P50), Day(days.P90));

        DateOnly Day(double offset) => DateOnly.FromDateTime(localAt.DateTime.AddDays(offset));
    }
}
