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
        LakeScore[] scores = new LakeScore[lakes.Count];
        double[] done = new double[lakes.Count];
        // Lakes side by side: seasons of one lake are too few and too unlike to fill the cores.
        ParallelOptions side = new() { CancellationToken = cancel, MaxDegreeOfParallelism = Math.Max(1, Environment.ProcessorCount) };
        Parallel.For(0, lakes.Count, side, i =>
        {
            PartProgress part = new(progress, done, i);
            scores[i] = mode switch
            {
                ScoreMode.Few => FewScore.Of(lakes[i], part, cancel),
                ScoreMode.Fit => FitScore.Of(lakes[i], part, cancel),
                ScoreMode.Hindcast => HindcastScore.Of(lakes[i], part, cancel),
                _ => BlindScore.Of(lakes[i], part, cancel),
            };
            part.Report(1);
        });

        // The lakes that taught stand behind those that are scored, so that who lies near one of them is known for it.
        int[] region = ScoreRegions.Of([.. lakes.Select(l => l.Site.Position), .. PriorNumbers.LearnedFrom.Select(l => l.At)]);
        HashSet<int> seen = [.. region.Skip(lakes.Count)];
        for (int i = 0; i < scores.Length; i++) scores[i] = scores[i] with { Region = lakes[region[i]].Name, InSample = seen.Contains(region[i]) };
        return new ScoreReport(scores, [ScoreSummary.Of(ModeWord(mode), scores), ScoreSummary.OfRegions(ModeWord(mode), scores)]);
    }

    /// <summary>Scores lake folders in one mode.</summary>
    /// <inheritdoc cref="Run(IReadOnlyList{ScoredLake}, ScoreMode, IProgress{double}?, CancellationToken)"/>
    /// <exception cref="CouldNotComputeException">A folder lacks what a score needs.</exception>
    public static ScoreReport Run(IReadOnlyList<LakeFolder> lakes, ScoreMode mode, IProgress<double>? progress = null, CancellationToken cancel = default) =>
        Run([.. lakes.Select(ScoredLakeReader.From)], mode, progress, cancel);

    /// <summary>
    /// How far the step stays off, m, when the column's numbers are fitted to the very steps it is then held against (second half of
    /// the years, as in mode fit): a floor under every fit. Null where no cast shows a step.
    /// </summary>
    public static double? StepFloorM(LakeFolder lake, CancellationToken cancel = default) => FitScore.StepFloorM(ScoredLakeReader.From(lake), cancel);

    /// <summary>The mode as scripts write it.</summary>
    public static string ModeWord(ScoreMode mode) => mode switch
    {
        ScoreMode.Few => "few",
        ScoreMode.Fit => "fit",
        ScoreMode.Hindcast => "hindcast",
        _ => "blind",
    };

    /// <summary>Priors of a measured lake: what the outlook would take.</summary>
    internal static LakePriors PriorsOf(ScoredLake lake, PriorNumbers? numbers = null) =>
        LakePriors.For(lake.Site, lake.Basin, lake.Weather.Source, LakePriors.MeanWindMps(lake.Weather.Segments), numbers);

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

    // Progress of one lake among all: lakes report at once, so the sum is taken under a lock.
    private sealed class PartProgress(IProgress<double>? whole, double[] done, int index) : IProgress<double>
    {
        public void Report(double value)
        {
            if (whole is null) return;
            lock (done)
            {
                done[index] = Math.Max(done[index], value);
                whole.Report(done.Sum() / done.Length);
            }
        }
    }
}

/// <summary>Priors only, each season from its first profile, answered as the outlook answers: by the members' mean temperature, middle step and middle date.</summary>
internal static class BlindScore
{
    public static LakeScore Of(ScoredLake lake, IProgress<double>? progress, CancellationToken cancel) =>
        ScoreRunner.Score(lake, ScoreMode.Blind, Sums(SeasonCase.Of(lake), ScoreRunner.PriorsOf(lake), progress, cancel), []);

    public static ErrorSums Sums(IReadOnlyList<SeasonCase> cases, LakePriors priors, IProgress<double>? progress, CancellationToken cancel)
    {
        ErrorSums sums = new();
        for (int i = 0; i < cases.Count; i++)
        {
            MemberRuns runs = MemberRuns.Of(cases[i], priors, cancel);
            for (int p = 0; p < cases[i].Observed.Length; p++) sums.AddProfile(cases[i].Observed[p], runs.MeanC(p), runs.ThermoclineM(p));
            sums.AddOverturn(cases[i], runs.Overturn());
            progress?.Report((i + 1.0) / cases.Count);
        }

        return sums;
    }
}
