using SecondShore.Answers.Wind;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;
using SecondShore.Engine.Motion;
using SecondShore.Engine.Season;

namespace SecondShore.Answers.Tests.Wind;

public class HazeTiltTests
{
    private static readonly DateTimeOffset Start = new(2031, 9, 20, 0, 0, 0, TimeSpan.Zero);

    [Fact]
    public void A_reading_downwind_lies_deeper_than_at_rest_and_one_upwind_as_much_higher()
    {
        // A box: steady stress tips the plane by L u*^2/(g' h1) (SpigelImberger1980) end to end.
        DepthGrid grid = Box();
        TwoLayers layers = new(8, 998.2, 999.8, 1);
        double east = Tilt(grid, layers, new PlanePoint(4900, 500), 5), west = Tilt(grid, layers, new PlanePoint(100, 500), 5), middle = Tilt(grid, layers, new PlanePoint(2500, 500), 5);
        Assert.True(east > 0.25 && west < -0.25, $"{west} {middle} {east}");
        Assert.Equal(0, east + west, 0.35 * (east - west));
        Assert.InRange(middle, west, east);
        Assert.InRange(Tilt(grid, layers, new PlanePoint(4900, 500), 0.05), -0.05, 0.05);
    }

    [Fact]
    public void An_arm_with_a_wind_of_its_own_has_a_tilt_of_its_own()
    {
        DepthGrid grid = Box();
        TwoLayers layers = new(8, 998.2, 999.8, 1);
        PlanePoint east = new(4900, 500);
        DateTimeOffset[] hours = [.. Enumerable.Range(0, 100).Select(h => Start.AddHours(h))];
        StationWind turned = new("EAST", east, hours, [.. Enumerable.Repeat(5.0, 100)], [.. Enumerable.Repeat(90.0, 100)]);
        WindForces own = new(Weather(5), new WindFieldOptions { Stations = [turned] });
        double tilted = HazeTilt.OffsetM(grid, layers, own, east, Start.AddHours(96), TestContext.Current.CancellationToken);
        Assert.True(tilted < -0.25, $"{tilted}");
        Assert.Equal(-Tilt(grid, layers, east, 5), tilted, 0.1);
    }

    private static double Tilt(DepthGrid grid, TwoLayers layers, PlanePoint place, double windMps) =>
        HazeTilt.OffsetM(grid, layers, new WindForces(Weather(windMps), new WindFieldOptions()), place, Start.AddHours(96),
            TestContext.Current.CancellationToken);

    private static DepthGrid Box()
    {
        GridFrame frame = new(0, 0, 100, 50, 10);
        float[] depthM = new float[frame.Count];
        Array.Fill(depthM, 20f);
        return new DepthGrid(new LocalProjection(new GeoPoint(39, -95)), frame, depthM);
    }

    private static WeatherSeries Weather(double windMps)
    {
        double[] Column(double value) => [.. Enumerable.Repeat(value, 100)];
        return new WeatherSeries(Start, 3600, Column(15), Column(0.7), Column(windMps), Column(270), Column(100), Column(300), Column(0.5), Column(0), Column(double.NaN));
    }
}
