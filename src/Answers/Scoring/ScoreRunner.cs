using SecondShore.Engine.Season;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Scoring;

/// <summary>Scores the season model on measured lakes.</summary>
public static class ScoreRunner
{
    /// <summary>Scores lakes in one mode.</summary>
    /// <param name="lakes">The lakes.</param>
    /// <param name="mode">How they are scored.</param>
    /// <param name="progress">Share done, 0 to 1.</param>
    /// <param name="cancel">Stops between seasons.</param>
    public static ScoreReport Run(IReadOnlyList<ScoredLake> lakes, ScoreMode mode, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(lakes);
        List<LakeScore> scores = [];
        for (int i = 0; i < lakes.Count; i++)
        {
            int lake = i;
            IProgress<double>? part = progress is null ? null : new PartProgress(progress, lake, lakes.Count);
            scores.Add(mode switch
            {
                ScoreMode.Few => FewScore.Of(lakes[i], part, cancel),
                ScoreMode.Fit => FitScore.Of(lakes[i], part, cancel),
                ScoreMode.Hindcast => HindcastScore.Of(lakes[i], part, cancel),
                _ => BlindScore.Of(lakes[i], part, cancel),
            });
            progress?.Report((i + 1.0) / lakes.Count);
        }

        return new ScoreReport(scores, [ScoreSummary.Of(ModeWord(mode), scores)]);
    }

    /// <summary>Scores lake folders in one mode.</summary>
    /// <inheritdoc cref="Run(IReadOnlyList{ScoredLake}, ScoreMode, IProgress{double}?, CancellationToken)"/>
    /// <exception cref="CouldNotComputeException">A folder lacks what a score needs.</exception>
    public static ScoreReport Run(IReadOnlyList<LakeFolder> lakes, ScoreMode mode, IProgress<double>? progress = null, CancellationToken cancel = default) =>
        Run([.. lakes.Select(ScoredLakeReader.From)], mode, progress, cancel);

    /// <summary>The mode as scripts write it.</summary>
    public static string ModeWord(ScoreMode mode) => mode switch
    {
        ScoreMode.Few => "few",
        ScoreMode.Fit => "fit",
        ScoreMode.Hindcast => "hindcast",
        _ => "blind",
    };

    /// <summary>Priors of a measured lake: what the outlook would take.</summary>
    internal static LakePriors PriorsOf(ScoredLake lake) =>
        LakePriors.For(lake.Site, lake.Basin, lake.Weather.Source, LakePriors.MeanWindMps(lake.Weather.Segments));

    internal static LakeScore Score(ScoredLake lake, ScoreMode mode, ErrorSums sums, List<string> why)
    {
        if (sums.Count == 0) why.Add("no measured temperature falls into a season with weather");
        if (sums.Count > 0 && sums.SurfaceCount == 0) why.Add("no reading is as shallow as 1.1 m");
        if (sums.Count > 0 && sums.ThermoclineCount == 0) why.Add("no profile has six depths across a thermocline");
        if (sums.Count > 0 && sums.OverturnCount == 0) why.Add("no year's overturn is bracketed: sampling ended while the lake was layered");
        return new LakeScore
        {
            Lake = lake.Name,
            Mode = ModeWord(mode),
            TemperatureRmseC = sums.TemperatureRmse,
            SurfaceRmseC = sums.SurfaceRmse,
            ThermoclineMaeM = sums.ThermoclineMae,
            OverturnMaeDays = sums.OverturnMae,
            N = sums.Count,
            Why = why,
        };
    }

    private sealed class PartProgress(IProgress<double> whole, int index, int count) : IProgress<double>
    {
        public void Report(double value) => whole.Report((index + value) / count);
    }
}

/// <summary>Defaults only, each season from its first profile.</summary>
internal static class BlindScore
{
    public static LakeScore Of(ScoredLake lake, IProgress<double>? progress, CancellationToken cancel)
    {
        List<SeasonCase> cases = SeasonCase.Of(lake);
        ColumnParameters centre = ScoreRunner.PriorsOf(lake).Centre;
        ErrorSums sums = new();
        for (int i = 0; i < cases.Count; i++)
        {
            cancel.ThrowIfCancellationRequested();
            sums.Add(cases[i], SeasonTrace.Run(cases[i], centre), DateTimeOffset.MinValue);
            progress?.Report((i + 1.0) / cases.Count);
        }

        return ScoreRunner.Score(lake, ScoreMode.Blind, sums, []);
    }
}
