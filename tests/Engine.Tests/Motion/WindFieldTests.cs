using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Motion;
using SecondShore.Engine.Season;
using Xunit;

namespace SecondShore.Engine.Tests.Motion;

public class WindFieldTests
{
    private static readonly IReadOnlyList<TwoLayers> Layers =
        [new(6.5, 998.3, 999.7, 1), new(7, 998.3, 999.7, 2), new(7.5, 998.35, 999.7, 2), new(8.2, 998.4, 999.7, 1)];

    [Fact]
    public void Steady_wind_pushes_the_thermocline_down_at_the_downwind_end_in_every_member()
    {
        DepthGrid grid = TestBasins.Box(40, 8, 100, 20);
        WindField field = Compute(grid, TestWeather.Of(110, _ => 6, _ => 270), 100, 6);
        PlanePoint west = new(200, 400), east = new(3800, 400);
        DateTimeOffset at = field.Hours[3];
        Assert.True(field.ThermoclineOffsetM(east, at) > 0.4);
        Assert.True(field.ThermoclineOffsetM(west, at) < -0.4);
        Spread rest = field.ThermoclineM(new PlanePoint(2000, 400), at)!.Spread, tipped = field.ThermoclineM(east, at)!.Spread;
        Assert.True(tipped.P10 > rest.P10 && tipped.P90 > rest.P90);
        SampleDistribution moved = field.ThermoclineM(SampleDistribution.Normal(7.2, 0.5, 21), east, at);
        Assert.InRange(moved.Mean - 7.2, 0.4, 3);
        Assert.InRange(field.PeriodS!.Value / 3600, 5, 12);
    }

    [Fact]
    public void Waves_and_wind_come_with_the_hour_and_the_place()
    {
        DepthGrid grid = TestBasins.Box(40, 15, 100, 20);
        WindField field = Compute(grid, TestWeather.Of(60, i => i < 40 ? 3 : 9, _ => 270), 30, 20);
        PlanePoint west = new(300, 700), east = new(3700, 700);
        Assert.True(field.WavesAt(east, field.Hours[0]).HeightM < 0.5 * field.WavesAt(east, field.Hours[18]).HeightM);
        Assert.True(field.WavesAt(west, field.Hours[18]).HeightM < 0.6 * field.WavesAt(east, field.Hours[18]).HeightM);
        WaveState[] waves = field.Waves(18);
        (float[] eastMps, _) = field.Currents(18, 0.2);
        Assert.Equal(field.Motion.Cells.Length, waves.Length);
        Assert.True(eastMps[0] != 0 && field.OffsetsM(18).Length == waves.Length);
    }

    [Fact]
    public void Computing_side_by_side_stepwise_and_in_turn_give_the_same_field()
    {
        DepthGrid grid = TestBasins.Winding(2, 40, 26, 75);
        WeatherSeries weather = TestWeather.FiveDays();
        DateTimeOffset from = TestWeather.Start.AddHours(60);
        WindField a = Compute(grid, weather, 60, 5), b = new WindRun(grid, Layers, weather, from, 5,
            new WindFieldOptions { Parallelism = 1, Members = 3 }, TestContext.Current.CancellationToken).Compute(null, TestContext.Current.CancellationToken);
        WindRun run = new(grid, Layers, weather, from, 5, new WindFieldOptions { Members = 3 }, TestContext.Current.CancellationToken);
        Assert.Throws<InvalidOperationException>(run.Finish);
        double share = -1;
        while (run.Step())
        {
            Assert.True(run.ShareDone > share);
            share = run.ShareDone;
        }

        WindField c = run.Finish();
        for (int hour = 0; hour <= 5; hour++)
        {
            Assert.Equal(a.OffsetsM(hour), b.OffsetsM(hour));
            Assert.Equal(a.OffsetsM(hour), c.OffsetsM(hour));
        }
    }

    [Fact]
    public void A_mixed_lake_has_waves_and_drift_but_no_thermocline()
    {
        DepthGrid grid = TestBasins.Box(40, 30, 50, 12);
        WindField field = WindField.Compute(grid, [], TestWeather.Of(40, _ => 7, _ => 0), TestWeather.Start.AddHours(20), 4, null, null, TestContext.Current.CancellationToken);
        PlanePoint place = new(1000, 700);
        Assert.False(field.IsLayered);
        Assert.Equal(0, field.ThermoclineOffsetM(place, field.Hours[2]));
        Assert.Null(field.ThermoclineM(place, field.Hours[2]));
        Assert.True(field.WavesAt(place, field.Hours[2]).HeightM > 0.05);
        Assert.Equal(180, field.CurrentAt(place, 0, field.Hours[2]).ToDeg, 1e-6);
        // The return flow in the deep goes the other way.
        Assert.Equal(0, Math.IEEERemainder(field.CurrentAt(place, 8, field.Hours[2]).ToDeg, 360), 1e-6);
    }

    [Fact]
    public void Off_the_water_the_nearest_thermocline_is_given_and_no_current()
    {
        WindField field = Compute(TestBasins.Round(20, 100, 20), TestWeather.FiveDays(), 30, 2);
        PlanePoint corner = new(20, 20);
        Assert.NotEqual(0, field.ThermoclineOffsetM(corner, field.Hours[0]));
        Assert.Equal(default, field.CurrentAt(corner, 3, field.Hours[0]));
        Assert.Null(field.DragAt(corner, 5, field.Hours[0]));
        // Far outside the hours the nearest hour stands.
        Assert.Equal(field.ThermoclineOffsetM(corner, field.Hours[0]), field.ThermoclineOffsetM(corner, field.Hours[0].AddDays(-40)));
    }

    [Fact]
    public void Five_days_on_winding_basins_run_without_trouble()
    {
        for (int seed = 10; seed < 12; seed++)
        {
            DepthGrid grid = TestBasins.Winding(seed);
            WindField field = Compute(grid, TestWeather.FiveDays(), 6, 120);
            for (int hour = 0; hour <= 120; hour += 10)
            {
                foreach (float offset in field.OffsetsM(hour)) Assert.InRange(offset, -8.2f, 20f);
                PlanePoint place = new(1500, 1000);
                Assert.InRange(field.CurrentAt(place, 2, field.Hours[hour]).SpeedMps, 0, 1);
            }
        }
    }

    [Fact]
    public void Work_stops_when_asked()
    {
        using CancellationTokenSource stop = new();
        stop.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => WindField.Compute(TestBasins.Box(20, 20, 50, 20), Layers,
            TestWeather.FiveDays(), TestWeather.Start, 3, null, null, stop.Token));
    }

    private static WindField Compute(DepthGrid grid, WeatherSeries weather, int fromHour, int hours) =>
        WindField.Compute(grid, Layers, weather, TestWeather.Start.AddHours(fromHour), hours, new WindFieldOptions { Members = 3 }, null, TestContext.Current.CancellationToken);
}
