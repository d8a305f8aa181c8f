using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Season;

namespace SecondShore.Answers.Scoring;

/// <summary>Runs of a season with draws of a lake's numbers: their mean for temperature, their median for dates and steps.</summary>
internal sealed class MemberRuns
{
    private const int Pairs = 20;

    private readonly SeasonCase _season;
    private readonly SeasonTrace[] _runs;

    private MemberRuns(SeasonCase season, SeasonTrace[] runs) => (_season, _runs) = (season, runs);

    /// <summary>Draws in pairs about the centre, so that few of them have the centre's mean.</summary>
    public static MemberRuns Of(SeasonCase season, LakePriors priors, CancellationToken cancel)
    {
        SeededRandom random = new((ulong)season.Year);
        List<SeasonTrace> runs = [];
        for (int i = 0; i < Pairs; i++)
        {
            cancel.ThrowIfCancellationRequested();
            double[] z = LakePriors.Draw(random);
            runs.Add(SeasonTrace.Run(season, priors.At(z)));
            runs.Add(SeasonTrace.Run(season, priors.At([.. z.Select(v => -v)])));
        }

        return new MemberRuns(season, [.. runs]);
    }

    /// <summary>Mean temperature at a profile's depths, degC.</summary>
    public double[] MeanC(int profile) =>
        [.. Enumerable.Range(0, _season.Observed[profile].DepthM.Length).Select(i => _runs.Average(r => r.TempC[profile][i]))];

    /// <summary>Median thermocline at a profile, m.</summary>
    public double ThermoclineM(int profile)
    {
        ObservedProfile seen = _season.Observed[profile];
        return Median(r => ErrorSums.ModelThermocline(seen, r.TempC[profile]));
    }

    /// <summary>Median day of overturn; the end of the year stands for none.</summary>
    public DateOnly Overturn() => DateOnly.FromDayNumber((int)Math.Round(Median(r => (r.Overturn ?? _season.Day(12, 31)).DayNumber)));

    private double Median(Func<SeasonTrace, double> of) => SampleDistribution.Of([.. _runs.Select(of)]).Quantile(0.5);
}
