using SecondShore.Engine.Season;

namespace SecondShore.Answers.Scoring;

/// <summary>What one oxygen cast says of the outlook's floor of oxygen.</summary>
/// <param name="Season">The season's year.</param>
/// <param name="At">When it was taken.</param>
/// <param name="MeasuredFloorM">Depth below which all measured was under 3 mg/L, m; NaN where the deepest reading had enough.</param>
/// <param name="ChanceShort">Chance the outlook gave that the deepest reading is short, 0 to 1.</param>
/// <param name="ErrorM">Told depth less the measured one, m; NaN where either is missing or the measured one is not known to 2.5 m.</param>
/// <param name="Inside">1 where the 80 % interval holds the measured depth, else 0; NaN as the error.</param>
public sealed record OxygenCastScore(int Season, DateTimeOffset At, double MeasuredFloorM, double ChanceShort, double ErrorM, double Inside)
{
    /// <summary>Whether short or not was told rightly.</summary>
    public bool IsRight => (ChanceShort >= 0.5) == double.IsFinite(MeasuredFloorM);
}

/// <summary>Scores the depth of 3 mg/L on a lake with oxygen casts: blind, and after one reading just under the thermocline.</summary>
public static class OxygenScore
{
    private const int Members = 64;
    private const double WidestGapM = 2.5, UnderM = 1.5, LeastDepthM = 5, LeastShare = 0.3;

    /// <summary>Blind: each season from its first cast of temperature, whose oxygen is not looked at.</summary>
    public static List<OxygenCastScore> Blind(ScoredLake lake, CancellationToken cancel = default)
    {
        List<OxygenCastScore> scores = [];
        foreach (SeasonCase season in SeasonCase.Of(lake))
        {
            List<(DateTimeOffset At, OxygenCast Cast)> casts = Casts(season);
            if (casts.Count > 0) Score(season, season.Start.At.AddHours(1), [], casts, scores, cancel);
        }

        return scores;
    }

    /// <summary>After one reading between 15 July and 15 September: only later casts are scored.</summary>
    public static List<OxygenCastScore> AfterOne(ScoredLake lake, CancellationToken cancel = default)
    {
        List<OxygenCastScore> scores = [];
        foreach (SeasonCase season in SeasonCase.Of(lake))
        {
            List<(DateTimeOffset At, OxygenCast Cast)> casts = Casts(season);
            int chosen = casts.FindIndex(c => c.At >= season.Instant(7, 15) && c.At < season.Instant(9, 16));
            if (chosen < 0 || chosen == casts.Count - 1) continue;
            (DateTimeOffset at, OxygenCast cast) = casts[chosen];
            Score(season, at.AddHours(1), [Reading(season, at, cast)], casts[(chosen + 1)..], scores, cancel);
        }

        return scores;
    }

    /// <summary>Casts with oxygen of a season after its start, April to November, one a day, that reach far enough down.</summary>
    internal static List<(DateTimeOffset At, OxygenCast Cast)> Casts(SeasonCase season)
    {
        List<(DateTimeOffset, OxygenCast)> casts = [];
        DateTimeOffset first = season.Instant(4, 1), last = season.Instant(12, 1), next = DateTimeOffset.MinValue;
        double deep = Math.Max(LeastDepthM, LeastShare * season.Lake.Basin.MaxDepthM);
        foreach (WaterProfile p in season.Lake.Profiles)
        {
            if (p.At <= season.Start.At || p.At < first || p.At >= last || p.At < next || p.At >= season.Forcing.Weather.EndUtc) continue;
            OxygenCast? cast = OxygenCast.Of(p, season.Lake.Basin.MaxDepthM * 1.05);
            if (cast is not { DepthM.Length: >= 2 } || cast.DepthM[^1] < deep) continue;
            casts.Add((p.At, cast));
            next = p.At.AddHours(20);
        }

        return casts;
    }

    // As one would lower a meter: a little under the thermocline that was seen that day, else to half the depth.
    private static Reading Reading(SeasonCase season, DateTimeOffset at, OxygenCast cast)
    {
        double step = season.Observed.FirstOrDefault(p => p.At == at)?.ThermoclineM ?? double.NaN;
        double target = double.IsNaN(step) ? 0.5 * cast.DepthM[^1] : step + UnderM;
        int nearest = Enumerable.Range(0, cast.DepthM.Length).MinBy(i => Math.Abs(cast.DepthM[i] - target));
        return new Reading(at, null, ReadingKind.Oxygen, cast.MgPerL[nearest], cast.DepthM[nearest], "score");
    }

    private static void Score(SeasonCase season, DateTimeOffset at, Reading[] readings,
        List<(DateTimeOffset At, OxygenCast Cast)> casts, List<OxygenCastScore> scores, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        OutlookRequest request = SeasonRequest.Of(season, at, Members) with
        {
            Weather = season.Forcing.Weather,
            Profiles = [season.Start],
            Readings = readings,
        };
        SeasonMembers members = OutlookModel.ComputeMembers(request, null, cancel);
        double[] weights = [.. members.Weights];
        foreach ((DateTimeOffset taken, OxygenCast cast) in casts)
        {
            int day = (int)Math.Floor((taken - members.StartUtc).TotalDays);
            if (day < 0 || day >= members.OxygenFloorM(0).Length) continue;
            double[] floors = [.. Enumerable.Range(0, members.Count).Select(m => (double)members.OxygenFloorM(m)[day])];
            double[] errors = [.. Enumerable.Range(0, members.Count).Select(m => (double)members.OxygenFloorSdM(m)[day])];
            double deepest = cast.DepthM[^1], chance = 0, truth = cast.FloorM, error = double.NaN, inside = double.NaN;
            for (int m = 0; m < floors.Length; m++)
                if (floors[m] <= deepest) chance += weights[m];
            bool isTold = chance >= 0.5 && double.IsFinite(truth) && cast.FloorGapM <= WidestGapM;
            if (isTold && OxygenOutlook.Law(floors, errors, weights, season.Lake.Basin.MaxDepthM) is { } law)
                (error, inside) = (law.Quantile(0.5) - truth, Interval80.Holds(law, truth, truth));
            scores.Add(new OxygenCastScore(season.Year, taken, truth, chance, error, inside));
        }
    }
}
