using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Motion;
using SecondShore.Engine.Motion.Layers;
using Xunit;

namespace SecondShore.Engine.Tests.Motion;

public class SteadyAndModeTests
{
    private static readonly LayerPair Pair = new(8, 0.0161);

    [Fact]
    public void Steady_tilt_under_even_wind_is_the_plane_of_theory()
    {
        // G16: 45 deg from east, 900 m east and 300 m south of the centroid.
        CoarseDepths depths = TestBasins.Box(81, 81, 100, 20).Depths();
        double part = 6.76e-5 * 1000 * Math.Sqrt(0.5);
        double[] offset = SteadyTilt.SolveM(depths, Pair, part, part);
        Assert.Equal(0.222673, offset[depths.Frame.Index(40 + 9, 40 - 3)], 1e-6);
    }

    [Fact]
    public void Steady_tilt_under_uneven_wind_is_where_the_rocking_model_comes_to_rest()
    {
        CoarseDepths depths = TestBasins.Winding(5, 40, 26, 100).Depths();
        float[] open = new float[depths.Frame.Count];
        for (int i = 0; i < open.Length; i++) open[i] = (float)(0.5 + (0.5 * Math.Sin(depths.Frame.Centre(i).XM / 900)));
        double[] steady = SteadyTilt.SolveM(depths, Pair, 0.04, -0.02, open), offset = new double[steady.Length];
        InterfaceModel model = new(depths, Pair, null, InterfaceOptions.Ideal with { MinLowerM = 0.5, DampingPerS = 2e-4, RefreshS = 7200 });
        model.SetStress(0.04, -0.02);
        model.SetShelter(open);
        model.Advance(10 * 86400);
        InterfaceState.CopyOffset(model, offset);
        double worst = 0, largest = 0;
        for (int i = 0; i < offset.Length; i++)
        {
            Assert.Equal(double.IsNaN(steady[i]), double.IsNaN(offset[i]));
            if (double.IsNaN(steady[i])) continue;
            // Uneven wind leaves a steady flow around, so the model need not stop: the tilt agrees to some per cent.
            worst = Math.Max(worst, Math.Abs(steady[i] - offset[i]));
            largest = Math.Max(largest, Math.Abs(steady[i]));
        }

        Assert.True(largest > 0.2);
        Assert.InRange(worst / largest, 0, 0.02);
    }

    [Fact]
    public void The_gravest_mode_of_a_box_has_the_period_of_the_formula_and_its_node_in_the_middle()
    {
        CoarseDepths depths = TestBasins.Box(80, 12, 50, 20).Depths();
        GravestSeiche seiche = GravestSeiche.Find(depths, Pair)!;
        Assert.Equal(7.99381, seiche.PeriodS / 3600, 0.01);
        Assert.True(seiche.ShapeShare[39] * seiche.ShapeShare[40] < 0);
        Assert.InRange(Math.Abs(seiche.ShapeShare[0]), 0.99, 1.0);
    }

    [Fact]
    public void The_gravest_mode_of_a_winding_basin_is_what_the_model_rocks_with()
    {
        CoarseDepths depths = TestBasins.Winding(2).Depths();
        GravestSeiche seiche = GravestSeiche.Find(depths, Pair)!;
        InterfaceModel model = new(depths, Pair, null, InterfaceOptions.Ideal with { MinLowerM = 0.5 });
        double[] shape = new double[depths.Frame.Count], offset = new double[shape.Length];
        for (int i = 0; i < shape.Length; i++) shape[i] = double.IsNaN(seiche.ShapeShare[i]) ? 0 : 0.3 * seiche.ShapeShare[i];
        InterfaceState.SetOffset(model, shape);
        // After half a period every cell has swung to the other side.
        model.Advance(0.5 * seiche.PeriodS);
        InterfaceState.CopyOffset(model, offset);
        double differ = 0, size = 0;
        for (int i = 0; i < shape.Length; i++)
        {
            if (double.IsNaN(offset[i])) continue;
            differ += (offset[i] + shape[i]) * (offset[i] + shape[i]);
            size += shape[i] * shape[i];
        }

        Assert.InRange(Math.Sqrt(differ / size), 0, 0.02);
    }

    [Fact]
    public void A_basin_without_a_lower_layer_has_no_mode() =>
        Assert.Null(GravestSeiche.Find(TestBasins.Box(5, 5, 50, 4).Depths(), Pair));
}
