using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Season;

namespace SecondShore.Engine.Tests.Season;

/// <summary>A haze depth seen where the wind held the thermocline off its rest counts as what it is at rest.</summary>
public class TiltedReadingTests
{
    private static readonly DateTimeOffset At = new(2024, 8, 20, 18, 0, 0, TimeSpan.Zero);

    [Fact]
    public void A_tilted_haze_depth_counts_as_its_depth_at_rest()
    {
        Outlook free = Compute([]);
        double before = free.Lake.ThermoclineM!.Quantile(0.5);
        Reading level = new(At.AddDays(-3), null, ReadingKind.HazeDepth, before, null, "line 2"), seen = level with { Value = before + 3 };
        double levelled = Compute([seen with { TiltM = 3 }]).Lake.ThermoclineM!.Quantile(0.5), taken = Compute([seen]).Lake.ThermoclineM!.Quantile(0.5);
        Assert.True(Math.Abs(levelled - before) < Math.Abs(taken - before), $"{before} {levelled} {taken}");
        Assert.Equal(before, levelled, 0.6);
    }

    [Fact]
    public void A_tilt_never_takes_a_reading_below_nothing_and_other_readings_have_none()
    {
        Reading odd = new(At.AddDays(-3), null, ReadingKind.HazeDepth, 6, null, "line 2") { TiltM = 50 };
        Reading warm = new(At.AddDays(-3), null, ReadingKind.SurfaceTemperature, 24, null, "line 3") { TiltM = 5 };
        Outlook outlook = Compute([odd, warm]), plain = Compute([odd, warm with { TiltM = 0 }]);
        Assert.Equal(plain.Lake.ThermoclineM!.Spread, outlook.Lake.ThermoclineM!.Spread);
        Assert.True(outlook.Lake.ThermoclineM.Quantile(0.5) > 0);
    }

    private static Outlook Compute(IReadOnlyList<Reading> readings)
    {
        LakeSite site = new() { Name = "Test", Position = new GeoPoint(42, -90), TimeZoneId = "UTC", ElevationM = 200, SecchiM = 3 };
        WeatherSeries weather = ClimateWeather.Make(site, new DateTimeOffset(2023, 2, 20, 0, 0, 0, TimeSpan.Zero), 600 * 24, new SeededRandom(3));
        return OutlookModel.Compute(new OutlookRequest
        {
            Site = site,
            Arms = [new ArmShape("Main lake", Hypsography.FromShape(6e6, 28, 10))],
            At = At,
            Weather = weather,
            Members = 40,
            Readings = readings,
        });
    }
}
