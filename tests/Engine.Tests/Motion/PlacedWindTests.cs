using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Motion;
using SecondShore.Engine.Season;
using Xunit;

namespace SecondShore.Engine.Tests.Motion;

public class PlacedWindTests
{
    private static readonly IReadOnlyList<TwoLayers> Layers = [new(7, 998.3, 999.7, 1)];
    private static readonly PlanePoint West = new(300, 400), Middle = new(2000, 400), East = new(3700, 400);

    [Fact]
    public void Two_stations_that_agree_move_the_water_as_one_even_wind_does()
    {
        WeatherSeries weather = TestWeather.Of(80, i => 4 + (i % 5), i => 250 + (i % 40));
        WindField even = Compute(weather, []), placed = Compute(weather, [Like("a", West, weather), Like("b", East, weather)]);
        double most = 0;
        for (int hour = 0; hour < even.Hours.Count; hour++)
        {
            float[] a = even.OffsetsM(hour), b = placed.OffsetsM(hour);
            for (int w = 0; w < a.Length; w++)
            {
                Assert.Equal(a[w], b[w], 2e-3);
                most = Math.Max(most, Math.Abs(a[w]));
            }
        }

        Assert.True(most > 0.3);
    }

    [Fact]
    public void Winds_that_blow_toward_each_other_pile_warm_water_between_them_which_their_mean_cannot()
    {
        WeatherSeries still = TestWeather.Of(80, _ => 0, _ => 270);
        WindField field = Compute(still, [Steady("west", West, 7, 270), Steady("east", East, 7, 90)]);
        DateTimeOffset at = field.Hours[^1];
        Assert.True(field.ThermoclineOffsetM(Middle, at) > 0.2);
        Assert.True(field.ThermoclineOffsetM(West, at) < -0.1);
        Assert.True(field.ThermoclineOffsetM(East, at) < -0.1);
        ColumnCurrent drift = field.ColumnAt(West, at)!;
        Assert.True(drift.Surface.EastMps > 0.05);
    }

    [Fact]
    public void Hours_that_no_station_knows_are_the_lakes_own_wind()
    {
        WeatherSeries weather = TestWeather.Of(80, _ => 6, _ => 270);
        StationWind elsewhere = new("old", West, [TestWeather.Start.AddYears(-1)], [9], [90]);
        WindField even = Compute(weather, []), placed = Compute(weather, [elsewhere]);
        Assert.Equal(even.ThermoclineOffsetM(East, even.Hours[^1]), placed.ThermoclineOffsetM(East, placed.Hours[^1]), 2e-3);
    }

    [Fact]
    public void An_hour_is_the_mean_stress_of_its_rows_a_calm_needs_no_direction_and_long_gaps_stay_open()
    {
        DateTimeOffset t = TestWeather.Start;
        long first = t.ToUnixTimeSeconds() / 3600;
        StationWind station = new("a", West, [t, t.AddMinutes(30), t.AddHours(1), t.AddHours(4), t.AddHours(9)], [2, 8, 0, 5, 5], [270, 270, double.NaN, 180, double.NaN]);
        Assert.Equal(0.5 * (WindStress.StressPa(2) + WindStress.StressPa(8)), station.StressPa(first).EastPa, 1e-9);
        Assert.True(station.StressPa(first).EastPa > WindStress.StressPa(5));
        Assert.Equal((0.0, 0.0), station.StressPa(first + 1));
        Assert.InRange(station.StressPa(first + 3).NorthPa, 0.3 * WindStress.StressPa(5), WindStress.StressPa(5));
        Assert.True(double.IsNaN(station.StressPa(first + 6).EastPa));
        Assert.True(double.IsNaN(station.StressPa(first + 9).EastPa));
        Assert.True(double.IsNaN(station.StressPa(first - 1).EastPa));
        Assert.Equal(0.2, station.CalmShare, 1e-12);
    }

    [Fact]
    public void A_low_station_on_land_tells_of_more_wind_over_the_water_than_one_on_a_buoy()
    {
        Assert.Equal(1.0, StationExposure.Factor(10, false), 1e-12);
        Assert.Equal(1.475, StationExposure.Factor(2.5, true), 0.02);
        Assert.InRange(StationExposure.Factor(2.5, false), 1.1, 1.2);
        Assert.Equal(StationExposure.Factor(10, true), StationExposure.Factor(null, true), 1e-12);
    }

    [Theory]
    [InlineData(3)]
    [InlineData(300)]
    public void A_widened_depth_keeps_its_mean_and_takes_on_the_error(int samples)
    {
        double[] depthsM = [.. Enumerable.Range(0, samples).Select(i => 8 + (0.3 * NormalLaw.Quantile((i + 0.5) / samples)))], weights = [.. Enumerable.Repeat(1.0, samples)];
        SampleDistribution before = SampleDistribution.Of(depthsM, weights), after = MotionError.Widened(depthsM, weights, 0.7, 0);
        Assert.Equal(before.Mean, after.Mean, 0.03);
        Assert.Equal(Math.Sqrt((before.Sd * before.Sd) + 0.49), after.Sd, 0.06);
        Assert.True(MotionError.Widened(depthsM, weights, 20, 0).Quantile(0) >= 0);
    }

    [Fact]
    public void The_spread_of_a_displacement_grows_with_how_far_the_place_moves()
    {
        WindField field = Compute(TestWeather.Of(80, _ => 6, _ => 270), []);
        Spread end = field.OffsetM(East, field.Hours[^1])!.Spread, middle = field.OffsetM(Middle, field.Hours[^1])!.Spread;
        Assert.True(end.P90 - end.P10 > 3 * (middle.P90 - middle.P10));
        Assert.InRange(field.ThermoclineOffsetM(East, field.Hours[^1]), end.P10, end.P90);
    }

    private static WindField Compute(WeatherSeries weather, IReadOnlyList<StationWind> stations) =>
        WindField.Compute(TestBasins.Box(40, 8, 100, 20), Layers, weather, TestWeather.Start.AddHours(60), 12,
            new WindFieldOptions { Members = 1, Stations = stations, Interface = new() { BankM = 0, CellM = 100 } }, null, TestContext.Current.CancellationToken);

    private static StationWind Like(string name, PlanePoint place, WeatherSeries weather) =>
        new(name, place, [.. Enumerable.Range(0, weather.Count).Select(weather.TimeAt)], weather.WindMps, weather.WindFromDeg);

    private static StationWind Steady(string name, PlanePoint place, double windMps, double fromDeg) =>
        Like(name, place, TestWeather.Of(80, _ => windMps, _ => fromDeg));
}
