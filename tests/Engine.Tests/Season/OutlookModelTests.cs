using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Season;

namespace SecondShore.Engine.Tests.Season;

public class OutlookModelTests
{
    private static readonly LakeSite Site = new() { Name = "Test", Position = new GeoPoint(42, -90), TimeZoneId = "UTC", ElevationM = 200, SecchiM = 3 };
    private static readonly DateTimeOffset At = new(2024, 8, 25, 15, 0, 0, TimeSpan.Zero);
    private static readonly ArmShape Main = new("Main lake", Hypsography.FromShape(4e6, 24, 9));

    [Fact]
    public void Position_depth_and_date_alone_give_an_answer_that_says_what_it_assumed()
    {
        Outlook outlook = OutlookModel.Compute(new OutlookRequest { Site = Site with { SecchiM = null }, Arms = [Main], At = At, Members = 20 });
        Assert.NotEmpty(outlook.Lake.Profile);
        Assert.NotEmpty(outlook.Lake.Days);
        Assert.Contains(outlook.Assumed, s => s.Say(UnitSystem.Metric).Contains("climate", StringComparison.Ordinal));
        Assert.Contains(outlook.Assumed, s => s.Say(UnitSystem.Metric).Contains("Clarity", StringComparison.Ordinal));
        Assert.Empty(outlook.Doubted);
        Assert.InRange(outlook.Lake.ChanceStratified, 0, 1);
    }

    [Fact]
    public void Cold_water_over_the_warmer_deep_of_winter_is_no_layer_to_fish()
    {
        LakeSite north = Site with { Position = new GeoPoint(50, -94) };
        Outlook outlook = OutlookModel.Compute(new OutlookRequest { Site = north, Arms = [Main], At = new(2024, 12, 20, 15, 0, 0, TimeSpan.Zero), Members = 20 });
        Assert.True(outlook.Lake.Profile[0].TempC.P50 < outlook.Lake.Profile[^1].TempC.P50 - 1, "the water lies the winter's way round");
        Assert.Equal(LayerState.Mixed, outlook.Lake.State);
        Assert.Null(outlook.Lake.ThermoclineM);
    }

    [Fact]
    public void The_same_seed_gives_the_same_answer()
    {
        OutlookRequest request = Known() with { Members = 20, Readings = [Haze(8)] };
        Outlook a = OutlookModel.Compute(request), b = OutlookModel.Compute(request);
        Assert.Equal(a.Lake.ThermoclineM!.Spread, b.Lake.ThermoclineM!.Spread);
        Assert.Equal(a.Lake.TurnoverInDays!.Values.ToArray(), b.Lake.TurnoverInDays!.Values.ToArray());
    }

    [Fact]
    public void One_haze_reading_moves_the_thermocline_toward_it_and_narrows_it()
    {
        OutlookRequest request = Known() with { Members = 100 };
        SampleDistribution before = OutlookModel.Compute(request).Lake.ThermoclineM!;
        double target = before.Quantile(0.5) + 2.5;
        SampleDistribution after = OutlookModel.Compute(request with { Readings = [Haze(target)] }).Lake.ThermoclineM!;
        Assert.True(Math.Abs(after.Quantile(0.5) - target) < Math.Abs(before.Quantile(0.5) - target) - 0.5, $"{before.Spread} {after.Spread}");
        Assert.True(after.Sd < before.Sd, $"{before.Spread} {after.Spread}");
    }

    [Fact]
    public void Without_weather_a_reading_ends_the_doubt_that_grew_since_spring()
    {
        OutlookRequest bare = Known() with { Weather = null, Members = 60 };
        SampleDistribution before = OutlookModel.Compute(bare).Lake.ThermoclineM!;
        Outlook seen = OutlookModel.Compute(bare with { Readings = [Haze(before.Quantile(0.5))] });
        Assert.True(OutlookModel.Compute(bare).IsRoughGuess && !seen.IsRoughGuess);
        Assert.True(seen.Lake.ThermoclineM!.Sd < 0.6 * before.Sd, $"{before.Spread} {seen.Lake.ThermoclineM.Spread}");
        Assert.Equal(LayerState.Stratified, seen.Lake.State);
        Assert.True(seen.Lake.TurnoverInDays!.Quantile(0.01) >= 0, "what is told as layered has not turned");
    }

    [Fact]
    public void A_deep_cast_is_followed()
    {
        double[] z = [0, 2, 4, 6, 8, 10, 14, 18, 22], t = [25, 25, 24.8, 24.5, 19, 14, 11, 10, 9.8];
        Outlook outlook = OutlookModel.Compute(Known() with { Members = 40, Profiles = [new WaterProfile(At.AddDays(-1), z, t, null, "cast")] });
        Assert.InRange(outlook.Lake.ThermoclineM!.Quantile(0.5), 6, 9.5);
        ProfilePoint deep = outlook.Lake.Profile.First(p => p.DepthM >= 18);
        Assert.InRange(deep.TempC.P50, 8.5, 11.5);
    }

    [Fact]
    public void Absurd_readings_are_left_out_and_said()
    {
        Reading hot = new(At.AddDays(-2), null, ReadingKind.SurfaceTemperature, 78, null, "readings.csv line 3");
        Reading deep = new(At.AddDays(-2), null, ReadingKind.HazeDepth, 90, null, "readings.csv line 4");
        Outlook with = OutlookModel.Compute(Known() with { Members = 20, Readings = [hot, deep] }), without = OutlookModel.Compute(Known() with { Members = 20 });
        Assert.Equal(2, with.Doubted.Count);
        Assert.Contains("line 3", with.Doubted[0].Say(UnitSystem.Metric), StringComparison.Ordinal);
        Assert.Equal(without.Lake.ThermoclineM!.Spread, with.Lake.ThermoclineM!.Spread);
    }

    [Fact]
    public void A_reading_against_all_others_is_doubted()
    {
        List<Reading> readings = [.. Enumerable.Range(0, 4).Select(i => new Reading(At.AddDays(-8 + (2 * i)), null, ReadingKind.SurfaceTemperature, 24.5, null, $"line {i}"))];
        readings.Add(new Reading(At.AddDays(-1), null, ReadingKind.SurfaceTemperature, 12, null, "line 9"));
        Outlook outlook = OutlookModel.Compute(Known() with { Members = 50, Readings = readings });
        Assert.Contains(outlook.Doubted, s => s.Say(UnitSystem.Metric).StartsWith("line 9", StringComparison.Ordinal));
        Assert.True(outlook.Lake.Profile[0].TempC.P50 > 20);
    }

    [Fact]
    public void A_shallow_arm_turns_before_the_deep_lake()
    {
        ArmShape arm = new("Cove", Hypsography.FromShape(3e5, 9, 4));
        Outlook outlook = OutlookModel.Compute(Known() with { Arms = [arm, Main], Members = 30 });
        Assert.Equal("Main lake", outlook.Lake.Name);
        ArmOutlook cove = outlook.Arms.First(a => a.Name == "Cove");
        Assert.True(cove.TurnoverInDays!.Quantile(0.5) < outlook.Lake.TurnoverInDays!.Quantile(0.5));
        Assert.True(cove.Profile[^1].DepthM <= 9);
    }

    [Fact]
    public void Trading_water_brings_an_arm_nearer_to_its_neighbour()
    {
        ArmShape cove = new("Cove", Hypsography.FromShape(2e5, 12, 5)), open = cove with { Neighbours = [("Main lake", 10.0)] };
        double Gap(ArmShape arm)
        {
            Outlook o = OutlookModel.Compute(Known() with { Arms = [Main with { Neighbours = [("Cove", 10.0)] }, arm], Members = 20 });
            ArmOutlook a = o.Arms[0], b = o.Arms[1];
            return Math.Abs(a.Profile.First(p => p.DepthM == 8).TempC.P50 - b.Profile.First(p => p.DepthM == 8).TempC.P50);
        }

        Assert.True(Gap(open) <= Gap(cove) + 1e-9);
    }

    [Fact]
    public void The_layers_are_followed_hour_by_hour_from_the_instant_on()
    {
        Outlook outlook = OutlookModel.Compute(Known() with { Members = 20 });
        ArmOutlook lake = outlook.Lake;
        Assert.Equal(121, lake.Ahead.Count);
        Assert.Equal(lake.Layers, lake.Ahead[0].Layers);
        Assert.Equal(lake.ThermoclineM!.Spread, lake.Ahead[0].ThermoclineM!.Spread);
        Assert.All(lake.Ahead, hour => Assert.Equal(lake.Layers.Count, hour.Layers.Count));
        // Five days on, at the hour of the daily course, they are where that course has them.
        OutlookDay day = lake.Days.First(d => d.Date == new DateOnly(2024, 8, 29));
        double nearest = lake.Ahead.Skip(84).Take(25).Min(h => Math.Abs(h.ThermoclineM!.Quantile(0.5) - day.ThermoclineM!.Quantile(0.5)));
        Assert.True(nearest < 0.1, $"{nearest}");
        Assert.NotEqual(lake.Ahead[0].Layers[0], lake.Ahead[120].Layers[0]);
    }

    [Fact]
    public void Work_can_be_stopped()
    {
        using CancellationTokenSource stop = new();
        stop.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => OutlookModel.Compute(Known(), null, stop.Token));
    }

    [Fact]
    public void The_southern_summer_is_in_january()
    {
        LakeSite south = Site with { Position = new GeoPoint(-42, 172) };
        Outlook outlook = OutlookModel.Compute(new OutlookRequest { Site = south, Arms = [Main], At = new DateTimeOffset(2025, 2, 10, 0, 0, 0, TimeSpan.Zero), Members = 20 });
        Assert.True(outlook.Lake.ChanceStratified > 0.5);
        Assert.True(outlook.Lake.Profile[0].TempC.P50 > outlook.Lake.Profile[^1].TempC.P50 + 2);
    }

    private static OutlookRequest Known()
    {
        WeatherSeries weather = ClimateWeather.Make(Site, new DateTimeOffset(2023, 2, 20, 0, 0, 0, TimeSpan.Zero), 555 * 24, new SeededRandom(3));
        return new OutlookRequest { Site = Site, Arms = [Main], At = At, Weather = weather, Members = 40 };
    }

    private static Reading Haze(double depthM) => new(At.AddDays(-3), null, ReadingKind.HazeDepth, depthM, null, "readings.csv line 2");
}
