using SecondShore.Engine.Season;

namespace SecondShore.Answers.Scoring;

/// <summary>Fitted on the first half of the years, scored on the second by draws of the fitted numbers: the mean temperature, the median step and turnover.</summary>
internal static class FitScore
{
    public static LakeScore Of(ScoredLake lake, IProgress<double>? progress, CancellationToken cancel)
    {
        List<SeasonCase> cases = [.. SeasonCase.Of(lake).OrderBy(c => c.Year)];
        if (cases.Count < 2) return ScoreRunner.Score(lake, ScoreMode.Fit, new ErrorSums(), ["a fit needs two seasons or more"]);
        int half = cases.Count / 2;
        LakePriors fitted = SeasonFit.Of(lake, cases[..half], progress, cancel);
        ErrorSums sums = new();
        foreach (SeasonCase season in cases[half..])
        {
            MemberRuns runs = MemberRuns.Of(season, fitted, cancel);
            for (int p = 0; p < season.Observed.Length; p++)
            {
                ObservedProfile seen = season.Observed[p];
                double[] temps = runs.MeanC(p);
                fitted.Bias?.Correct(seen.DepthM, temps, seen.At.DayOfYear);
                sums.AddProfile(seen, temps, runs.ThermoclineM(p));
            }

            sums.AddOverturn(season, runs.Overturn());
        }

        return ScoreRunner.Score(lake, ScoreMode.Fit, sums, []);
    }

    /// <summary>Mean error of the step on the second half of the years, m, by numbers fitted to those very steps; null without steps.</summary>
    public static double? StepFloorM(ScoredLake lake, CancellationToken cancel)
    {
        List<SeasonCase> cases = [.. SeasonCase.Of(lake).OrderBy(c => c.Year)];
        cases.RemoveRange(0, cases.Count / 2);
        if (cases.Count == 0) return null;
        ColumnParameters best = SeasonFit.ForTheStepAlone(ScoreRunner.PriorsOf(lake), cases, cancel);
        ErrorSums sums = new();
        foreach (SeasonCase season in cases) sums.Add(season, SeasonTrace.Run(season, best), DateTimeOffset.MinValue);
        return sums.ThermoclineMae;
    }
}
