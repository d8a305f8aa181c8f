using SecondShore.Answers.Scoring;
using SecondShore.Bench.Priors;
using SecondShore.Engine.Season;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>Whether a reading narrows what it was foretold to narrow, on the measured lakes.</summary>
internal sealed class SeasonReadings : IFigure
{
    private const double Factor = 1.5;

    public string Name => "season-readings";

    public string Claim => "spread after one reading as foretold over the spread that came, by reading and by what it narrows";

    public FigureMargin Margin => new(0.03, 0.02);

    public string LeftOut => "each lake's region, when the numbers it is foretold with were learned";

    public IEnumerable<Measured> Measure()
    {
        Dictionary<string, PriorNumbers> without = PriorFile.ReadLeftOut(SeasonPriors.LeftOutPath);
        ScoredLake[] lakes = [.. MeasuredLakes.Read().Select(ScoredLakeReader.From)
            .Select(l => l with { Numbers = without.GetValueOrDefault(l.Name) })];
        if (lakes.Length == 0) yield break;
        int[] regions = ScoreRegions.Of([.. lakes.Select(l => l.Site.Position)]);
        List<ReadingWorthScore>[] scores = new List<ReadingWorthScore>[lakes.Length];
        Parallel.For(0, lakes.Length, i => scores[i] = WorthScore.Of(lakes[i]));
        foreach (var kind in scores.SelectMany(s => s).GroupBy(s => (s.Kind, s.Narrows)).OrderBy(g => g.Key))
        {
            List<ReadingWorthScore>[] own = [.. scores.Select(s => s.Where(x => (x.Kind, x.Narrows) == kind.Key).ToList())];
            foreach (Measured m in Figures($"{Name}-{Word(kind.Key.Kind)}-{kind.Key.Narrows.ToString().ToLowerInvariant()}", lakes, regions, own))
                yield return m;
        }
    }

    private static IEnumerable<Measured> Figures(string name, ScoredLake[] lakes, int[] regions, List<ReadingWorthScore>[] own)
    {
        RegionMeans Over(Func<ReadingWorthScore, double> of) => RegionMeans.Of(regions, i => own[i].Count == 0 ? null : own[i].Average(of))!;
        RegionMeans ratio = Over(s => s.Ratio), within = Over(s => s.Ratio is < Factor and > 1 / Factor ? 1 : 0), left = Over(s => s.AfterSd / s.NowSd);
        string over = $"over {ratio.Count} regions left out";
        yield return new($"{name}-foretold-over-real", ratio.Median, "", FormattableString.Invariant($"median {over}; wanted {1 / Factor:0.00} to {Factor:0.0}"));
        yield return new($"{name}-within-factor", within.Mean, "share", FormattableString.Invariant($"mean {over}; within a factor of {Factor:0.0}"));
        yield return new($"{name}-spread-left", left.Median, "share", $"median {over}; real spread after over before");
        for (int i = 0; i < lakes.Length; i++)
        {
            if (own[i].Count == 0) continue;
            double was = own[i].Average(s => s.NowSd), foretold = own[i].Average(s => s.SdForetold), came = own[i].Average(s => s.AfterSd);
            string against = FormattableString.Invariant($"left out; from {was:0.00} foretold {foretold:0.00}, came {came:0.00}");
            yield return new($"{name}-{lakes[i].Name}", own[i].Average(s => s.Ratio), "", against, OnPage: false);
        }
    }

    private static string Word(ReadingKind kind) => kind switch
    {
        ReadingKind.HazeDepth => "haze",
        ReadingKind.Temperature => "deep-temperature",
        _ => "oxygen",
    };
}
