using SecondShore.Answers.Scoring;
using SecondShore.Engine.Season;

namespace SecondShore.Bench.Priors;

/// <summary>A measured lake as the priors are learned from it: a few seasons, thinned, and the region it is left out with.</summary>
internal sealed class PriorLake
{
    private const int MostProfiles = 30;
    private const double TempSdK = 1.5, SurfaceSdK = 1.0, OverturnSdD = 6;

    public required ScoredLake Lake { get; init; }

    public required int Region { get; init; }

    /// <summary>All seasons, for scores.</summary>
    public required SeasonCase[] All { get; init; }

    /// <summary>Those that are learned from.</summary>
    public required SeasonCase[] Used { get; init; }

    public string Name => Lake.Name;

    /// <summary>Lakes with seasons, in regions.</summary>
    public static PriorLake[] Of(IReadOnlyList<ScoredLake> lakes, int mostSeasons)
    {
        int[] region = ScoreRegions.Of([.. lakes.Select(l => l.Site.Position)]);
        List<PriorLake> made = [];
        for (int i = 0; i < lakes.Count; i++)
        {
            SeasonCase[] all = [.. SeasonCase.Of(lakes[i]).OrderBy(c => c.Year)];
            if (all.Length == 0) continue;
            SeasonCase[] good = [.. all.Where(c => c.Overturn?.FirstMixed is not null)], from = good.Length >= mostSeasons ? good : all;
            int count = Math.Min(mostSeasons, from.Length);
            SeasonCase[] used = [.. Enumerable.Range(0, count).Select(k => Thin(from[count == 1 ? 0 : k * (from.Length - 1) / (count - 1)]))];
            made.Add(new PriorLake { Lake = lakes[i], Region = region[i], All = all, Used = used });
        }

        return [.. made];
    }

    /// <summary>The lake's column parameters by numbers.</summary>
    public LakePriors Priors(PriorNumbers numbers) => ScoreRunner.PriorsOf(Lake, numbers);

    /// <summary>
    /// Residuals of the centre of the priors, always as many: temperatures weigh 3, surface 1, thermocline 2, overturn 2 a lake, each in its own
    /// error; clarity that is known tells of clarity that is not.
    /// </summary>
    public double[] Residuals(PriorNumbers numbers) => Residuals(Priors(numbers).Centre, numbers);

    public double[] Residuals(ColumnParameters centre, PriorNumbers numbers)
    {
        List<double> temps = [], tops = [], steps = [], days = [];
        foreach (SeasonCase season in Used)
        {
            SeasonTrace trace = SeasonTrace.Run(season, centre);
            for (int p = 0; p < season.Observed.Length; p++)
            {
                ObservedProfile seen = season.Observed[p];
                for (int i = 0; i < seen.DepthM.Length; i++)
                {
                    double off = trace.TempC[p][i] - seen.TempC[i];
                    temps.Add(Tame(off / TempSdK));
                    if (seen.DepthM[i] <= 1.1) tops.Add(Tame(off / SurfaceSdK));
                }

                if (double.IsNaN(seen.ThermoclineM)) continue;
                steps.Add(Tame((ErrorSums.ModelThermocline(seen, trace.TempC[p]) - seen.ThermoclineM) / (1.0 + (0.1 * seen.ThermoclineM))));
            }

            if (season.Overturn is { FirstMixed: { } mixed } measured)
                days.Add(Tame(ErrorSums.OverturnError(measured.LastStratified, mixed, trace.Overturn ?? season.Day(12, 31)) / OverturnSdD));
        }

        double[] light = [];
        if (Lake.Site.LightExtinctionPerM is not null || Lake.Site.SecchiM is not null)
        {
            double known = Priors(numbers).Centre.LightExtinctionPerM;
            double guessed = LakePriors.For(Lake.Site with { LightExtinctionPerM = null, SecchiM = null }, Lake.Basin, Lake.Weather.Source, 4, numbers).Centre.LightExtinctionPerM;
            light = [Math.Log(guessed / known) / 0.6];
        }

        return [.. Weighted(temps, 3), .. Weighted(tops, 1), .. Weighted(steps, 2), .. Weighted(days, 2), .. light];
    }

    /// <summary>Sums of the errors of all seasons, as the score counts them.</summary>
    public ErrorSums Score(LakePriors priors) => BlindScore.Sums(All, priors, null, CancellationToken.None);

    private static IEnumerable<double> Weighted(List<double> residuals, double weight)
    {
        double each = residuals.Count == 0 ? 0 : Math.Sqrt(weight / residuals.Count);
        return residuals.Select(r => each * r);
    }

    private static double Tame(double r) => Math.Abs(r) <= 3 ? r : Math.Sign(r) * Math.Sqrt((6 * Math.Abs(r)) - 9);

    private static SeasonCase Thin(SeasonCase season)
    {
        int every = (season.Observed.Length + MostProfiles - 1) / MostProfiles;
        return season.With([.. season.Observed.Where((_, i) => i % every == 0)]);
    }
}
