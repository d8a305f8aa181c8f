using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Season;

/// <summary>A thermocline that a cast of this season showed.</summary>
/// <param name="DayOfYear">When, 1 to 366.</param>
/// <param name="DepthM">Where it stood, m.</param>
public readonly record struct SeenStep(int DayOfYear, double DepthM);

/// <summary>
/// Where the thermocline of a lake stood around a date in other years, as its own casts tell, moved by what this year stands off
/// them: joined with a forecast by their precisions, so that a lake with years of casts leans on them as far as they agree
/// (season.md, "Doubt").
/// </summary>
public sealed class StepHistory
{
    private const int WindowDays = 14;
    private const double MemoryDays = 60; // what a year stands off the others fades to 1/e
    private const double YearSdM = 0.15, YearSdShare = 0.03; // how far years differ, before a lake's own years tell
    private const double LeastSdShare = 0.02, LeastSpreadM = 0.02, LeastOwnSdM = 0.05, NinetyTenthsPerSd = 2.563;

    private static readonly double[] Levels = [.. Enumerable.Range(0, 20).Select(i => (i + 0.5) / 20)];
    private static readonly double[] NormalLevels = [.. Levels.Select(NormalLaw.Quantile)];
    private readonly (int Year, int Day, double DepthM)[] _steps;

    private StepHistory((int Year, int Day, double DepthM)[] steps) => _steps = steps;

    /// <summary>The history of a lake.</summary>
    /// <param name="profiles">Its casts; those of fewer than six depths or less than 0.5 kg m-3 tell no step.</param>
    /// <param name="exceptYear">The year that is forecast: its casts are left out.</param>
    public static StepHistory Of(IReadOnlyList<WaterProfile> profiles, int exceptYear)
    {
        List<(int, int, double)> steps = [];
        foreach (WaterProfile p in Require.NotNull(profiles))
            if (p.At.Year != exceptYear && StepOf(p) is { } depth) steps.Add((p.At.Year, p.At.DayOfYear, depth));
        return new StepHistory([.. steps]);
    }

    /// <summary>The last step that a season's casts showed; null without one.</summary>
    /// <param name="profiles">Casts of any years.</param>
    /// <param name="until">The instant of the outlook: later casts and those of other years are left out.</param>
    public static SeenStep? Last(IReadOnlyList<WaterProfile> profiles, DateTimeOffset until)
    {
        foreach (WaterProfile p in Require.NotNull(profiles).Where(p => p.At <= until && p.At.Year == until.Year).OrderByDescending(p => p.At))
            if (StepOf(p) is { } depth) return new SeenStep(p.At.DayOfYear, depth);
        return null;
    }

    /// <summary>Samples of the step's depth joined with the history, quantile by quantile; unchanged where no other year tells of the date.</summary>
    /// <param name="samples">Depths of the members that have a step, m.</param>
    /// <param name="weights">Their weights, above 0.</param>
    /// <param name="standsShare">Share of all members that have a step, 0 to 1: a forecast that hardly sees one has little to say of its depth.</param>
    /// <param name="dayOfYear">The day they stand for.</param>
    /// <param name="seen">The last step seen this season.</param>
    /// <param name="deepestM">Depth of the water, m.</param>
    public (double[] Samples, double[] Weights) Join(double[] samples, double[] weights, double standsShare, int dayOfYear, SeenStep? seen, double deepestM)
    {
        Require.SameLength(Require.NotNull(weights).Length, Require.NotNull(samples).Length, nameof(weights));
        if (samples.Length == 0 || On(dayOfYear) is not { } past) return (samples, weights);
        double shift = seen is { } s ? Shift(s, dayOfYear) : 0;
        SampleDistribution own = SampleDistribution.Of(samples, weights);
        double ownSd = Math.Max(LeastOwnSdM, (own.Quantile(0.9) - own.Quantile(0.1)) / NinetyTenthsPerSd);
        double trust = standsShare / (ownSd * ownSd), other = 1.0 / (past.SdM * past.SdM), share = trust / (trust + other);
        double[] joined = new double[Levels.Length], even = new double[Levels.Length];
        for (int i = 0; i < joined.Length; i++)
        {
            double depth = (share * own.Quantile(Levels[i])) + ((1 - share) * Math.Max(0.2, past.DepthsM[i] + shift));
            joined[i] = Math.Clamp(depth, 0.1, Math.Max(0.2, deepestM));
            even[i] = 1.0 / joined.Length;
        }

        return (joined, even);
    }

    // Quantiles of the other years' steps around a date, every year alike, spread by what so few years leave open.
    private (double[] DepthsM, double SdM)? On(int dayOfYear)
    {
        (int Year, double[] Depths)[] years = [.. _steps.Where(s => Math.Abs(s.Day - dayOfYear) <= WindowDays)
            .GroupBy(s => s.Year).Select(g => (g.Key, g.Select(s => s.DepthM).ToArray()))];
        int n = years.Length;
        if (n == 0) return null;
        SampleDistribution all = SampleDistribution.Of([.. years.SelectMany(y => y.Depths)], [.. years.SelectMany(y => y.Depths.Select(_ => 1.0 / y.Depths.Length))]);
        double[] middles = [.. years.Select(y => Median(y.Depths))];
        double middle = Median(middles), off = n > 1 ? 1.25 * middles.Average(m => Math.Abs(m - middle)) * Math.Sqrt(n / (n - 1.0)) : 0;
        double general = YearSdM + (YearSdShare * middle), between = ((general * general) + ((n - 1) * off * off)) / n;
        double spread = (all.Quantile(0.9) - all.Quantile(0.1)) / NinetyTenthsPerSd, median = all.Quantile(0.5), least = LeastSdShare * median;
        double sd = Math.Sqrt((spread * spread) + (between / n) + (n == 1 ? between : 0) + (least * least));
        double[] depths = [.. Levels.Select((level, i) => spread > LeastSpreadM
            ? median + ((all.Quantile(level) - median) * sd / spread)
            : median + (sd * NormalLevels[i]))];
        return (depths, sd);
    }

    // What this year's step stood off the same date in the years that also tell of the day asked for.
    private double Shift(SeenStep seen, int dayOfYear)
    {
        double[] then = [.. _steps.GroupBy(s => s.Year)
            .Where(g => g.Any(s => Math.Abs(s.Day - dayOfYear) <= WindowDays) && g.Any(s => Math.Abs(s.Day - seen.DayOfYear) <= WindowDays))
            .Select(g => g.Where(s => Math.Abs(s.Day - seen.DayOfYear) <= WindowDays).Average(s => s.DepthM))];
        return then.Length == 0 ? 0 : Math.Exp(-Math.Abs(dayOfYear - seen.DayOfYear) / MemoryDays) * (seen.DepthM - Median(then));
    }

    private static double? StepOf(WaterProfile p)
    {
        int[] good = [.. Enumerable.Range(0, p.DepthM.Length).Where(i => double.IsFinite(p.TempC[i]) && (i == 0 || p.DepthM[i] > p.DepthM[i - 1]))];
        if (good.Length < 6) return null;
        double[] depth = [.. good.Select(i => p.DepthM[i])];
        Stratification layers = Stratification.Of(depth, [.. good.Select(i => p.TempC[i])]);
        bool below = layers.ThermoclineM < 0.5 * (depth[^1] + depth[^2]) - 1e-9;
        return layers.HasThermocline && below && layers.DensityDifferenceKgPerM3 > 0.5 ? layers.ThermoclineM : null;
    }

    private static double Median(double[] values)
    {
        double[] sorted = [.. values.Order()];
        int n = sorted.Length;
        return n % 2 == 1 ? sorted[n / 2] : 0.5 * (sorted[(n / 2) - 1] + sorted[n / 2]);
    }
}
