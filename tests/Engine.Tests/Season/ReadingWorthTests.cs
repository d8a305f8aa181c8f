using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Season;

namespace SecondShore.Engine.Tests.Season;

public sealed class ReadingWorthTests
{
    private static readonly LakeSite Site =
        new() { Name = "Test", Position = new GeoPoint(42, -90), TimeZoneId = "UTC", ElevationM = 200, SecchiM = 3 };

    private static readonly DateTimeOffset At = new(2024, 8, 25, 15, 0, 0, TimeSpan.Zero);

    [Fact]
    public void A_haze_reading_narrows_the_thermocline_about_as_foretold()
    {
        ArmOutlook before = OutlookModel.Compute(Request([])).Lake;
        ReadingWorth haze = Assert.Single(before.Worth, w => w is { Kind: ReadingKind.HazeDepth, Narrows: WorthOf.Thermocline });
        Assert.True(haze.AfterSd < 0.7 * haze.NowSd && haze.Share > 0.3, $"{haze}");
        Assert.InRange(haze.NowSd / before.ThermoclineM!.Sd, 0.8, 1.25);
        Reading made = new(At.AddHours(-1), null, ReadingKind.HazeDepth, before.ThermoclineM.Quantile(0.4), null, "r");
        ArmOutlook after = OutlookModel.Compute(Request([made])).Lake;
        Assert.InRange(haze.AfterSd / after.ThermoclineM!.Sd, 1 / 1.5, 1.5);
        Assert.True(after.Worth.First(w => w.Kind == ReadingKind.HazeDepth).Share < haze.Share, "the second of a day is worth less");
    }

    [Fact]
    public void No_reading_is_foretold_to_widen_and_a_deep_thermometer_tells_of_turnover()
    {
        ArmOutlook lake = OutlookModel.Compute(Request([])).Lake;
        Assert.All(lake.Worth, w => Assert.InRange(w.Share, 0, 1));
        ReadingWorth deep = Assert.Single(lake.Worth, w => w.Kind == ReadingKind.Temperature);
        Assert.Equal(WorthOf.Turnover, deep.Narrows);
        Assert.True(deep.DepthM > 20 && deep.AfterSd <= deep.NowSd, $"{deep}");
    }

    private static OutlookRequest Request(Reading[] readings) => new()
    {
        Site = Site,
        Arms = [new ArmShape("Main lake", Hypsography.FromShape(4e6, 24, 9))],
        At = At,
        Weather = ClimateWeather.Make(Site, new(2024, 3, 1, 0, 0, 0, TimeSpan.Zero), 300 * 24, new(7)),
        Readings = readings,
        Members = 100,
    };
}
