using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Shore;

namespace SecondShore.Engine.Tests.Basin.Shore;

public class PoolLevelTests
{
    // A bowl with a hump whose top lies 2 m under full pool.
    private static readonly DepthGrid Bowl = LakeShapes.FromFormula(120, 120, 5, (x, y) =>
        (25 * (1 - (((x * x) + (y * y)) / (290 * 290)))) - (20 * Math.Exp(-(((x - 80) * (x - 80)) + (y * y)) / 900)));

    [Fact]
    public void Low_water_makes_an_island_of_a_hump()
    {
        Assert.Empty(PoolLevel.At(Bowl, 0).Islands);
        PoolLevel low = PoolLevel.At(Bowl, 6);
        NewIsland island = Assert.Single(low.Islands);
        Assert.True(Math.Abs(island.Top.XM - 80) < 15 && Math.Abs(island.Top.YM) < 10);
        Assert.Equal(6 - Bowl.DepthAtM(island.Top), island.HeightM, 0.3);
        Shoreline shore = low.Shoreline()!;
        Assert.Single(shore.Polygons);
        Assert.Single(shore.Polygons[0].Islands);
    }

    [Fact]
    public void A_hump_just_under_the_surface_is_a_hazard_and_the_shallow_margin_is_not()
    {
        double topM = Bowl.DepthAtM(new(80, 0));
        PoolLevel level = PoolLevel.At(Bowl, topM - 0.6, 1.0, 40);
        ShallowHazard hazard = Assert.Single(level.Hazards);
        Assert.True(hazard.Top.DistanceToM(new(80, 0)) < 20);
        Assert.InRange(hazard.DepthM, 0.1, 0.8);
        Assert.True(hazard.OffShoreM > 100);
    }

    [Fact]
    public void A_ramp_that_the_water_has_left_is_told_by_its_distance()
    {
        PoolLevel full = PoolLevel.At(Bowl, 0), low = PoolLevel.At(Bowl, 10);
        Assert.Equal(0, full.ToWaterM(new(-280, 0)));
        double shoreM = 290 * Math.Sqrt(1 - (10.0 / 25));
        Assert.Equal(280 - shoreM, low.ToWaterM(new(-280, 0)), 5.0);
    }

    [Fact]
    public void Water_area_never_grows_as_the_level_falls()
    {
        double before = double.PositiveInfinity;
        for (double drop = 0; drop < 26; drop += 2)
        {
            double area = Hypsography.FromGrid(PoolLevel.At(Bowl, drop).Today)?.SurfaceAreaM2 ?? 0;
            Assert.True(area <= before);
            before = area;
        }

        Assert.Null(PoolLevel.At(Bowl, 30).Shoreline());
        Assert.Equal(double.PositiveInfinity, PoolLevel.At(Bowl, 30).ToWaterM(new(0, 0)));
    }
}
