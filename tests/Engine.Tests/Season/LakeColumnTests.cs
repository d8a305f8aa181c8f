using CsCheck;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Season;
using SecondShore.Engine.Water;
using SecondShore.TestKit;

namespace SecondShore.Engine.Tests.Season;

public class LakeColumnTests
{
    private static readonly Hypsography Box = new([0, 40], [1e6, 1e6]);
    private static readonly LakeSite Site = new() { Name = "Test", Position = new GeoPoint(45, -93), TimeZoneId = "UTC", ElevationM = 300 };

    [Fact]
    public void Stirring_of_a_linear_gradient_follows_the_energy_law_exactly()
    {
        // h^3 = 12 m_w u*^3 t / N0^2 without shear, heat or light.
        LakeColumn column = new(new ColumnGrid(Box, 0.1), new ColumnParameters { StirringFactor = 0.2, DeepMixingFactor = 0 }, 15);
        LinearDensity(column, 4e-4);
        // Long-wave and turbulent exchange are left out by stepping the mixing alone.
        double friction = 0.01, seconds = 0;
        for (int k = 0; k < 100; k++)
        {
            column.StirOnly(0.2 * 1000 * Math.Pow(friction, 3) * 1e6 * 3600);
            seconds += 3600;
        }

        double expected = Math.Cbrt(12 * 0.2 * Math.Pow(friction, 3) * seconds / 4e-4);
        double seen = column.Grid.FaceDepthM[column.MixedTo + 1];
        Assert.InRange(seen, expected - 0.25, expected + 0.25);
    }

    [Fact]
    public void Work_to_mix_two_layers_is_the_check_value()
    {
        // D05: 8 m of 20 degC over 1 m of 15 degC costs 29.77 J/m2.
        Hypsography box = new([0, 9], [1e6, 1e6]);
        LakeColumn column = new(new ColumnGrid(box, 1), new ColumnParameters(), 20);
        column.SetProfile([7.5, 8.5], [20, 15]);
        column.StirOnly(29.4e6);
        Assert.True(column.TempC[^1] < column.TempC[0] - 0.01);
        column.SetProfile([7.5, 8.5], [20, 15]);
        column.StirOnly(30.1e6);
        Assert.Equal(column.TempC[0], column.TempC[^1], 1e-9);
    }

    [Fact]
    public void Stirring_near_the_surface_wipes_out_a_warm_skin_and_never_reaches_below_its_depth()
    {
        double[] z = [0.25, 0.75, 1.25, 1.75, 2.25, 2.75, 3.25, 3.75], skin = [22, 20, 20, 20, 20, 12, 12, 12];
        double TopAfter(double deepJ, double nearJ)
        {
            LakeColumn column = new(new ColumnGrid(new Hypsography([0, 4], [1e6, 1e6]), 0.5), new ColumnParameters(), 20);
            column.SetProfile(z, skin);
            column.StirOnly(deepJ, nearJ, 2);
            Assert.Equal(12, column.TempC[5], 1e-9);
            return column.TempC[0];
        }

        Assert.Equal(22, TopAfter(0, 0), 1e-9);
        // However strong, it pays for nothing deeper than its reach: four layers share the skin's two kelvins, not more.
        Assert.InRange(TopAfter(0, 1e12), 20.49, 20.51);
        // It fades evenly: half as deep as its reach half of it is left, so the same energy without a depth does more.
        Assert.True(TopAfter(1e6, 0) < TopAfter(0, 1e6));
    }

    [Fact]
    public void Convection_pools_violators_to_the_check_value()
    {
        LakeColumn column = new(new ColumnGrid(new Hypsography([0, 8], [1, 1]), 1), new ColumnParameters(), 10);
        // D10: 10, 12, 11, 8 with equal volumes leaves 11, 11, 11, 8 (over 8 layers the lower ones stay as set).
        column.SetProfile([0.5, 1.5, 2.5, 3.5, 4.5, 5.5, 6.5, 7.5], [10, 12, 11, 8, 7, 6, 5, 4.5]);
        Assert.Equal([11, 11, 11, 8, 7, 6, 5, 4.5], column.TempC.ToArray().Select(t => Math.Round(t, 9)));
    }

    [Fact]
    public void Diffusion_fades_a_cosine_as_the_exact_solution()
    {
        // D09 in a slower setting: molecular diffusion of a cosine mode in a closed box.
        Hypsography box = new([0, 2], [1, 1]);
        ColumnParameters parameters = new() { DeepMixingFactor = 0 };
        LakeColumn column = new(new ColumnGrid(box, 0.05), parameters, 10);
        double[] z = [.. Enumerable.Range(0, 40).Select(i => (i + 0.5) * 0.05)], start = [.. z.Select(d => 10 + (2 * Math.Cos(Math.PI * d / 2)))];
        column.SetProfile(z, start);
        for (int k = 0; k < 400; k++) column.DiffuseOnly(21600);
        double left = 2 * Math.Exp(-1.4e-7 * Math.PI * Math.PI / 4 * 400 * 21600);
        Assert.Equal(left, (column.TempC[0] - column.TempC[39]) / 2 / Math.Cos(Math.PI * 0.025 / 2), 0.01);
    }

    [Fact]
    public void Heat_in_equals_heat_stored_every_step_for_a_year()
    {
        ColumnForcing forcing = Climate(366 * 24);
        LakeColumn column = new(new ColumnGrid(Hypsography.FromShape(2e6, 25), 0.25), LakePriors.For(Site, Hypsography.FromShape(2e6, 25), WeatherSource.Grid).Centre);
        double start = column.HeatContentJ, before = start;
        for (int k = 0; k < forcing.Count; k++)
        {
            double inBefore = column.HeatInJ;
            column.Step(forcing, k);
            double miss = column.HeatContentJ - before - (column.HeatInJ - inBefore);
            Assert.True(Math.Abs(miss) < 1e-9 * Math.Abs(before), $"step {k}: {miss}");
            before = column.HeatContentJ;
        }

        Assert.Equal(start + column.HeatInJ, column.HeatContentJ, 1e-6 * start);
    }

    [Fact]
    public void Volume_and_heat_close_through_drawdown_flood_and_flow()
    {
        Hypsography basin = Hypsography.FromShape(3e6, 30, 12);
        LakeColumn column = new(new ColumnGrid(basin, 0.5, 3), new ColumnParameters(), 10);
        column.SetProfile([2, 8, 12, 29], [24, 22, 12, 7]);
        Gen.Select(Gen.Double[-3, 22], Gen.Double[0, 2e6], Gen.Double[1, 29], Gen.Bool, Gen.Double[2, 30]).Hold((drop, flow, depth, deep, inflowC) =>
        {
            double? outlet = deep ? depth : null;
            double heat = column.HeatContentJ, heatIn = column.HeatInJ;
            column.MoveLevel(drop, outlet, inflowC, 86400);
            double wanted = basin.VolumeM3 + (drop < 0 ? -drop * basin.SurfaceAreaM2 : basin.VolumeBelowM3(drop) - basin.VolumeM3);
            column.Flush(Math.Min(flow, 0.2 * wanted), inflowC, outlet, 86400);
            return Math.Abs(column.VolumeM3 - wanted) < 1e-9 * wanted
                && Math.Abs(column.HeatContentJ - heat - (column.HeatInJ - heatIn)) < 1e-8 * Math.Max(heat, column.HeatContentJ)
                && column.TempC[column.Top..].ToArray().All(t => t is >= 2 and <= 30);
        }, 200);
    }

    [Fact]
    public void Deep_withdrawal_warms_the_deep_water_and_leaves_the_surface()
    {
        Hypsography basin = Hypsography.FromShape(3e6, 30, 12);
        LakeColumn column = new(new ColumnGrid(basin, 0.5), new ColumnParameters(), 10);
        column.SetProfile([8, 12], [22, 8]);
        double coldBefore = Cold();
        column.MoveLevel(4, 25, null, 30 * 86400.0);
        Assert.Equal(22, column.SurfaceTempC, 1e-9);
        Assert.True(Cold() < 0.8 * coldBefore);

        double Cold()
        {
            double sum = 0;
            for (int i = column.Top; i < column.Grid.Count; i++) sum += column.TempC[i] < 15 ? column.LayerVolumesM3[i] : 0;
            return sum;
        }
    }

    [Fact]
    public void A_year_freezes_thaws_layers_and_turns()
    {
        ColumnForcing forcing = Climate(366 * 24);
        Hypsography basin = Hypsography.FromShape(1e6, 20);
        LakeColumn column = new(new ColumnGrid(basin, 0.5), LakePriors.For(Site, basin, WeatherSource.Grid).Centre);
        double warmest = 0, ice = 0;
        bool layered = false;
        for (int k = 0; k < forcing.Count; k++)
        {
            column.Step(forcing, k);
            warmest = Math.Max(warmest, column.SurfaceTempC);
            ice = Math.Max(ice, column.IceM);
            layered |= column.SurfaceTempC - column.TempC[^1] > 8;
        }

        Assert.InRange(warmest, 18, 33);
        Assert.InRange(ice, 0.1, 1.2);
        Assert.True(layered);
    }

    [Fact]
    public void Finer_layers_do_not_move_the_answer_far()
    {
        ColumnForcing forcing = Climate(300 * 24);
        Hypsography basin = Hypsography.FromShape(4e6, 20);
        ColumnParameters parameters = LakePriors.For(Site, basin, WeatherSource.Grid).Centre;
        LakeColumn coarse = new(new ColumnGrid(basin, 0.5), parameters), fine = new(new ColumnGrid(basin, 0.25), parameters);
        double worst = 0, sum = 0;
        int count = 0;
        for (int k = 0; k < forcing.Count; k++)
        {
            coarse.Step(forcing, k);
            fine.Step(forcing, k);
            if (k < 24 * 100 || k % 24 != 0) continue;
            for (double z = 1; z < 19; z += 2)
            {
                double difference = Math.Abs(coarse.TempAtC(z) - fine.TempAtC(z));
                worst = Math.Max(worst, difference);
                sum += difference;
                count++;
            }
        }

        Assert.True(sum / count < 0.25, $"mean {sum / count}, worst {worst}");
    }

    [Theory]
    [InlineData(0.125)]
    [InlineData(0.5)]
    [InlineData(1.0)]
    public void Resistance_to_a_tilt_is_that_of_two_layers_on_any_grid(double layerM)
    {
        // g' h^2 / L: 6 m of 22 degC over 14 m of 8 degC on a round lake of 1 km2.
        LakeColumn column = new(new ColumnGrid(new Hypsography([0, 20], [1e6, 1e6]), layerM), new ColumnParameters(), 10);
        column.SetProfile([6 - 1e-6, 6 + 1e-6], [22, 8]);
        double lightness = 9.81 / 1000 * (FreshWater.DensityKgPerM3(8) - FreshWater.DensityKgPerM3(22));
        Assert.Equal(lightness * 36 / Math.Sqrt(4e6 / Math.PI), column.TiltResistanceNow(), 1e-9);
    }

    [Fact]
    public void Tilting_deepens_the_step_alike_on_fine_and_coarse_layers()
    {
        Hypsography basin = new([0, 20], [4e6, 4e6]);
        ColumnForcing wind = Still(18, 7, 240);
        double Deepest(double layerM, double tilt)
        {
            LakeColumn column = new(new ColumnGrid(basin, layerM), new ColumnParameters { StirringFactor = 0.4, TiltFactor = tilt, StirringReachFactor = 0.2 });
            column.SetProfile([4, 6], [20, 9]);
            for (int k = 0; k < wind.Count; k++) column.Step(wind, k);
            double[] z = [.. Enumerable.Range(0, column.Grid.Count).Select(column.LayerDepthM)];
            return Stratification.Of(z, column.TempC).ThermoclineM;
        }

        double bare = Deepest(0.125, 0), tilted = Deepest(0.125, 0.3);
        Assert.True(tilted > bare + 0.5, $"{bare} {tilted}");
        Assert.Equal(tilted, Deepest(0.5, 0.3), 0.3);
        Assert.Equal(tilted, Deepest(0.25, 0.3), 0.15);
    }

    internal static ColumnForcing Climate(int hours) =>
        new(ClimateWeather.Make(Site, new DateTimeOffset(2024, 3, 1, 0, 0, 0, TimeSpan.Zero), hours, new(7)), Site.Position, Site.ElevationM);

    private static ColumnForcing Still(double airC, double windMps, int hours)
    {
        double[] Flat(double value) => [.. Enumerable.Repeat(value, hours)];
        return new ColumnForcing(new WeatherSeries(new DateTimeOffset(2024, 6, 1, 0, 0, 0, TimeSpan.Zero), 3600, Flat(airC), Flat(0.7), Flat(windMps),
            Flat(0), Flat(0), Flat(350), Flat(0.5), Flat(0), Flat(0)), Site.Position, Site.ElevationM);
    }

    private static void LinearDensity(LakeColumn column, double buoyancyPerS2)
    {
        double surface = FreshWater.DensityKgPerM3(22);
        double[] z = [.. Enumerable.Range(0, column.Grid.Count).Select(i => column.Grid.CentreM[i])];
        column.SetProfile(z, [.. z.Select(d => FreshWater.WarmTempOfDensityC(surface + (buoyancyPerS2 * 1000 / 9.81 * d)))]);
    }
}
