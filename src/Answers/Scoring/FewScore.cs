using SecondShore.Engine.Season;

namespace SecondShore.Answers.Scoring;

/// <summary>Three readings between mid July and mid September, then scored to the overturn.</summary>
internal static class FewScore
{
    private const int Members = 64;

    public static LakeScore Of(ScoredLake lake, IProgress<double>? progress, CancellationToken cancel)
    {
        List<SeasonCase> cases = SeasonCase.Of(lake);
        ErrorSums sums = new();
        List<string> why = [];
        int used = 0;
        for (int i = 0; i < cases.Count; i++)
        {
            cancel.ThrowIfCancellationRequested();
            if (Score(cases[i], sums, cancel)) used++;
            progress?.Report((i + 1.0) / cases.Count);
        }

        if (used == 0) why.Add("no season has three profiles with a thermocline between 15 July and 15 September");
        return ScoreRunner.Score(lake, ScoreMode.Few, sums, why);
    }

    private static bool Score(SeasonCase season, ErrorSums sums, CancellationToken cancel)
    {
        List<ObservedProfile> chosen = Choose(season);
        if (chosen.Count < 2) return false;
        DateTimeOffset last = chosen[^1].At;
        OutlookRequest request = SeasonRequest.Of(season, last.AddHours(1), Members) with
        {
            Weather = season.Forcing.Weather,
            Profiles = [season.Start],
            Readings = [.. chosen.SelectMany(p => new[]
            {
                new Reading(p.At, null, ReadingKind.SurfaceTemperature, p.TempC[0], null, "score"),
                new Reading(p.At, null, ReadingKind.HazeDepth, p.ThermoclineM, null, "score"),
            })],
        };
        MemberCourse course = new(OutlookModel.ComputeMembers(request, null, cancel), season);
        DateTimeOffset until = season.Overturn is { } o ? new DateTimeOffset((o.FirstMixed ?? o.LastStratified).ToDateTime(TimeOnly.MaxValue), TimeSpan.Zero) : DateTimeOffset.MaxValue;
        foreach (ObservedProfile seen in season.Observed.Where(p => p.At > last && p.At <= until))
        {
            sums.AddProfile(seen, course.MedianAt(seen), course.ThermoclineM(seen).Median);
        }

        sums.AddOverturn(season, course.MedianOverturn());
        return true;
    }

    // First, middle and last of the window, so that the readings stand apart as an angler's would.
    internal static List<ObservedProfile> Choose(SeasonCase season)
    {
        DateTimeOffset from = season.Instant(7, 15), to = season.Instant(9, 16);
        ObservedProfile[] window = [.. season.Observed.Where(p => p.At >= from && p.At < to && !double.IsNaN(p.ThermoclineM))];
        if (window.Length <= 3) return [.. window];
        DateTimeOffset middle = window[0].At + ((window[^1].At - window[0].At) / 2);
        return [window[0], window[1..^1].MinBy(p => Math.Abs((p.At - middle).TotalHours))!, window[^1]];
    }
}

/// <summary>Requests of the outlook for a measured season.</summary>
internal static class SeasonRequest
{
    public static OutlookRequest Of(SeasonCase season, DateTimeOffset at, int members) => new()
    {
        Site = season.Lake.Site,
        Arms = [new ArmShape("lake", season.Lake.Basin)],
        At = at,
        Source = season.Lake.Weather.Source,
        Levels = season.Lake.Levels,
        Flows = season.Lake.Flows,
        Members = members,
        Seed = (ulong)season.Year,
        Numbers = season.Lake.Numbers,
        MeanWindMps = LakePriors.MeanWindMps(season.Lake.Weather.Segments),
    };
}
