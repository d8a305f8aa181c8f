using SecondShore.Answers.Scoring;
using SecondShore.Bench.Priors;
using SecondShore.Engine.Season;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>Depth of 3 mg/L on the measured lakes with oxygen casts, each region with a demand learned without it.</summary>
/// <remarks>SECONDSHORE_OXYGEN_OUT names a file for the numbers learned from all: <c>src/Engine/Season/Oxygen/oxygen.json</c>.</remarks>
internal sealed class SeasonOxygen : IFigure
{
    private const double StartWeight = 0.1;

    public string Name => "season-oxygen";

    public string Claim => "oxygen short or not under 3 mg/L, its depth, and what the 80 % interval holds: blind and after one reading";

    public FigureMargin Margin => new(0.02, 0.02);

    public string LeftOut =>
        "each lake's region, when the numbers of its water and of its oxygen were learned; and every oxygen reading but the one";

    public IEnumerable<Measured> Measure()
    {
        Dictionary<string, PriorNumbers> without = PriorFile.ReadLeftOut(SeasonPriors.LeftOutPath);
        ScoredLake[] lakes = [.. MeasuredLakes.Read().Select(ScoredLakeReader.From)
            .Where(l => l.Profiles.Any(p => p.OxygenMgPerL is not null))
            .Select(l => l with { Numbers = without.GetValueOrDefault(l.Name) })];
        if (lakes.Length == 0) yield break;
        int[] regions = ScoreRegions.Of([.. lakes.Select(l => l.Site.Position)]);
        OxygenLearner learner = new(lakes, regions, _ => true);
        TellNested(learner, lakes, regions);
        Func<OxygenNumbers, bool> free = n => n is { SecchiPower: 0.75, ReaerationFactor: 1 };
        if (Environment.GetEnvironmentVariable("SECONDSHORE_LEARN") == "quick") yield break;
        OxygenNumbers all = learner.Without(-1, StartWeight, free);
        Say("all", all);
        foreach (string what in new[] { "blind", "after-reading" })
        {
            List<OxygenCastScore>[] scores = new List<OxygenCastScore>[lakes.Length];
            Parallel.For(0, lakes.Length, i =>
            {
                OxygenNumbers oxygen = learner.Without(regions[i], StartWeight, free);
                ScoredLake lake = lakes[i] with { Numbers = (lakes[i].Numbers ?? PriorNumbers.Learned) with { Oxygen = oxygen } };
                scores[i] = what == "blind" ? OxygenScore.Blind(lake) : OxygenScore.AfterOne(lake);
            });
            foreach (Measured m in Figures(what, lakes, regions, scores)) yield return m;
        }

        if (Environment.GetEnvironmentVariable("SECONDSHORE_OXYGEN_OUT") is { Length: > 0 } path) OxygenFile.Write(path, lakes, all);
    }

    // Whether more freedom pays is seen on regions left out.
    private static void TellNested(OxygenLearner learner, ScoredLake[] lakes, int[] regions)
    {
        (string What, Func<OxygenNumbers, bool> Free)[] nested =
        [
            ("demand", n => n is { SecchiPower: 0.75, ReaerationFactor: 1 }),
            ("and power", n => n.ReaerationFactor == 1),
            ("and air", n => n.SecchiPower == 0.75),
            ("all", _ => true),
        ];
        string[] floors = [.. regions.Distinct().Select(r => FormattableString.Invariant($"{lakes[r].Name} {learner.Floor(r):0.00}"))];
        Console.Error.WriteLine("  best of each region by itself: " + string.Join(' ', floors));
        foreach ((string what, Func<OxygenNumbers, bool> free) in nested)
        {
            double[] cost = [.. lakes.Select((_, i) => learner.Cost(i, learner.Without(regions[i], StartWeight, free)))];
            double mean = RegionMeans.Of(regions, i => cost[i])!.Mean;
            string[] each = [.. lakes.Select((l, i) => FormattableString.Invariant($"{l.Name} {cost[i]:0.00}"))];
            Console.Error.WriteLine(FormattableString.Invariant($"  {what,-14} left out {mean:0.000}: {string.Join(' ', each)}"));
            Say("   all", learner.Without(-1, StartWeight, free));
        }
    }

    private IEnumerable<Measured> Figures(string what, ScoredLake[] lakes, int[] regions, List<OxygenCastScore>[] scores)
    {
        for (int i = 0; i < lakes.Length; i++)
        {
            if (scores[i].Count == 0) continue;
            string name = $"{Name}-{what}-{lakes[i].Name}";
            string casts = $"left out; {scores[i].Count} casts, {scores[i].Count(s => double.IsFinite(s.MeasuredFloorM))} of them short";
            double alarms = scores[i].Average(s => s.ChanceShort >= 0.5 && double.IsNaN(s.MeasuredFloorM) ? 1.0 : 0);
            yield return new($"{name}-told-short-and-was-not", alarms, "share", casts, OnPage: false);
            yield return new($"{name}-right", Right(scores[i])!.Value, "share", casts, OnPage: false);
            if (Inside(scores[i]) is { } c) yield return new($"{name}-coverage80", c, "share", "left out", OnPage: false);
            if (Error(scores[i]) is not { } e) continue;
            double bias = scores[i].Where(s => double.IsFinite(s.ErrorM)).Average(s => s.ErrorM);
            string against = FormattableString.Invariant($"left out; median of the absolute error, mean error {bias:0.0}");
            yield return new($"{name}-depth", e, "m", against, OnPage: false);
        }

        foreach ((string figure, string unit, Func<List<OxygenCastScore>, double?> of, string wanted) in
            new (string, string, Func<List<OxygenCastScore>, double?>, string)[]
            {
                ("right", "share", Right, "0.85"), ("depth", "m", Error, what == "blind" ? "1.5 m" : "1.0 m"),
                ("coverage80", "share", Inside, "0.70 to 0.90"),
            })
        {
            if (RegionMeans.Of(regions, i => of(scores[i])) is not { } means) continue;
            string name = $"{Name}-{what}", over = $"{means.Count} regions left out";
            yield return new($"{name}-median-regions-{figure}", means.Median, unit, $"{over}; wanted {wanted}");
            yield return new($"{name}-mean-regions-{figure}", means.Mean, unit, over);
        }
    }

    private static double? Right(List<OxygenCastScore> scores) => scores.Count == 0 ? null : scores.Average(s => s.IsRight ? 1.0 : 0);

    private static double? Error(List<OxygenCastScore> scores)
    {
        double[] errors = [.. scores.Where(s => double.IsFinite(s.ErrorM)).Select(s => Math.Abs(s.ErrorM)).Order()];
        return errors.Length == 0 ? null : errors[errors.Length / 2];
    }

    private static double? Inside(List<OxygenCastScore> scores)
    {
        double[] inside = [.. scores.Where(s => double.IsFinite(s.Inside)).Select(s => s.Inside)];
        return inside.Length == 0 ? null : inside.Average();
    }

    private static void Say(string what, OxygenNumbers n) =>
        Console.Error.WriteLine($"{what}: " + string.Join(", ",
            OxygenNumbers.All.Select(x => FormattableString.Invariant($"{x.Name} {x.Of(n):0.###}"))));
}
