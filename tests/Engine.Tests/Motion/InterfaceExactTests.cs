using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Motion;
using SecondShore.Engine.Motion.Layers;
using Xunit;

namespace SecondShore.Engine.Tests.Motion;

/// <summary>The interface model against solutions known in closed form.</summary>
public class InterfaceExactTests
{
    private static readonly LayerPair Pair = new(8, 0.0161);

    [Fact]
    public void A_box_rocks_with_the_period_of_the_two_layer_formula()
    {
        double periodS = MeasuredPeriodS(80, 50, null);
        Assert.InRange(periodS / (2 * 4000 / Pair.WaveSpeedMps(20)), 0.999, 1.001);
    }

    [Fact]
    public void A_box_rocks_with_the_period_of_the_discrete_dispersion() =>
        Assert.Equal(28778.3, MeasuredPeriodS(80, 50, 100), 2.0);

    [Fact]
    public void Refining_the_grid_twice_cuts_the_error_of_the_period_four_times()
    {
        double exact = 2 * 4000 / Pair.WaveSpeedMps(20);
        double coarse = Math.Abs(MeasuredPeriodS(10, 400, 1) - exact), fine = Math.Abs(MeasuredPeriodS(20, 200, 1) - exact);
        Assert.InRange(Math.Log2(coarse / fine), 1.9, 2.1);
    }

    [Fact]
    public void Steady_wind_tilts_any_basin_into_the_plane_of_theory()
    {
        CoarseDepths depths = TestBasins.Winding(2, 30, 20, 100).Depths();
        InterfaceOptions options = InterfaceOptions.Ideal with { DampingPerS = 2e-4, RefreshS = 7200 };
        InterfaceModel model = new(depths, Pair, null, options);
        model.SetStress(0.05, 0.03);
        model.Advance(30 * 86400);
        double[] offset = new double[depths.Frame.Count];
        InterfaceState.CopyOffset(model, offset);
        double[] expected = Plane(model, depths, 0.05, 0.03);
        double worst = 0, largest = 0;
        for (int i = 0; i < offset.Length; i++)
        {
            if (double.IsNaN(offset[i])) continue;
            worst = Math.Max(worst, Math.Abs(offset[i] - expected[i]));
            largest = Math.Max(largest, Math.Abs(expected[i]));
        }

        Assert.True(largest > 0.3);
        Assert.InRange(worst / largest, 0, 1e-6);
    }

    [Fact]
    public void Steady_wind_on_a_box_gives_the_tilt_of_the_formula()
    {
        CoarseDepths depths = TestBasins.Box(80, 5, 50, 20).Depths();
        InterfaceModel model = new(depths, Pair, null, InterfaceOptions.Ideal with { DampingPerS = 1e-4 });
        model.SetStress(0.0676, 0);
        model.Advance(10 * 86400);
        double[] offset = new double[depths.Frame.Count];
        InterfaceState.CopyOffset(model, offset);
        // Deeper downwind (east); first and last cell centres lie one cell less apart than the walls.
        Assert.Equal(2.09938, (offset[79] - offset[0]) * 80 / 79, 0.0021);
    }

    [Fact]
    public void A_sudden_wind_overshoots_to_twice_the_steady_tilt()
    {
        CoarseDepths depths = TestBasins.Box(80, 4, 50, 20).Depths();
        InterfaceModel model = new(depths, Pair, null, InterfaceOptions.Ideal);
        model.SetStress(0.0676, 0);
        double[] offset = new double[depths.Frame.Count];
        double peak = 0;
        for (int step = 0; step < 100; step++)
        {
            model.Advance(300);
            InterfaceState.CopyOffset(model, offset);
            peak = Math.Max(peak, offset[79] - offset[0]);
        }

        Assert.InRange(peak / (2.09938 * 79 / 80), 1.98, 2.02);
    }

    [Theory]
    [InlineData(45.0, 0.02)]
    [InlineData(10.0, 0.02)]
    public void A_round_basin_on_the_turning_earth_carries_its_wave_around_the_shore_in_the_known_time(double latDeg, double tolerance)
    {
        const int cells = 120;
        const double radiusM = 6000;
        CoarseDepths depths = TestBasins.Round(cells, 2 * radiusM / cells, 20).Depths();
        InterfaceModel model = new(depths, Pair, latDeg, InterfaceOptions.Ideal);
        double f = InterfaceModel.CoriolisPerS(latDeg);
        RoundMode mode = RoundMode.Gravest(radiusM, Pair.WaveSpeedMps(20), f, Pair.ReducedGravityMps2);
        mode.Start(model);
        double before = mode.PhaseRad(model), turnedRad = 0;
        double totalS = 2 * Math.PI / mode.FrequencyRadPerS;
        for (int n = 0; n < 50; n++)
        {
            model.Advance(totalS / 50);
            double now = mode.PhaseRad(model);
            turnedRad += Math.IEEERemainder(now - before, 2 * Math.PI);
            before = now;
        }

        // Counterclockwise on the northern half of the earth.
        Assert.InRange(turnedRad / (2 * Math.PI), 1 - tolerance, 1 + tolerance);
    }

    private static double MeasuredPeriodS(int cells, double cellM, double? stepS)
    {
        CoarseDepths depths = TestBasins.Box(cells, 3, cellM, 20).Depths();
        InterfaceModel model = new(depths, Pair, null, InterfaceOptions.Ideal with { RefreshS = stepS ?? 60 }) { FixedStepS = stepS };
        double[] shape = new double[depths.Frame.Count], offset = new double[shape.Length];
        for (int i = 0; i < shape.Length; i++) shape[i] = Math.Cos(Math.PI * depths.Frame.Centre(i).XM / (cells * cellM));
        InterfaceState.SetOffset(model, shape);
        double before = Amplitude(), timeS = 0, first = double.NaN, tickS = stepS ?? 60;
        while (true)
        {
            model.Advance(tickS);
            timeS += tickS;
            double now = Amplitude();
            if (before > 0 && now <= 0)
            {
                double crossing = timeS - (tickS * now / (now - before));
                if (!double.IsNaN(first)) return crossing - first;
                first = crossing;
            }

            before = now;
        }

        double Amplitude()
        {
            InterfaceState.CopyOffset(model, offset);
            double sum = 0;
            for (int i = 0; i < offset.Length; i++) sum += offset[i] * shape[i];
            return sum;
        }
    }

    private static double[] Plane(InterfaceModel model, CoarseDepths depths, double eastPa, double northPa)
    {
        double[] plane = new double[depths.Frame.Count];
        double x = 0, y = 0;
        int count = 0;
        for (int i = 0; i < plane.Length; i++)
        {
            if (!(depths.DepthM[i] >= Pair.UpperM + InterfaceOptions.Ideal.MinLowerM)) continue;
            x += depths.Frame.Centre(i).XM;
            y += depths.Frame.Centre(i).YM;
            count++;
        }

        Assert.Equal(model.ActiveCells, count);
        for (int i = 0; i < plane.Length; i++)
        {
            PlanePoint p = depths.Frame.Centre(i);
            plane[i] = ((eastPa * (p.XM - (x / count))) + (northPa * (p.YM - (y / count)))) / (1000 * Pair.ReducedGravityMps2 * Pair.UpperM);
        }

        return plane;
    }
}
