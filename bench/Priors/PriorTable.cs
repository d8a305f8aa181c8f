using SecondShore.Answers.Scoring;
using SecondShore.Engine.Season;

namespace SecondShore.Bench.Priors;

/// <summary>Blind scores of lakes by numbers that may differ from lake to lake, printed on standard error.</summary>
internal static class PriorTable
{
    private const double BadTemperatureK = 3.5, BadThermoclineM = 5;

    /// <summary>Prints every lake and the medians over regions.</summary>
    public static ScoreMedians Print(string title, PriorLake[] lakes, Func<PriorLake, PriorNumbers> numbers)
    {
        ErrorSums[] sums = new ErrorSums[lakes.Length];
        Parallel.For(0, lakes.Length, i => sums[i] = lakes[i].Score(lakes[i].Priors(numbers(lakes[i]))));
        Say($"{title}: lake, region, kelvin, surface, thermocline, overturn, their means, and the lake's light, wind and stirring");
        for (int i = 0; i < lakes.Length; i++) Say(Row(lakes[i], sums[i], lakes[i].Priors(numbers(lakes[i])).Centre));
        ScoreMedians medians = new(
            Median(lakes, sums, s => s.TemperatureRmse),
            Median(lakes, sums, s => s.SurfaceRmse),
            Median(lakes, sums, s => s.ThermoclineMae),
            Median(lakes, sums, s => s.OverturnMae));
        int warm = sums.Count(s => s.TemperatureRmse > BadTemperatureK), deep = sums.Count(s => s.ThermoclineMae > BadThermoclineM);
        Say(FormattableString.Invariant($"  MEDIAN OVER REGIONS {medians.TemperatureK:0.00} K / {medians.SurfaceK:0.00} K")
            + FormattableString.Invariant($" / {medians.ThermoclineM:0.00} m / {medians.OverturnD:0.0} d")
            + FormattableString.Invariant($"; over {BadTemperatureK} K {warm}, over {BadThermoclineM} m {deep}"));
        return medians;
    }

    /// <summary>What 80 % intervals hold of lakes, means over lakes and then over regions.</summary>
    public static CoverageShares Cover(PriorLake[] lakes, Func<PriorLake, PriorNumbers> numbers)
    {
        PriorCoverage[] seen = new PriorCoverage[lakes.Length];
        Parallel.For(0, lakes.Length, i =>
        {
            LakePriors priors = lakes[i].Priors(numbers(lakes[i]));
            seen[i] = PriorCoverage.Of(lakes[i], priors);
        });
        double Mean(Func<PriorCoverage, int> count, Func<PriorCoverage, double> sum) => Enumerable.Range(0, lakes.Length).Where(i => count(seen[i]) > 0)
            .GroupBy(i => lakes[i].Region).Average(g => g.Average(i => sum(seen[i]) / count(seen[i])));
        CoverageShares shares = new(Mean(s => s.Steps, s => s.StepsInside), Mean(s => s.Dates, s => s.DatesInside), Mean(s => s.Steps, s => s.StepCrps));
        Say(FormattableString.Invariant($"stirring's spread {numbers(lakes[0]).StirringLogSd:0.00}: 80 % interval holds {shares.Steps:0.00} of steps")
            + FormattableString.Invariant($", {shares.Dates:0.00} of dates")
            + FormattableString.Invariant($"; CRPS of the step {shares.StepCrpsM:0.00} m"));
        for (int i = 0; i < lakes.Length; i++)
            Say(FormattableString.Invariant($"  {lakes[i].Name,-24} steps {seen[i].StepsInside}/{seen[i].Steps} dates {seen[i].DatesInside}/{seen[i].Dates}"));
        return shares;
    }

    private static string Row(PriorLake lake, ErrorSums s, ColumnParameters c) =>
        FormattableString.Invariant($"  {lake.Name,-24} {lake.Region,2} {s.TemperatureRmse,6:0.00} {s.SurfaceRmse,6:0.00} {s.ThermoclineMae,6:0.00}")
        + FormattableString.Invariant($" {s.OverturnMae,6:0.0}   means {s.BiasSum / s.Count,6:0.00} {s.SurfaceBiasSum / Math.Max(1, s.SurfaceCount),6:0.00}")
        + FormattableString.Invariant($" {s.ThermoclineBias / Math.Max(1, s.ThermoclineCount),6:0.00} {s.OverturnBias / Math.Max(1, s.OverturnCount),6:0.0}")
        + FormattableString.Invariant($"  kd {c.LightExtinctionPerM:0.00} f {c.WindFactor:0.00} m {c.StirringFactor:0.000}");

    private static double Median(PriorLake[] lakes, ErrorSums[] sums, Func<ErrorSums, double?> of)
    {
        double[] means = [.. Enumerable.Range(0, lakes.Length).Where(i => of(sums[i]) is not null)
            .GroupBy(i => lakes[i].Region).Select(g => g.Average(i => of(sums[i])!.Value)).Order()];
        return 0.5 * (means[(means.Length - 1) / 2] + means[means.Length / 2]);
    }

    private static void Say(string line) => SeasonPriors.Say(line);
}
