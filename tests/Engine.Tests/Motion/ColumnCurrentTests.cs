using SecondShore.Engine.Motion;
using Xunit;

namespace SecondShore.Engine.Tests.Motion;

public class ColumnCurrentTests
{
    [Fact]
    public void Drift_at_and_under_the_surface_meets_the_check_values()
    {
        ColumnCurrent column = new(10, double.PositiveInfinity, WindStress.StressPa(7), 0, default, default, default);
        Assert.Equal(0.130496, column.SurfaceShearMps(0), 0.002);
        Assert.Equal(0.03587, column.SurfaceShearMps(0.5), 0.003);
        Assert.Equal(0.130496, column.Surface.SpeedMps, 0.002);
        Assert.Equal(90, column.Surface.ToDeg, 1e-9);
    }

    [Theory]
    [InlineData(10, double.PositiveInfinity)]
    [InlineData(20, 8)]
    public void The_circulation_carries_no_net_water(double depthM, double thermoclineM)
    {
        ColumnCurrent column = new(depthM, thermoclineM, 0.06, 0.02, default, default, default);
        double sum = 0, strongest = 0;
        for (int i = 0; i < 4000; i++)
        {
            double speed = column.CirculationMps((i + 0.5) * depthM / 4000);
            sum += speed / 4000;
            strongest = Math.Max(strongest, speed);
        }

        Assert.True(strongest > 0.02);
        Assert.InRange(Math.Abs(sum) / strongest, 0, 1e-6);
    }

    [Fact]
    public void The_circulation_turns_back_at_a_third_of_the_depth_and_returns_strongest_at_two_thirds()
    {
        ColumnCurrent column = new(9, double.PositiveInfinity, 0.06, 0, default, default, default);
        Assert.Equal(0, column.CirculationMps(3), 1e-12);
        Assert.Equal(-column.CirculationMps(0) / 3, column.CirculationMps(6), 1e-12);
        Assert.Equal(0, column.CirculationMps(9), 1e-12);
    }

    [Fact]
    public void Rocking_moves_each_layer_its_own_way_and_dies_out_on_the_bottom()
    {
        ColumnCurrent column = new(20, 8, 0, 0, default, new Current(0.05, 0), new Current(-0.03, 0));
        Assert.Equal(0.05, column.At(2).EastMps, 1e-12);
        Assert.Equal(-0.03, column.At(15).EastMps, 1e-12);
        Assert.Equal(0.01, column.At(8).EastMps, 1e-12);
        Assert.Equal(0, column.At(20).SpeedMps, 1e-12);
        Assert.Equal(column.At(20), column.At(99));
    }

    [Fact]
    public void Advice_drags_with_the_water_at_the_jig_and_adds_its_speed()
    {
        ColumnCurrent column = new(20, 8, 0.03, 0, default, new Current(0.05, 0), new Current(0, 0.04));
        DragAdvice advice = DragAdvice.For(column, 18, 5, 270, 0.3);
        Assert.True(advice.FollowsWater);
        Assert.Equal(0, advice.HeadingDeg, 1e-6);
        Assert.Equal(0.34, advice.OverGroundMps, 1e-3);
        // The boat drifts east with the wind; the motor's push makes up the rest.
        Assert.True(advice.BoatDrift.EastMps > 0.2);
        Current made = Current.Toward(advice.PushMps, advice.PushToDeg) + advice.BoatDrift;
        Assert.Equal(advice.OverGroundMps, made.SpeedMps, 1e-9);
        Assert.Equal(0, Math.IEEERemainder(made.ToDeg - advice.HeadingDeg, 360), 1e-6);
    }

    [Fact]
    public void In_still_water_the_advice_follows_the_boats_drift()
    {
        DragAdvice advice = DragAdvice.For(new ColumnCurrent(12, 20, 0, 0, default, default, default), 11, 4, 0);
        Assert.False(advice.FollowsWater);
        Assert.Equal(180, advice.HeadingDeg, 1e-6);
        Assert.Equal(DragAdvice.UsualThroughWaterMps, advice.OverGroundMps, 1e-9);
    }
}
