using SecondShore.Answers.Lake;
using SecondShore.Answers.Learn;
using SecondShore.App.Compute.Views;
using SecondShore.App.Store;
using SecondShore.Engine.Basin.Arms;
using SecondShore.Engine.Season;

namespace SecondShore.App.Compute;

/// <summary>The engine's outlook as the page shows it.</summary>
internal static class OutlookViews
{
    private static readonly TimeSpan StillTelling = TimeSpan.FromDays(21);

    public static OutlookView Of(PreparedLake lake, Outlook outlook, int members, IReadOnlyList<RecordRow> records, UnitSystem units)
    {
        ArmOutlook whole = outlook.Lake;
        int depths = whole.Profile.Count;
        float[] season = new float[whole.Days.Count * depths];
        for (int day = 0; day < whole.Days.Count; day++)
            whole.Days[day].MedianTempC.AsSpan(0, Math.Min(depths, whole.Days[day].MedianTempC.Length)).CopyTo(season.AsSpan(day * depths));
        // A hundredth of a degree is more than is drawn, and a third of the size.
        for (int i = 0; i < season.Length; i++) season[i] = MathF.Round(season[i], 2);
        List<RefusedView> refused = [.. Refused(outlook, units)];
        return new OutlookView
        {
            At = outlook.At,
            State = whole.State,
            ChanceStratified = whole.ChanceStratified,
            ThermoclineM = whole.ThermoclineM.SpreadOrNull(),
            WarmSkin = outlook.SkinNamed?.Say(units),
            OxygenFloorM = whole.OxygenFloorM.SpreadOrNull(),
            SurfaceTempC = depths > 0 ? whole.Profile[0].TempC : default,
            TurnoverInDays = whole.TurnoverInDays.SpreadOrNull(),
            TurnoverDays = whole.TurnoverInDays is { } turns ? [.. turns.Values] : [],
            DepthM = [.. whole.Profile.Select(p => p.DepthM)],
            TempC = [.. whole.Profile.Select(p => p.TempC)],
            Measured = Measured(lake, outlook.At),
            FirstDay = whole.Days.Count > 0 ? whole.Days[0].Date : DateOnly.FromDateTime(outlook.At.DateTime),
            SeasonTempC = season,
            SeasonThermoclineM = [.. whole.Days.Select(d => d.ChanceStratified >= 0.5 ? d.ThermoclineM.SpreadOrNull() : null)],
            Arms = [.. outlook.Arms.Select(a => new ArmView(ArmText.Of(a.Name, units.Speech), a.State, a.ThermoclineM.SpreadOrNull(), a.TurnoverInDays.SpreadOrNull()))],
            IsRoughGuess = outlook.IsRoughGuess,
            Members = members,
            Haze = LastHaze(lake, records, outlook.At, [.. refused.Select(r => r.Source)]),
            Assumed = outlook.Assumed.Say(units),
            Doubted = outlook.Doubted.Say(units),
            Refused = refused,
            Next = NextReading.Of(outlook, lake.Folder, units).FirstOrDefault(),
            Unused = [.. UnusedReadings.Of(lake.Folder, outlook.At).Select(u => new UnusedView(u.Source, u.At, u.Why == UnusedBecause.EarlierSeason))],
        };
    }

    private static IEnumerable<RefusedView> Refused(Outlook outlook, UnitSystem units) =>
        from found in outlook.Doubted
        where found.Kind == SeasonFindings.LeftOut && found.Values is [{ Other: string }, { Other: Finding }]
        select new RefusedView((string)found.Values[0].Other!, Finding.Capital(((Finding)found.Values[1].Other!).Say(units)));

    // A haze that was refused is not what the answer rests on.
    private static HazeSeen? LastHaze(PreparedLake lake, IReadOnlyList<RecordRow> records, DateTimeOffset at, HashSet<string> refused)
    {
        Reading? last = lake.Folder.Readings
            .Where(r => r.Kind == ReadingKind.HazeDepth && r.At <= at && at - r.At < StillTelling && !refused.Contains(r.Source)).MaxBy(r => r.At);
        return last is null ? null : new HazeSeen(last.Value, last.At, records.Any(r => r.Id == last.Source));
    }

    // The last cast, if it is recent enough to stand beside the curve.
    private static IReadOnlyList<MeasuredPoint> Measured(PreparedLake lake, DateTimeOffset at)
    {
        WaterProfile? cast = lake.Folder.Profiles.Where(p => p.At <= at && at - p.At < TimeSpan.FromDays(7)).MaxBy(p => p.At);
        List<MeasuredPoint> points = [];
        for (int i = 0; i < (cast?.DepthM.Length ?? 0); i++)
            if (!double.IsNaN(cast!.TempC[i])) points.Add(new MeasuredPoint(cast.DepthM[i], cast.TempC[i]));
        int every = Math.Max(1, points.Count / 14);
        return [.. points.Where((_, i) => i % every == 0)];
    }
}
