using CsCheck;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Motion;
using SecondShore.Engine.Motion.Layers;
using SecondShore.TestKit;
using Xunit;

namespace SecondShore.Engine.Tests.Motion;

/// <summary>What the interface model must hold in any basin.</summary>
public class InterfaceLawTests
{
    private static readonly Gen<(int Seed, double UpperM, double Wind, double ToDeg, double LatDeg)> AnyDay =
        Gen.Select(Gen.Int[0, 500], Gen.Double[2, 18], Gen.Double[0, 30], Gen.Double[0, 360], Gen.Double[-60, 60]);

    [Fact]
    public void Volume_of_each_layer_is_kept_and_no_layer_is_negative_in_any_wind()
    {
        AnyDay.Hold((seed, upperM, wind, toDeg, latDeg) =>
        {
            InterfaceModel model = new(TestBasins.Winding(seed).Depths(), new LayerPair(upperM, 0.012), latDeg);
            (double upper, double lower) = InterfaceState.VolumesM3(model);
            Current stress = Current.Toward(WindStress.StressPa(wind), toDeg);
            for (int hour = 0; hour < 36; hour++)
            {
                // A gale that turns about every ten hours: the worst for thin layers.
                double sign = hour / 10 % 2 == 0 ? 1 : -1;
                model.SetStress(sign * stress.EastMps, sign * stress.NorthMps);
                model.Advance(3600);
                if (model.ActiveCells > 0 && !(InterfaceState.ThinnestM(model) > 0)) return false;
            }

            (double upperAfter, double lowerAfter) = InterfaceState.VolumesM3(model);
            return model.ActiveCells == 0
                || (Math.Abs(upperAfter - upper) <= 1e-10 * upper && Math.Abs(lowerAfter - lower) <= 1e-10 * lower && double.IsFinite(InterfaceState.EnergyJ(model)));
        }, 8);
    }

    [Fact]
    public void Without_wind_and_friction_the_conserved_form_is_kept_to_rounding_over_any_bottom_on_the_turning_earth()
    {
        foreach (int seed in new[] { 1, 2 })
        {
            InterfaceModel model = Disturbed(seed, InterfaceOptions.Ideal with { MinLowerM = 0.5 });
            model.Advance(3600);
            double before = InterfaceState.StepEnergyJ(model), energy = InterfaceState.EnergyJ(model);
            model.Advance(10 * 86400);
            Assert.Equal(1.0, InterfaceState.StepEnergyJ(model) / before, 1e-10);
            Assert.InRange(InterfaceState.EnergyJ(model) / energy, 0.8, 1.25);
        }
    }

    [Fact]
    public void Without_wind_energy_never_grows()
    {
        foreach (int seed in new[] { 4, 5 })
        {
            InterfaceModel model = Disturbed(seed, InterfaceOptions.Ideal with { MinLowerM = 0.5, DampingPerS = 1e-5, BottomDragIndex = 0.0025, InterfaceDragIndex = 0.0005 });
            model.Advance(600);
            double before = InterfaceState.StepEnergyJ(model);
            for (int n = 0; n < 200; n++)
            {
                model.Advance(600);
                double now = InterfaceState.StepEnergyJ(model);
                Assert.True(now <= before * (1 + 1e-12), $"{now} after {before}");
                before = now;
            }
        }
    }

    [Fact]
    public void Energy_does_not_grow_with_moving_layers_either()
    {
        foreach (int seed in new[] { 7, 8 })
        {
            InterfaceModel model = Disturbed(seed, new InterfaceOptions());
            model.Advance(600);
            double start = InterfaceState.StepEnergyJ(model), before = start;
            for (int n = 0; n < 300; n++)
            {
                model.Advance(600);
                double now = InterfaceState.StepEnergyJ(model);
                Assert.True(now <= before * 1.001, $"{now} after {before}");
                before = now;
            }

            Assert.InRange(before / start, 0, 0.5);
        }
    }

    [Fact]
    public void Still_water_stays_exactly_still_over_any_bottom()
    {
        for (int seed = 0; seed < 10; seed++)
        {
            InterfaceModel model = new(TestBasins.Winding(seed).Depths(), new LayerPair(6, 0.01), 45);
            model.Advance(86400);
            Assert.True(model.ActiveCells > 100);
            Assert.Equal(0.0, InterfaceState.EnergyJ(model));
        }
    }

    [Fact]
    public void Mirrored_lake_and_wind_give_the_mirrored_answer_exactly()
    {
        AnyDay.Hold((seed, upperM, wind, toDeg, latDeg) =>
        {
            DepthGrid grid = TestBasins.Winding(seed, 40, 30);
            DepthGrid mirrored = MirroredEastWest(grid);
            Current stress = Current.Toward(WindStress.StressPa(wind), toDeg);
            // A mirror turns the earth the other way round.
            double[] a = Run(grid, upperM, stress.EastMps, stress.NorthMps, latDeg);
            double[] b = Run(mirrored, upperM, -stress.EastMps, stress.NorthMps, -latDeg);
            int nx = grid.Frame.Nx;
            for (int i = 0; i < a.Length; i++)
                if (!a[i].Equals(b[(i / nx * nx) + (nx - 1 - (i % nx))])) return false;
            return true;
        }, 10);
    }

    [Fact]
    public void Vector_and_plain_loops_give_the_same_numbers()
    {
        foreach (int seed in new[] { 1, 2 })
        {
            double[] a = Run(TestBasins.Winding(seed), 7, 0.1, 0.05, 44, vectors: true);
            double[] b = Run(TestBasins.Winding(seed), 7, 0.1, 0.05, 44, vectors: false);
            Assert.Equal(a, b);
        }
    }

    [Fact]
    public void A_strong_wind_uncovers_the_lower_layer_upwind_without_breaking()
    {
        CoarseDepths depths = TestBasins.Box(60, 10, 50, 20).Depths();
        InterfaceModel model = new(depths, new LayerPair(4, 0.005), 45);
        model.SetStress(WindStress.StressPa(18), 0);
        model.Advance(2 * 86400);
        double[] offset = new double[depths.Frame.Count];
        InterfaceState.CopyOffset(model, offset);
        // Upwind (west) the upper layer is all but gone, downwind it is deep.
        Assert.InRange(4 + offset[5 * 60], 0.0, 0.5);
        Assert.True(offset[(5 * 60) + 59] > 3);
    }

    [Fact]
    public void A_lake_shallower_than_its_upper_layer_does_nothing()
    {
        InterfaceModel model = new(TestBasins.Box(10, 10, 50, 5).Depths(), new LayerPair(8, 0.01), 45);
        model.SetStress(1, 1);
        model.Advance(3600);
        Assert.Equal(0, model.ActiveCells);
        Assert.Equal(default, InterfaceState.Difference(model, 5));
    }

    private static InterfaceModel Disturbed(int seed, InterfaceOptions options)
    {
        CoarseDepths depths = TestBasins.Winding(seed).Depths();
        InterfaceModel model = new(depths, new LayerPair(6, 0.012), 45, options);
        double[] offset = new double[depths.Frame.Count];
        for (int i = 0; i < offset.Length; i++)
            offset[i] = Math.Min(1.5 * Math.Sin((i * 0.01) + seed) * Math.Cos(depths.Frame.Centre(i).XM / 300), depths.DepthM[i] - 6 - 0.1);
        InterfaceState.SetOffset(model, offset);
        return model;
    }

    private static double[] Run(DepthGrid grid, double upperM, double east, double north, double latDeg, bool vectors = true)
    {
        CoarseDepths depths = grid.Depths();
        InterfaceModel model = new(depths, new LayerPair(upperM, 0.012), latDeg) { UseVectors = vectors };
        model.SetStress(east, north);
        model.Advance(12 * 3600);
        model.SetStress(-east, 0.5 * north);
        model.Advance(6 * 3600);
        double[] offset = new double[depths.Frame.Count];
        InterfaceState.CopyOffset(model, offset);
        return offset;
    }

    private static DepthGrid MirroredEastWest(DepthGrid grid)
    {
        int nx = grid.Frame.Nx;
        float[] depthM = new float[grid.DepthM.Length];
        for (int i = 0; i < depthM.Length; i++) depthM[i] = grid.DepthM[(i / nx * nx) + (nx - 1 - (i % nx))];
        return new DepthGrid(grid.Projection, grid.Frame, depthM);
    }
}
