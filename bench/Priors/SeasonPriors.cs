using System.Diagnostics;
using System.Globalization;
using SecondShore.Answers.Scoring;
using SecondShore.Engine.Season;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench.Priors;

/// <summary>Learns the priors of the season from the measured lakes, and scores them on each region while it is left out.</summary>
/// <remarks>
/// Writes <c>src/Engine/Season/Priors/priors.json</c>, or where SECONDSHORE_PRIORS_OUT says: the same file from the same lakes, but for the day.
/// SECONDSHORE_LEARN takes words with commas between: <c>ridge=0.1</c>, <c>-tilt_factor</c> to hold a number at its start,
/// <c>quick</c> to leave no region out and write nothing, <c>present</c> to score the numbers that are there.
/// </remarks>
internal sealed class SeasonPriors : IFigure
{
    private const int MostSeasons = 3, Steps = 6;
    private const double HonestShare = 0.77, DefaultRidge = 0.1;

    // Free, they lowered the cost by no more than their own freedom would (decision 0044).
    private static readonly string[] NotWorthIt = ["grid_air_bias_k", "made_longwave_bias_w_per_m2", "deep_mixing_area_power"];

    private static readonly double[] Spreads = [0.7, 0.8, 0.9, 1.0, 1.1, 1.25, 1.4, 1.6, 2.0];

    public string Name => "season-priors";

    public string Claim => "learns priors.json from the measured lakes; every region is scored with numbers refitted without it";

    public FigureMargin Margin => new(0.02, 0.01);

    public string LeftOut =>
        "each region in turn, from what the numbers it is scored with were fitted to; where their descent begins, and one common factor on the spreads, all lakes had a say";

    public IEnumerable<Measured> Measure()
    {
        PriorLake[] lakes = PriorLake.Of([.. MeasuredLakes.Read().Select(ScoredLakeReader.From)], MostSeasons);
        if (lakes.Length == 0) yield break;
        string[] words = (Environment.GetEnvironmentVariable("SECONDSHORE_LEARN") ?? "").Split(',', StringSplitOptions.RemoveEmptyEntries);
        HashSet<string> held = [.. NotWorthIt, .. words.Where(o => o.StartsWith('-')).Select(o => o[1..])];
        double ridge = Ridge(words);
        PriorNumbers start = new();
        int[] regions = [.. lakes.Select(l => l.Region).Distinct()];
        Say($"{lakes.Length} lakes, {regions.Length} regions, {lakes.Sum(l => l.Used.Length)} seasons; {Cpu()}");
        if (words.Contains("present"))
        {
            PriorTable.Print("as they are, in sample", lakes, _ => PriorNumbers.Learned);
            yield break;
        }

        PriorLearner learner = new(lakes, start, ridge, n => !held.Contains(n.Name), Say);
        PriorPlace place = learner.Learn(Steps);
        PriorNumbers all = PriorLearner.At(start, place.U);
        foreach (PriorNumber n in PriorNumbers.All.Where(n => n.LearnSd > 0)) Say(Invariant($"    {n.Name} {n.Of(start):0.000} -> {n.Of(all):0.000}"));
        Say(Cpu());
        if (words.Contains("quick"))
        {
            PriorTable.Print("in sample", lakes, _ => all);
            yield break;
        }

        Dictionary<int, PriorRefit> left = regions.ToDictionary(r => r, r => learner.Without(r, place));
        Say(Cpu());
        (double wider, CoverageShares held80) = Narrowest(w => PriorTable.Cover(lakes, l => Widened(left[l.Region].Numbers, w)));
        PriorNumbers told = Widened(all, wider);
        ScoreMedians inSample = PriorTable.Print("in sample", lakes, _ => told);
        ScoreMedians leftOut = PriorTable.Print("left out", lakes, l => Widened(left[l.Region].Numbers, wider));
        string path = Environment.GetEnvironmentVariable("SECONDSHORE_PRIORS_OUT") ?? "src/Engine/Season/Priors/priors.json";
        PriorFile.Write(path, lakes, told, new PriorFigures(leftOut, inSample, held80, wider, ridge, left.Values.Max(r => r.LastGainShare)));
        Say($"{path} is written; {Cpu()}");
        foreach (Measured m in Figures(leftOut, inSample, held80)) yield return m;
    }

    private static PriorNumbers Widened(PriorNumbers numbers, double by) =>
        PriorNumbers.All.Where(n => n.LearnSd == 0).Aggregate(numbers, (n, sd) => sd.With(n, sd.Of(n) * by));

    private IEnumerable<Measured> Figures(ScoreMedians leftOut, ScoreMedians inSample, CoverageShares held80)
    {
        foreach ((string what, double without, double with, string unit) in new[]
        {
            ("temperature", leftOut.TemperatureK, inSample.TemperatureK, "K"), ("surface", leftOut.SurfaceK, inSample.SurfaceK, "K"),
            ("thermocline", leftOut.ThermoclineM, inSample.ThermoclineM, "m"), ("overturn", leftOut.OverturnD, inSample.OverturnD, "d"),
        })
        {
            yield return new Measured($"{Name}-left-out-{what}", without, unit, Invariant($"median over regions, each left out; in sample {with:0.00}"));
        }

        yield return new Measured($"{Name}-left-out-interval80-steps", held80.Steps, "share", "mean over regions");
        yield return new Measured($"{Name}-left-out-interval80-dates", held80.Dates, "share", "mean over regions");
    }

    // The narrowest spread that is honest: wider ones hold more and say less.
    private static (double Wider, CoverageShares Held) Narrowest(Func<double, CoverageShares> cover)
    {
        (double Wider, CoverageShares Held) tried = default;
        foreach (double wider in Spreads)
        {
            tried = (wider, cover(wider));
            if (Math.Min(tried.Held.Steps, tried.Held.Dates) >= HonestShare) break;
        }

        return tried;
    }

    private static double Ridge(string[] words)
    {
        string? given = words.FirstOrDefault(o => o.StartsWith("ridge=", StringComparison.Ordinal));
        return given is null ? DefaultRidge : double.Parse(given[6..], CultureInfo.InvariantCulture);
    }

    private static string Cpu()
    {
        using Process own = Process.GetCurrentProcess();
        return Invariant($"{own.TotalProcessorTime.TotalSeconds:0} s of processor");
    }

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);

    internal static void Say(string line) => Console.Error.WriteLine(line);
}
