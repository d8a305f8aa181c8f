using SecondShore.Engine.Core;

namespace SecondShore.Engine.Season;

/// <summary>One cast against the column.</summary>
/// <param name="DayOfYear">Day of the year.</param>
/// <param name="DepthM">Depths, m, [n].</param>
/// <param name="MissK">Measured less column, K, [n].</param>
public sealed record CastMiss(int DayOfYear, double[] DepthM, double[] MissK);

/// <summary>
/// Finds what comes back in a column's misses: each season's misses are smoothed over depth and date, and the mean over the seasons
/// is believed as far as seasons agree (random effects by moments, Searle1992; season.md, "What comes back").
/// </summary>
public static class SeasonBiasFit
{
    // Our choices: a tenth of the depth and three weeks are what a step and the weather blur; a field has some six parts of its own.
    private const double DepthShare = 0.1, DateDays = 20, LeastWeight = 0.3, Parts = 6;

    // Believed before any season is seen: half a kelvin comes back, 0.6 K does not.
    private const double BackVarianceK2 = 0.25, YearVarianceK2 = 0.36;

    private const int Depths = 11, FirstDay = 60, DayStep = 10, Days = 31;

    /// <summary>The correction; null without any cast.</summary>
    /// <param name="seasons">Casts of each season.</param>
    /// <param name="deepestM">Depth of the deepest reading, m.</param>
    public static SeasonBias? Of(IReadOnlyList<IReadOnlyList<CastMiss>> seasons, double deepestM)
    {
        Require.NotNull(seasons);
        Require.Positive(deepestM, nameof(deepestM));
        double[] depths = [.. Enumerable.Range(0, Depths).Select(i => deepestM * i / (Depths - 1))];
        double[] days = [.. Enumerable.Range(0, Days).Select(i => (double)(FirstDay + (DayStep * i)))];
        double[][] smooth = [.. seasons.Select(s => Smooth(s, depths, days))];
        if (!smooth.Any(s => s.Any(double.IsFinite))) return null;
        int[] count = [.. Enumerable.Range(0, depths.Length * days.Length).Select(c => smooth.Count(s => double.IsFinite(s[c])))];
        double[] mean = [.. count.Select((n, c) => n == 0 ? 0 : smooth.Where(s => double.IsFinite(s[c])).Sum(s => s[c]) / n)];
        (double back, double year) = Variances(smooth, mean, count);
        return new SeasonBias(depths, days, [.. mean.Select((m, c) => count[c] == 0 ? 0 : m * back / (back + (year / count[c])))]);
    }

    // Kernel mean of a season's misses at every node; NaN where no cast is near.
    private static double[] Smooth(IReadOnlyList<CastMiss> casts, double[] depths, double[] days)
    {
        double[] sum = new double[depths.Length * days.Length], weight = new double[sum.Length];
        double reachM = DepthShare * depths[^1];
        foreach (CastMiss cast in casts)
        {
            for (int d = 0; d < depths.Length; d++)
            {
                double at = 0, near = 0;
                for (int k = 0; k < cast.DepthM.Length; k++)
                {
                    double w = Bell((depths[d] - cast.DepthM[k]) / reachM);
                    at += w * cast.MissK[k];
                    near += w;
                }

                if (near < LeastWeight) continue;
                for (int t = 0; t < days.Length; t++)
                {
                    double w = Bell((days[t] - cast.DayOfYear) / DateDays);
                    sum[(d * days.Length) + t] += w * at / near;
                    weight[(d * days.Length) + t] += w;
                }
            }
        }

        return [.. sum.Select((s, i) => weight[i] >= LeastWeight ? s / weight[i] : double.NaN)];
    }

    // Variance of what comes back, and of what a year adds of its own, each drawn to what is believed before by as many parts as a field has.
    private static (double Back, double Year) Variances(double[][] smooth, double[] mean, int[] count)
    {
        double within = 0, freedom = 0, square = 0, nodes = 0, shares = 0;
        for (int c = 0; c < mean.Length; c++)
        {
            if (count[c] == 0) continue;
            foreach (double[] s in smooth) if (double.IsFinite(s[c])) within += (s[c] - mean[c]) * (s[c] - mean[c]);
            freedom += count[c] - 1;
            square += mean[c] * mean[c];
            shares += 1.0 / count[c];
            nodes++;
        }

        double part = Parts / nodes;
        double year = ((Parts * YearVarianceK2) + (part * within)) / (Parts + (part * freedom));
        double back = ((Parts * BackVarianceK2) + (part * Math.Max(0, square - (year * shares)))) / (2 * Parts);
        return (back, year);
    }

    private static double Bell(double u) => Math.Exp(-0.5 * u * u);
}
