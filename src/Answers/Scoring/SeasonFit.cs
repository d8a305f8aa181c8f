using SecondShore.Engine.Season;

namespace SecondShore.Answers.Scoring;

/// <summary>
/// Fits a lake's numbers to its seasons, and then what the column still misses season after season. How far the numbers may leave the
/// prior, seasons left out decide.
/// </summary>
internal static class SeasonFit
{
    private const int ProfilesPerSeason = 40;
    private const double UnprovenWeight = 4;
    private const int MostSeasons = 12, MostLeftOut = 4;
    private static readonly double[] Weights = [1, 4, 16, 64];

    // A season counts once, whether or not it is run a second time from winter.
    private static readonly double TwiceShare = Math.Sqrt(0.5);

    // What a run misses lasts: over the measured lakes its autocorrelation leaves a season 1.2 to 5.3 independent casts, however many were made.
    private const double TempSdK = 1.0, IndependentCasts = 3.0, ThermoclineSdM = 1.5, OverturnSdDays = 5;

    /// <summary>Fits a lake.</summary>
    /// <param name="lake">The lake.</param>
    /// <param name="cases">Its seasons, one or more.</param>
    /// <param name="progress">Share done, 0 to 1.</param>
    /// <param name="cancel">Stops between runs.</param>
    public static LakePriors Of(ScoredLake lake, IReadOnlyList<SeasonCase> cases, IProgress<double>? progress, CancellationToken cancel)
    {
        LakePriors priors = ScoreRunner.PriorsOf(lake);
        // Long records add little to the numbers after a dozen seasons; more would only take longer.
        int every = (cases.Count + MostSeasons - 1) / MostSeasons;
        FitSeason[] used = [.. cases.Where((_, i) => i % every == 0).Select(Thin).Select(c => new FitSeason(c, c.FromWinter()))];
        LakePriors fitted = Estimate(priors, used, progress, cancel).Of(priors);
        return fitted with { Bias = WhatComesBack(fitted, cases, cancel) };
    }

    /// <summary>Numbers fitted to the steps of seasons alone, nothing left out: what no numbers of the column undercut by much.</summary>
    public static ColumnParameters ForTheStepAlone(LakePriors priors, IReadOnlyList<SeasonCase> cases, CancellationToken cancel) =>
        LakeFit.Fit(priors, p => [.. cases.Select(Thin).SelectMany(c => Residuals(c, SeasonTrace.Run(c, p), 0.1, 3))], 8, 1, null, cancel).Of(priors).Centre;

    private static FitEstimate Estimate(LakePriors priors, FitSeason[] used, IProgress<double>? progress, CancellationToken cancel)
    {
        if (used.Length < 2) return Fitted(priors, used, UnprovenWeight, 6, cancel);
        int count = Math.Min(MostLeftOut, used.Length);
        int[] leftOut = [.. Enumerable.Range(0, count).Select(i => i * (used.Length - 1) / (count - 1))];
        // How well each weight of the prior foretells the seasons that it did not see; no fit at all is one of the choices.
        List<FitEstimate> estimates = [FitEstimate.Prior];
        List<double> costs = [leftOut.Sum(i => Residuals(used[i], priors.Centre).Sum(r => r * r))];
        foreach (double weight in Weights)
        {
            costs.Add(leftOut.Sum(left => Residuals(used[left], Fitted(priors, [.. used.Where((_, i) => i != left)], weight, 4, cancel).Of(priors).Centre).Sum(r => r * r)));
            estimates.Add(Fitted(priors, used, weight, 6, cancel));
            progress?.Report((double)costs.Count / (Weights.Length + 2));
        }

        return FitEstimate.Mix(estimates, costs);
    }

    private static FitEstimate Fitted(LakePriors priors, FitSeason[] used, double weight, int iterations, CancellationToken cancel) =>
        LakeFit.Fit(priors, p => [.. used.SelectMany(s => Residuals(s, p))], iterations, weight, null, cancel);

    private static SeasonBias? WhatComesBack(LakePriors fitted, IReadOnlyList<SeasonCase> cases, CancellationToken cancel)
    {
        List<IReadOnlyList<CastMiss>> seasons = [];
        foreach (SeasonCase season in cases)
        {
            MemberRuns runs = MemberRuns.Of(season, fitted, cancel);
            seasons.Add([.. season.Observed.Select((seen, p) =>
            {
                double[] column = runs.MeanC(p);
                return new CastMiss(seen.At.DayOfYear, seen.DepthM, [.. seen.TempC.Select((t, i) => t - column[i])]);
            })]);
        }

        return SeasonBiasFit.Of(seasons, cases.Max(c => c.Observed.Max(o => o.DepthM[^1])));
    }

    // A season that starts from its first cast says little of spring, which sets the deep water: numbers must hold from winter on too.
    private static IEnumerable<double> Residuals(FitSeason season, ColumnParameters parameters)
    {
        List<double> fromCast = Residuals(season.FromCast, SeasonTrace.Run(season.FromCast, parameters));
        if (season.FromWinter is not { } winter) return fromCast;
        return fromCast.Concat(Residuals(winter, SeasonTrace.Run(winter, parameters))).Select(r => TwiceShare * r);
    }

    private static SeasonCase Thin(SeasonCase season)
    {
        int every = Math.Max(1, season.Observed.Length / ProfilesPerSeason);
        return season.With([.. season.Observed.Where((_, i) => i % every == 0)]);
    }

    private static List<double> Residuals(SeasonCase season, SeasonTrace trace, double tempShare = 1, double stepShare = 0.7)
    {
        List<double> residuals = [];
        double own = Math.Sqrt(Math.Min(1.0, IndependentCasts / season.Observed.Length));
        for (int p = 0; p < season.Observed.Length; p++)
        {
            ObservedProfile seen = season.Observed[p];
            // The depths of a cast tell much the same: a cast counts as about three readings.
            double weight = own * Math.Sqrt(Math.Min(1.0, 3.0 / seen.DepthM.Length));
            for (int i = 0; i < seen.DepthM.Length; i++) residuals.Add(tempShare * weight * Tame((trace.TempC[p][i] - seen.TempC[i]) / TempSdK));
            if (double.IsNaN(seen.ThermoclineM)) continue;
            residuals.Add(stepShare * own * Tame((ErrorSums.ModelThermocline(seen, trace.TempC[p]) - seen.ThermoclineM) / ThermoclineSdM));
        }

        if (season.Overturn?.FirstMixed is { } mixed)
        {
            double days = ErrorSums.OverturnError(season.Overturn.LastStratified, mixed, trace.Overturn ?? season.Day(12, 31));
            residuals.Add(2.0 * Tame(days / OverturnSdDays));
        }

        return residuals;
    }

    // Beyond three errors a residual grows like a square root, so that a wild reading does not steer.
    private static double Tame(double r) => Math.Abs(r) <= 3 ? r : Math.Sign(r) * Math.Sqrt(3 * Math.Abs(r));
}

/// <summary>A season as the fit runs it.</summary>
/// <param name="FromCast">From its first cast.</param>
/// <param name="FromWinter">From the mixed lake of early March, where the weather reaches back so far and the first cast is later.</param>
internal sealed record FitSeason(SeasonCase FromCast, SeasonCase? FromWinter);
