using SecondShore.Engine.Season;

namespace SecondShore.Answers.Scoring;

/// <summary>What a reading was foretold to narrow, and what it did.</summary>
/// <param name="Season">The season's year.</param>
/// <param name="Kind">The reading.</param>
/// <param name="Narrows">What it narrows.</param>
/// <param name="NowSd">Standard deviation before it: m, or days.</param>
/// <param name="SdForetold">Standard deviation that was foretold.</param>
/// <param name="AfterSd">Standard deviation after it.</param>
public sealed record ReadingWorthScore(int Season, ReadingKind Kind, WorthOf Narrows, double NowSd, double SdForetold, double AfterSd)
{
    /// <summary>What was foretold over what came: above 1 where the reading did more than was said.</summary>
    public double Ratio => SdForetold / AfterSd;
}

/// <summary>
/// Holds the worth of readings against readings that were made: the first cast from mid August on stands for each in turn.
/// </summary>
public static class WorthScore
{
    private const int Members = 64, MostSeasons = 2;

    /// <summary>Scores a lake, weather known up to the reading and other years behind it.</summary>
    public static List<ReadingWorthScore> Of(ScoredLake lake, CancellationToken cancel = default)
    {
        List<ReadingWorthScore> scores = [];
        SeasonCase[] all = [.. SeasonCase.Of(lake).Where(s => Chosen(s) is not null)];
        int count = Math.Min(MostSeasons, all.Length);
        for (int k = 0; k < count; k++) Score(all[count == 1 ? 0 : k * (all.Length - 1) / (count - 1)], scores, cancel);
        return scores;
    }

    private static ObservedProfile? Chosen(SeasonCase season) =>
        season.Observed.FirstOrDefault(p => p.At >= season.Instant(8, 15) && p.At < season.Instant(9, 16) && !double.IsNaN(p.ThermoclineM));

    private static void Score(SeasonCase season, List<ReadingWorthScore> scores, CancellationToken cancel)
    {
        ObservedProfile seen = Chosen(season)!;
        DateTimeOffset at = seen.At.AddHours(1);
        OutlookRequest request = SeasonRequest.Of(season, at, Members) with
        {
            Weather = WeatherCut.Until(season.Forcing.Weather, at),
            PastYears = [.. season.Lake.Weather.Segments],
            ExcludeYear = season.Year,
            Profiles = [season.Start],
            Levels = [.. season.Lake.Levels.Where(l => l.At <= at)],
            Flows = [.. season.Lake.Flows.Where(f => f.At <= at)],
        };
        ArmOutlook before = OutlookModel.Compute(request, null, cancel).Lake;
        foreach (IGrouping<ReadingKind, ReadingWorth> worth in before.Worth.GroupBy(w => w.Kind))
        {
            if (Made(season, seen, worth.Key, worth.First().DepthM) is not { } reading) continue;
            ArmOutlook after = OutlookModel.Compute(request with { Readings = [reading] }, null, cancel).Lake;
            foreach (ReadingWorth w in worth)
            {
                if (Sd(before, w.Narrows) is { } was && Sd(after, w.Narrows) is { } sd)
                    scores.Add(new ReadingWorthScore(season.Year, w.Kind, w.Narrows, was, w.AfterSd, sd));
            }
        }
    }

    private static Reading? Made(SeasonCase season, ObservedProfile seen, ReadingKind kind, double depthM)
    {
        double maxDepthM = season.Lake.Basin.MaxDepthM;
        if (kind == ReadingKind.HazeDepth) return new Reading(seen.At, null, kind, seen.ThermoclineM, null, "score");
        if (kind == ReadingKind.Temperature)
            return seen.DepthM[^1] >= 0.6 * maxDepthM ? new Reading(seen.At, null, kind, seen.TempC[^1], seen.DepthM[^1], "score") : null;
        WaterProfile? cast = season.Lake.Profiles.FirstOrDefault(p => p.At == seen.At);
        if (cast is null || OxygenCast.Of(cast, maxDepthM) is not { } oxygen) return null;
        int nearest = Enumerable.Range(0, oxygen.DepthM.Length).MinBy(i => Math.Abs(oxygen.DepthM[i] - depthM));
        return Math.Abs(oxygen.DepthM[nearest] - depthM) < 1.5
            ? new Reading(seen.At, null, kind, oxygen.MgPerL[nearest], oxygen.DepthM[nearest], "score") : null;
    }

    private static double? Sd(ArmOutlook lake, WorthOf what) => what switch
    {
        WorthOf.Thermocline => lake.ThermoclineM?.Sd,
        WorthOf.Turnover => lake.TurnoverInDays?.Sd,
        _ => lake.OxygenFloorM?.Sd,
    };
}
