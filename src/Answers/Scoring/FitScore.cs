using SecondShore.Engine.Season;

namespace SecondShore.Answers.Scoring;

/// <summary>Fitted on the first half of the years, scored on the second.</summary>
internal static class FitScore
{
    private const int ProfilesPerSeason = 40;
    private const double UnprovenWeight = 4;
    private const int MostLeftOut = 4;
    private static readonly double[] Weights = [1, 4, 16, 64];

    // A season counts once, whether or not it is run a second time from winter.
    private static readonly double TwiceShare = Math.Sqrt(0.5);
    private const double TempSdK = 1.0, IndependentCasts = 10.0, ThermoclineSdM = 1.5, OverturnSdDays = 5;

    public static LakeScore Of(ScoredLake lake, IProgress<double>? progress, CancellationToken cancel)
    {
        List<SeasonCase> cases = [.. SeasonCase.Of(lake).OrderBy(c => c.Year)];
        if (cases.Count < 2) return ScoreRunner.Score(lake, ScoreMode.Fit, new ErrorSums(), ["a fit needs two seasons or more"]);
        int half = cases.Count / 2;
        LakePriors fitted = Fit(ScoreRunner.PriorsOf(lake), cases[..half], progress, cancel);
        ErrorSums sums = new();
        foreach (SeasonCase season in cases[half..]) sums.Add(season, SeasonTrace.Run(season, fitted.Centre), DateTimeOffset.MinValue);
        return ScoreRunner.Score(lake, ScoreMode.Fit, sums, []);
    }

    /// <summary>Fits a lake's numbers to seasons, each thinned to what is nearly independent; how far the fit may leave the prior, seasons left out decide.</summary>
    public static LakePriors Fit(LakePriors priors, IReadOnlyList<SeasonCase> cases, IProgress<double>? progress, CancellationToken cancel)
    {
        // Long records add little after a few seasons; every other one keeps the fit quick.
        FitSeason[] used = [.. cases.Where((_, i) => cases.Count <= 4 || i % 2 == 0).Select(Thin).Select(c => new FitSeason(c, c.FromWinter()))];
        double? weight = used.Length < 2 ? UnprovenWeight : ProvenWeight(priors, used, progress, cancel);
        return weight is { } proven ? Fitted(priors, used, proven, 6, cancel) : priors;
    }

    private static LakePriors Fitted(LakePriors priors, FitSeason[] used, double weight, int iterations, CancellationToken cancel) =>
        LakeFit.Fit(priors, p => [.. used.SelectMany(s => Residuals(s, p))], iterations, weight, null, cancel);

    // A season that starts from its first cast says little of spring, which sets the deep water: numbers must hold from winter on too.
    private static IEnumerable<double> Residuals(FitSeason season, ColumnParameters parameters)
    {
        List<double> fromCast = Residuals(season.FromCast, SeasonTrace.Run(season.FromCast, parameters));
        if (season.FromWinter is not { } winter) return fromCast;
        return fromCast.Concat(Residuals(winter, SeasonTrace.Run(winter, parameters))).Select(r => TwiceShare * r);
    }

    // The weight of the prior with which the other seasons best foretell those left out; none where they foretell no better than the prior.
    private static double? ProvenWeight(LakePriors priors, FitSeason[] used, IProgress<double>? progress, CancellationToken cancel)
    {
        int count = Math.Min(MostLeftOut, used.Length);
        int[] leftOut = [.. Enumerable.Range(0, count).Select(i => i * (used.Length - 1) / (count - 1))];
        double? best = null;
        double least = leftOut.Sum(i => Residuals(used[i], priors.Centre).Sum(r => r * r));
        for (int k = 0; k < Weights.Length; k++)
        {
            double cost = 0;
            foreach (int left in leftOut)
            {
                LakePriors fitted = Fitted(priors, [.. used.Where((_, i) => i != left)], Weights[k], 4, cancel);
                cost += Residuals(used[left], fitted.Centre).Sum(r => r * r);
            }

            progress?.Report((k + 1.0) / (Weights.Length + 1));
            if (cost < least) (best, least) = (Weights[k], cost);
        }

        return best;
    }

    /// <summary>A season as the fit runs it.</summary>
    /// <param name="FromCast">From its first cast.</param>
    /// <param name="FromWinter">From the mixed lake of early March, where the weather reaches back so far and the first cast is later.</param>
    private sealed record FitSeason(SeasonCase FromCast, SeasonCase? FromWinter);

    private static SeasonCase Thin(SeasonCase season)
    {
        int every = Math.Max(1, season.Observed.Length / ProfilesPerSeason);
        return season.With([.. season.Observed.Where((_, i) => i % every == 0)]);
    }

    private static List<double> Residuals(SeasonCase season, SeasonTrace trace)
    {
        List<double> residuals = [];
        // What a run misses lasts for weeks: a season holds about ten independent casts, however many were made.
        double own = Math.Sqrt(Math.Min(1.0, IndependentCasts / season.Observed.Length));
        for (int p = 0; p < season.Observed.Length; p++)
        {
            ObservedProfile seen = season.Observed[p];
            // The depths of a cast tell much the same: a cast counts as about three readings.
            double weight = own * Math.Sqrt(Math.Min(1.0, 3.0 / seen.DepthM.Length));
            for (int i = 0; i < seen.DepthM.Length; i++) residuals.Add(weight * Tame((trace.TempC[p][i] - seen.TempC[i]) / TempSdK));
            if (double.IsNaN(seen.ThermoclineM)) continue;
            residuals.Add(0.7 * own * Tame((ErrorSums.ModelThermocline(seen, trace.TempC[p]) - seen.ThermoclineM) / ThermoclineSdM));
        }

        if (season.Overturn?.FirstMixed is { } mixed)
        {
            double days = ErrorSums.OverturnError(season.Overturn.LastStratified, mixed, trace.Overturn ?? new DateOnly(season.Year, 12, 31));
            residuals.Add(2.0 * Tame(days / OverturnSdDays));
        }

        return residuals;
    }

    // Beyond three errors a residual grows like a square root, so that a wild reading does not steer.
    private static double Tame(double r) => Math.Abs(r) <= 3 ? r : Math.Sign(r) * Math.Sqrt(3 * Math.Abs(r));
}
