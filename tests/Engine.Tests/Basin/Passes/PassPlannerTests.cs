using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Passes;
using SecondShore.Engine.Basin.Terrain;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Tests.Basin.Passes;

public class PassPlannerTests
{
    [Fact]
    public void On_a_plane_slope_the_pass_runs_along_the_contour()
    {
        Pass pass = PassPlanner.Along(Lake((x, y) => 0.05 * y), null, new PlanePoint(500, 200), 10, 1.5, PassOptions.Default)!;
        Assert.InRange(pass.LengthM, 220, 245);
        Assert.All(pass.Line, p => Assert.InRange(p.YM, 195, 205));
        Assert.InRange(Math.Abs(Math.Sin(pass.HeadingDeg * Math.PI / 180)), 0.99, 1);
    }

    [Fact]
    public void On_a_cone_the_pass_bends_with_the_contour_and_no_tighter_than_the_boat()
    {
        PassOptions options = PassOptions.Default with { LengthM = 400 };
        Pass pass = PassPlanner.Along(Lake((x, y) => 4 + (0.06 * Math.Sqrt(((x - 500) * (x - 500)) + ((y - 500) * (y - 500))))), null, new PlanePoint(650, 500), 13, 1.5, options)!;
        Assert.All(pass.Line, p => Assert.InRange(p.DistanceToM(new PlanePoint(500, 500)), 135, 165));
        for (int k = 3; k + 3 < pass.Line.Count; k++)
            Assert.True(BendRadius.ThroughM(pass.Line[k - 3], pass.Line[k], pass.Line[k + 3]) > 0.95 * options.TurnRadiusM);
    }

    [Fact]
    public void A_place_on_land_or_in_a_puddle_has_no_pass()
    {
        DepthGrid grid = Lake((x, y) => x < 40 && y < 40 ? 3 : -1);
        Assert.Null(PassPlanner.Along(grid, null, new PlanePoint(500, 500), 3, 1, PassOptions.Default));
        Assert.Null(PassPlanner.Along(grid, null, new PlanePoint(20, 20), 3, 1, PassOptions.Default));
    }

    [Fact]
    public void A_crest_is_followed_only_where_it_stays_near_the_wanted_depth()
    {
        PlanePoint[] crest = [.. Enumerable.Range(0, 60).Select(k => new PlanePoint(200 + (10 * k), 500))];
        Pass pass = PassPlanner.Over(Lake((x, _) => 0.02 * x), null, crest, new PlanePoint(500, 500), 10, 1.5, PassOptions.Default)!;
        Assert.InRange(pass.ShallowM, 8.4, 9);
        Assert.InRange(pass.DeepM, 11, 11.6);
    }

    private static DepthGrid Lake(Func<double, double, double> depthM)
    {
        GridFrame frame = new(0, 0, 10, 100, 100);
        float[] depths = new float[frame.Count];
        for (int i = 0; i < depths.Length; i++)
        {
            PlanePoint p = frame.Centre(i);
            double d = depthM(p.XM, p.YM);
            depths[i] = d > 0 ? (float)d : float.NaN;
        }

        return new DepthGrid(new LocalProjection(new GeoPoint(45, 10)), frame, depths);
    }
}
