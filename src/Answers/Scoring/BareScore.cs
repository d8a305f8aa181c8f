using SecondShore.Answers.Lake;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Season;

namespace SecondShore.Answers.Scoring;

/// <summary>Position, height, area and depth alone, or not even the depth: weather, shape, clarity, levels and casts are withheld, so that all rests on a made-up climate.</summary>
internal static class BareScore
{
    // Five to each made-up weather.
    private const int Members = 60;

    public static LakeScore Of(ScoredLake lake, ScoreMode mode, IProgress<double>? progress, CancellationToken cancel)
    {
        (LakeSite site, Hypsography basin) = Bare(lake, mode == ScoreMode.Bare);
        List<SeasonCase> cases = SeasonCase.Of(lake);
        ErrorSums sums = new();
        List<double> steps = [], dates = [];
        for (int i = 0; i < cases.Count; i++)
        {
            cancel.ThrowIfCancellationRequested();
            SeasonCase season = cases[i];
            OutlookRequest request = new()
            {
                Site = site,
                Arms = [new ArmShape("lake", basin)],
                At = season.Instant(9, 1),
                Source = WeatherSource.Climate,
                Numbers = lake.Numbers,
                Members = Members,
                Seed = (ulong)season.Year,
            };
            SeasonMembers members = OutlookModel.ComputeMembers(request, null, cancel);
            MemberCourse course = new(members, season);
            foreach (ObservedProfile seen in season.Observed) Profile(course, members, seen, basin.MaxDepthM, sums, steps);
            sums.AddOverturn(season, course.MedianOverturn());
            Date(course, season, dates);
            progress?.Report((i + 1.0) / cases.Count);
        }

        return ScoreRunner.Score(lake, mode, sums, []) with
        {
            Coverage80 = Mean([.. steps, .. dates]),
            Coverage80Thermocline = Mean(steps),
            Coverage80Overturn = Mean(dates),
        };
    }

    /// <summary>What is left of a lake.</summary>
    internal static (LakeSite Site, Hypsography Basin) Bare(ScoredLake lake, bool knowsDepth)
    {
        double areaM2 = lake.Site.SurfaceAreaM2 ?? lake.Basin.SurfaceAreaM2;
        double depthM = knowsDepth ? lake.Site.MaxDepthM ?? lake.Basin.MaxDepthM : PreparedLake.AssumedMaxDepthM;
        LakeSite site = new()
        {
            Name = lake.Site.Name,
            Position = lake.Site.Position,
            ElevationM = lake.Site.ElevationM,
            TimeZoneId = lake.Site.TimeZoneId,
            SurfaceAreaM2 = areaM2,
            MaxDepthM = depthM,
        };
        return (site, Hypsography.FromShape(areaM2, depthM));
    }

    private static void Profile(MemberCourse course, SeasonMembers members, ObservedProfile seen, double deepestM, ErrorSums sums, List<double> inside)
    {
        (double median, double[] samples, double[] weights, _) = course.ThermoclineM(seen);
        sums.AddProfile(seen, course.MedianAt(seen), median);
        if (double.IsNaN(seen.ThermoclineM)) return;
        // Nothing was known since the season began.
        double lead = Math.Max(0, (seen.At - members.StartUtc).TotalDays);
        (samples, weights) = ModelError.Widen(samples, weights, m => ModelError.ThermoclineSdM(m, lead), 0.1, Math.Max(deepestM, seen.DepthM[^1]));
        SampleDistribution law = SampleDistribution.Of(samples, weights);
        inside.Add(Interval80.Holds(law, seen.ThermoclineM, seen.ThermoclineM));
    }

    private static void Date(MemberCourse course, SeasonCase season, List<double> inside)
    {
        if (season.Overturn is not { FirstMixed: { } mixed } measured) return;
        int newYear = season.FirstDay.DayNumber;
        (double[] days, double[] weights) = ModelError.Widen(course.OverturnDays(), course.Weights(), _ => ModelError.OverturnSdDays, 0, 364);
        SampleDistribution law = SampleDistribution.Of(days, weights);
        inside.Add(Interval80.Holds(law, measured.LastStratified.DayNumber - newYear, mixed.DayNumber - newYear));
    }

    private static double? Mean(List<double> values) => values.Count == 0 ? null : values.Average();
}
