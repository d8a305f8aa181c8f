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
        ScoredLake[] lakes = [.. MeasuredLakes.Read().Select(ScoredLakeReader.From).Select(l => l with { Numbers = without.GetValueOrDefault(l.Name) })];
        if (lakes.Length == 0) yield break;
        int[] regions = ScoreRegions.Of([.. lakes.Select(l => l.Site.Position)]);
        List<ReadingWorthScore>[] scores = new List<ReadingWorthScore>[lakes.Length];
        Parallel.For(0, lakes.Length, i => scores[i] = WorthScore.Of(lakes[i]));
        foreach (var kind in scores.SelectMany(s => s).GroupBy(s => (s.Kind, s.Narrows)).OrderBy(g => g.Key))
        {
            string what = $"{Name}-{Word(kind.Key.Kind)}-{kind.Key.Narrows.ToString().ToLowerInvariant()}";
            foreach ((string figure, string unit, string against, Func<ReadingWorthScore, double> of) in new (string, string, string, Func<ReadingWorthScore, double>)[]
            {
                ("foretold-over-real", "", $"wanted {1 / Factor:0.00} to {Factor:0.0}", s => s.Ratio),
                ("within-factor", "share", $"foretold and real spread within a factor of {Factor:0.0}", s => s.Ratio is < Factor and > 1 / Factor ? 1 : 0),
                ("spread-left", "share", "real spread after over before", s => s.SdAfter / s.SdBefore),
            })
            {
                double[] means = [.. Enumerable.Range(0, lakes.Length).SelectMany(i => scores[i].Where(s => (s.Kind, s.Narrows) == kind.Key).Select(s => (Region: regions[i], Value: of(s))))
                    .GroupBy(s => s.Region).Select(g => g.Average(s => s.Value)).Order()];
                double value = figure == "within-factor" ? means.Average() : 0.5 * (means[(means.Length - 1) / 2] + means[means.Length / 2]);
                yield return new($"{what}-{figure}", value, unit, FormattableString.Invariant($"{(figure == "within-factor" ? "mean" : "median")} over {means.Length} regions left out; {against}"));
            }

            for (int i = 0; i < lakes.Length; i++)
            {
                ReadingWorthScore[] own = [.. scores[i].Where(s => (s.Kind, s.Narrows) == kind.Key)];
                if (own.Length > 0)
                    yield return new($"{what}-{lakes[i].Name}", own.Average(s => s.Ratio), "", FormattableString.Invariant($"left out; from {own.Average(s => s.SdBefore):0.00} foretold {own.Average(s => s.SdForetold):0.00}, came {own.Average(s => s.SdAfter):0.00}"), OnPage: false);
            }
        }
    }

    private static string Word(ReadingKind kind) => kind switch
    {
        ReadingKind.HazeDepth => "haze",
        ReadingKind.Temperature => "deep-temperature",
        _ => "oxygen",
    };
}
