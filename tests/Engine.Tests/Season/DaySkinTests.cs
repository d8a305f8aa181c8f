using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Season;

namespace SecondShore.Engine.Tests.Season;

public class DaySkinTests
{
    private static readonly double[] DepthsM = [0.25, 0.75, 1.25, 1.75, 2.5, 4, 6, 7, 8, 9, 11, 14];

    // Five kelvin of skin on a seasonal step of four: the skin is the larger jump.
    private static readonly double[] Afternoon = [27, 26.6, 24, 22.3, 22, 22, 22, 21, 19, 18.2, 18, 18];

    [Fact]
    public void The_skin_of_an_afternoon_is_not_the_thermocline()
    {
        Assert.InRange(Stratification.Of(DepthsM, Afternoon).ThermoclineM, 0.7, 1.8);
        LastingLayers lasting = DaySkin.Of(DepthsM, Afternoon, 22);
        Assert.InRange(lasting.Layers.ThermoclineM, 7, 8.5);
        Assert.Equal(5, lasting.SkinK, 9);
        Assert.InRange(lasting.SkinDepthM, 0.75, 1.25);
        Assert.True(lasting.IsStrong);
    }

    [Fact]
    public void Without_a_warming_nothing_is_taken_away()
    {
        LastingLayers lasting = DaySkin.Of(DepthsM, Afternoon, 27);
        Assert.Equal(Stratification.Of(DepthsM, Afternoon), lasting.Layers);
        Assert.Equal(0, lasting.SkinK);
        Assert.True(double.IsNaN(lasting.SkinDepthM));
        Assert.Equal(lasting.Layers, DaySkin.Of(DepthsM, Afternoon, double.NaN).Layers);
    }

    [Fact]
    public void A_mixed_lake_stays_mixed_under_its_skin()
    {
        double[] tempC = [24, 22.5, 20.2, 20, 20, 20, 20, 20, 20, 20, 20, 20];
        Assert.True(Stratification.Of(DepthsM, tempC).HasThermocline);
        LastingLayers lasting = DaySkin.Of(DepthsM, tempC, 20);
        Assert.False(lasting.Layers.HasThermocline);
        Assert.Equal(0, lasting.Layers.DensityDifferenceKgPerM3, 9);
        Assert.True(lasting.IsStrong);
    }

    [Fact]
    public void A_sounder_that_shows_the_skin_is_not_held_against_the_thermocline()
    {
        Stratification seen = DaySkin.Of(DepthsM, Afternoon, 22).Seen;
        Assert.Equal(7.5, seen.ThermoclineM, 0.5);
        Assert.Equal(seen.SecondaryM + 2, seen.StepSeenM(seen.SecondaryM, 2), 6);
    }

    [Fact]
    public void The_coolest_hour_of_a_day_is_forgotten_after_a_day()
    {
        DaySkin skin = new();
        Assert.True(double.IsNaN(skin.CoolestC));
        skin.Add(18);
        for (int h = 0; h < 23; h++) skin.Add(20 + (0.1 * h));
        Assert.Equal(18, skin.CoolestC);
        skin.Add(25);
        Assert.Equal(20, skin.CoolestC);
        skin.Shift(1.5);
        Assert.Equal(21.5, skin.CoolestC);
    }

    [Fact]
    public void The_outlook_of_a_calm_day_is_the_same_at_seven_and_at_five()
    {
        LakeSite site = new() { Name = "Test", Position = new GeoPoint(42, 0), TimeZoneId = "UTC", ElevationM = 200, SecchiM = 3 };
        DateTimeOffset start = new(2024, 2, 20, 0, 0, 0, TimeSpan.Zero), morning = new(2024, 6, 14, 7, 0, 0, TimeSpan.Zero);
        WeatherSeries weather = ClimateWeather.Make(site, start, 300 * 24, new SeededRandom(3));
        // The spring was windy; then two calm hot days follow each other.
        for (int i = weather.StepAt(morning.AddDays(-2)); i <= weather.StepAt(morning.AddDays(1)); i++)
        {
            double sun = Math.Sin(Math.PI * (weather.TimeAt(i).Hour - 5) / 14.0);
            (weather.WindMps[i], weather.ShortwaveWPerM2[i], weather.AirTempC[i]) = (0.6, sun > 0 ? 900 * sun : 0, 24 + (6 * sun));
        }

        ArmShape lake = new("Lake", Hypsography.FromShape(1e6, 14, 6));
        Outlook At(double hours) => OutlookModel.Compute(new OutlookRequest
        {
            Site = site,
            Arms = [lake],
            At = morning.AddHours(hours),
            Weather = weather,
            Members = 24,
            Until = morning.AddDays(2),
        });
        Outlook early = At(0), late = At(10);
        Spread a = early.Lake.ThermoclineM!.Spread, b = late.Lake.ThermoclineM!.Spread;
        Assert.InRange(b.P50, a.P10, a.P90);
        Assert.InRange(a.P50, b.P10, b.P90);
        Assert.NotNull(late.Lake.Skin);
        Assert.True(late.Lake.Skin.DepthM.P90 < b.P50, $"{late.Lake.Skin} {b}");
        Assert.Contains("thermocline", late.SkinNamed!.Say(UnitSystem.Metric), StringComparison.Ordinal);
        // What the layers of the motion stand on is told without the skin as well.
        Assert.Equal(early.Lake.Layers.Average(l => l.UpperDensityKgPerM3), late.Lake.Layers.Average(l => l.UpperDensityKgPerM3), 0.15);
    }
}
