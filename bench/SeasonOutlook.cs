using System.Diagnostics;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Season;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>Time of a whole outlook: 200 members, five arms, spring to December, with readings.</summary>
internal sealed class SeasonOutlook : IFigure
{
    public string Name => "season-outlook";

    public string Claim => "200 members times five arms from spring to December on all cores, with three readings";

    public FigureMargin Margin => FigureMargin.OfValue(0.25);

    public IEnumerable<Measured> Measure()
    {
        LakeSite site = new() { Name = "Bench", Position = new GeoPoint(40, -86), TimeZoneId = "UTC", ElevationM = 200, SecchiM = 3 };
        WeatherSeries weather = ClimateWeather.Make(site, new DateTimeOffset(2021, 1, 1, 0, 0, 0, TimeSpan.Zero), 1720 * 24, new(1));
        DateTimeOffset at = new(2025, 9, 8, 12, 0, 0, TimeSpan.Zero);
        ArmShape[] arms = [.. Enumerable.Range(0, 5).Select(i => new ArmShape($"Arm {i}", Hypsography.FromShape(2e7 / (1 + (3 * i)), 60.0 / (1 + (0.7 * i))))
        {
            Neighbours = i == 0 ? [] : [($"Arm {i - 1}", 8.0)],
        })];
        Reading[] readings = [.. Enumerable.Range(0, 3).Select(i => new Reading(at.AddDays(-20 + (7 * i)), null, ReadingKind.HazeDepth, 9, null, "bench"))];
        OutlookRequest request = new() { Site = site, Arms = arms, At = at, Weather = weather, Members = 200, Readings = readings };
        long start = Stopwatch.GetTimestamp();
        Outlook outlook = OutlookModel.Compute(request);
        yield return new Measured("season-outlook", Stopwatch.GetElapsedTime(start).TotalSeconds, "s", $"{Environment.ProcessorCount} cores, with readings, {outlook.Arms.Count} arms, target 10");
        start = Stopwatch.GetTimestamp();
        OutlookModel.Compute(request with { Readings = [] });
        yield return new Measured("season-outlook-no-readings", Stopwatch.GetElapsedTime(start).TotalSeconds, "s", $"{Environment.ProcessorCount} cores");
    }
}
