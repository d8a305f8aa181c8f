using SecondShore.Engine.Tests.Learn;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>Whether choosing and leaving by Learn pays, on simulated seasons with a known truth.</summary>
internal sealed class LearnSeasonsFigure : IFigure
{
    public string Name => "learn-seasons";

    public string Claim => "choosing by Learn loses at most half of what rotation loses, intervals cover 80 %, leaving by rule gains a tenth";

    public FigureMargin Margin => FigureMargin.OfValue(0.02);

    public IEnumerable<Measured> Measure()
    {
        int seasons = int.TryParse(Environment.GetEnvironmentVariable("LEARN_SEASONS"), out int asked) ? asked : 1000;
        LearnScore score = LearnSeasons.Run(seasons, 2026, LearnSeasons.OracleRules);
        yield return new Measured("learn-loss-share-of-rotation", score.LearnLoss / score.RotationLoss, "", $"{seasons} seasons of 48 h, even rotation of four trailers");
        yield return new Measured("learn-loss-share-of-oracle", score.LearnLoss / score.OracleLoss, "", "an oracle with the same data, told how much trailers, days and visits differ, by its best rule of three picked with hindsight");
        for (int o = 0; o < score.OracleLosses.Count; o++)
            yield return new Measured($"learn-oracle-{o + 1}", score.OracleLosses[o], "bites per season", o switch { 0 => "look ahead as Learn", 1 => "look ahead, every hour telling in full", _ => "best in the mean of four draws" });
        yield return new Measured("learn-loss", score.LearnLoss, "bites per season", "the best trailer all season");
        yield return new Measured("learn-coverage-80", 100 * score.Coverage, "%", "80 % intervals of trailer rates after a season");
        foreach (double doubt in (double[])[0.7, 0.9, 1.0, 1.4])
        {
            (double day, double rule, double half) = LeaveDays.Run(10000, 7, doubt);
            yield return new Measured($"learn-leave-gain-doubt-{doubt * 10:0}", 100 * ((day / half) - 1), "%", $"30 minutes at every stop; doubt of rates {doubt}, 10,000 days of 8 h; the best policy there is on its steps");
            yield return new Measured($"learn-leave-gain-long-day-doubt-{doubt * 10:0}", 100 * ((rule / half) - 1), "%", "the same by the rule that does not see the day's end");
        }
    }
}
