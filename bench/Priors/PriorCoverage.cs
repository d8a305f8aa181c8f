using SecondShore.Answers.Scoring;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Season;

namespace SecondShore.Bench.Priors;

/// <summary>How often what was measured lies in the 80 % interval of blind members.</summary>
internal sealed class PriorCoverage
{
    private const int Members = 40;

    // Blind members stand without a reading: their shared error is that of a long lead.
    private const double LeadDays = 60;

    public int Steps { get; private set; }

    public int StepsInside { get; private set; }

    public int Dates { get; private set; }

    public int DatesInside { get; private set; }

    /// <summary>Ranked probability score of the step, sum over steps, m.</summary>
    public double StepCrps { get; private set; }

    /// <summary>Members of a lake's seasons.</summary>
    public static PriorCoverage Of(PriorLake lake, LakePriors priors)
    {
        PriorCoverage sums = new();
        foreach (SeasonCase season in lake.Used)
        {
            SeededRandom random = new((ulong)season.Year);
            SeasonTrace[] runs = [.. Enumerable.Range(0, Members).Select(_ => SeasonTrace.Run(season, priors.At(LakePriors.Draw(random))))];
            sums.Add(season, runs);
        }

        return sums;
    }

    private void Add(SeasonCase season, SeasonTrace[] runs)
    {
        double[] weights = [.. Enumerable.Repeat(1.0 / runs.Length, runs.Length)];
        for (int p = 0; p < season.Observed.Length; p++)
        {
            ObservedProfile seen = season.Observed[p];
            if (double.IsNaN(seen.ThermoclineM)) continue;
            (double[] samples, double[] shares) = ModelError.Widen([.. runs.Select(r => ErrorSums.ModelThermocline(seen, r.TempC[p]))], weights,
                m => ModelError.ThermoclineSdM(m, LeadDays), 0.1, seen.DepthM[^1]);
            SampleDistribution law = SampleDistribution.Of(samples, shares);
            Steps++;
            if (seen.ThermoclineM >= law.Quantile(0.1) && seen.ThermoclineM <= law.Quantile(0.9)) StepsInside++;
            StepCrps += Crps.Weighted(samples, shares, seen.ThermoclineM);
        }

        if (season.Overturn is not { FirstMixed: { } mixed } measured) return;
        (double[] days, double[] each) = ModelError.Widen([.. runs.Select(r => (double)(r.Overturn ?? season.Day(12, 31)).DayNumber)], weights,
            _ => ModelError.OverturnSdDays, 0, double.MaxValue);
        SampleDistribution dates = SampleDistribution.Of(days, each);
        Dates++;
        if (dates.Quantile(0.1) <= mixed.DayNumber && dates.Quantile(0.9) >= measured.LastStratified.DayNumber) DatesInside++;
    }
}
