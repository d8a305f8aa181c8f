using SecondShore.Engine.Core;

namespace SecondShore.Engine.Season;

/// <summary>
/// Where the thermocline of a lake stood on a date in other years, as its own casts tell: joined with a forecast by their
/// precisions, so that a lake with years of casts leans on them as far as they agree (season.md, "Doubt").
/// </summary>
public sealed class StepHistory
{
    private const int WindowDays = 10, LeastYears = 2;
    private readonly (int Year, int Day, double DepthM)[] _steps;

    private StepHistory((int Year, int Day, double DepthM)[] steps) => _steps = steps;

    /// <summary>The history of a lake.</summary>
    /// <param name="profiles">Its casts; those of fewer than six depths tell no step.</param>
    /// <param name="exceptYear">The year that is forecast: its casts are left out.</param>
    public static StepHistory Of(IReadOnlyList<WaterProfile> profiles, int exceptYear)
    {
        List<(int, int, double)> steps = [];
        foreach (WaterProfile p in Require.NotNull(profiles))
        {
            if (p.At.Year == exceptYear || p.DepthM.Length < 6) continue;
            int[] good = [.. Enumerable.Range(0, p.DepthM.Length).Where(i => double.IsFinite(p.TempC[i]) && (i == 0 || p.DepthM[i] > p.DepthM[i - 1]))];
            if (good.Length < 6) continue;
            Stratification layers = Stratification.Of([.. good.Select(i => p.DepthM[i])], [.. good.Select(i => p.TempC[i])]);
            if (layers.HasThermocline && layers.DensityDifferenceKgPerM3 > 0.5) steps.Add((p.At.Year, p.At.DayOfYear, layers.ThermoclineM));
        }

        return new StepHistory([.. steps]);
    }

    /// <summary>Mean and standard deviation of the step's depth on a day of the year, m; null with fewer than two other years.</summary>
    /// <param name="dayOfYear">1 to 366.</param>
    public (double MeanM, double SdM)? On(int dayOfYear)
    {
        double[] years = [.. _steps.Where(s => Math.Abs(s.Day - dayOfYear) <= WindowDays).GroupBy(s => s.Year).Select(g => g.Average(s => s.DepthM))];
        int n = years.Length;
        if (n < LeastYears) return null;
        double mean = years.Average(), between = years.Sum(y => (y - mean) * (y - mean)) / (n - 1);
        double within = _steps.Where(s => Math.Abs(s.Day - dayOfYear) <= WindowDays).GroupBy(s => s.Year)
            .Average(g => g.Average(s => (s.DepthM - g.Average(t => t.DepthM)) * (s.DepthM - g.Average(t => t.DepthM))));
        // A mean of few years is itself in doubt, and so is their spread: a share of the depth is never known better.
        double least = 0.15 + (0.02 * mean);
        return (mean, Math.Sqrt(((between + within) * (1.0 + (1.0 / n))) + (least * least)));
    }

    /// <summary>Samples of the step's depth drawn toward the history by the precisions of both; unchanged where there is none.</summary>
    /// <param name="samples">Depths, m.</param>
    /// <param name="weights">Their weights, sum 1.</param>
    /// <param name="dayOfYear">The day they stand for.</param>
    public double[] Join(double[] samples, double[] weights, int dayOfYear)
    {
        Require.SameLength(Require.NotNull(weights).Length, Require.NotNull(samples).Length, nameof(weights));
        if (_steps.Length == 0 || On(dayOfYear) is not { } history) return samples;
        double sum = 0, mean = 0, variance = 0;
        for (int i = 0; i < samples.Length; i++)
        {
            if (!double.IsFinite(samples[i])) continue;
            sum += weights[i];
            mean += weights[i] * samples[i];
        }

        if (!(sum > 0)) return samples;
        mean /= sum;
        for (int i = 0; i < samples.Length; i++)
            if (double.IsFinite(samples[i])) variance += weights[i] / sum * (samples[i] - mean) * (samples[i] - mean);
        double own = 1.0 / Math.Max(1e-6, variance), past = 1.0 / (history.SdM * history.SdM);
        double centre = ((own * mean) + (past * history.MeanM)) / (own + past), shrink = Math.Sqrt(own / (own + past));
        return [.. samples.Select(s => Math.Max(0.1, centre + ((s - mean) * shrink)))];
    }
}
