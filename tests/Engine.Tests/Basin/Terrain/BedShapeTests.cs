using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Terrain;

namespace SecondShore.Engine.Tests.Basin.Terrain;

public class BedShapeTests
{
    [Fact]
    public void A_cone_has_the_same_slope_everywhere_and_falls_to_its_middle()
    {
        DepthGrid cone = LakeShapes.Cone(300, 30, 5);
        BedGradient gradient = BedGradient.Of(cone);
        for (int i = 0; i < cone.Frame.Count; i++)
        {
            var p = cone.Frame.Centre(i);
            double r = Math.Sqrt((p.XM * p.XM) + (p.YM * p.YM));
            if (r is < 40 or > 280) continue;
            Assert.Equal(5.7106, gradient.SlopeDeg[i], 0.1);
            double inward = p.BearingToDeg(new(0, 0));
            Assert.True(Math.Abs(Math.IEEERemainder(gradient.AspectDeg[i] - inward, 360)) < 2, $"{gradient.AspectDeg[i]} against {inward}");
        }
    }

    [Fact]
    public void Plan_curvature_of_a_cone_is_one_over_the_radius_and_negative()
    {
        DepthGrid cone = LakeShapes.Cone(300, 30, 2);
        BedCurvature curvature = BedCurvature.Of(cone);
        int i = cone.Frame.Index((int)cone.Frame.ColumnAt(100), (int)cone.Frame.RowAt(0));
        Assert.Equal(-1.0 / 100, curvature.PlanPerM[i], 0.0005);
        Assert.Equal(0, curvature.ProfilePerM[i], 0.0002);
    }

    [Fact]
    public void A_valley_falling_to_a_dam_gathers_all_its_cells_there()
    {
        DepthGrid valley = LakeShapes.FromFormula(60, 30, 10, (x, y) => 20 + (x / 20) - Math.Abs(y) / 10);
        DrainedBed bed = DrainedBed.Of(valley);
        FlowD8 flow = FlowD8.Of(bed);
        FlowDInfinity split = FlowDInfinity.Of(bed);
        int water = valley.DepthM.Count(d => d > 0), outlet = bed.Order[0];
        Assert.Equal(water, bed.Order.Length);
        Assert.Equal(water, flow.CellsAbove[outlet]);
        Assert.Equal(water, split.CellsAbove[outlet], 0.01 * water);
        Assert.True(valley.Frame.Centre(outlet).XM > 280, "the outlet stands at the deep end");
        Assert.True(bed.FilledShare < 0.02);
    }

    [Fact]
    public void A_bowl_is_filled_and_says_so()
    {
        DrainedBed bed = DrainedBed.Of(LakeShapes.Cone(300, 30, 10));
        Assert.True(bed.FilledShare > 0.8);
        for (int k = 1; k < bed.Order.Length; k++) Assert.True(bed.FilledM[bed.Order[k]] >= bed.FilledM[bed.Order[k - 1]]);
    }

    [Fact]
    public void Position_index_finds_a_hump_and_a_hole()
    {
        static double Bump(double x, double y, double cx) => 4 * Math.Exp(-(((x - cx) * (x - cx)) + (y * y)) / 800);
        DepthGrid grid = LakeShapes.FromFormula(100, 60, 5, (x, y) => 15 - Bump(x, y, -100) + Bump(x, y, 100));
        BedPosition position = BedPosition.Of(grid, 60);
        var f = grid.Frame;
        Assert.True(position.IndexM[f.Index((int)f.ColumnAt(-100), (int)f.RowAt(0))] > 2);
        Assert.True(position.IndexM[f.Index((int)f.ColumnAt(100), (int)f.RowAt(0))] < -2);
        Assert.True(Math.Abs(position.IndexM[f.Index((int)f.ColumnAt(0), (int)f.RowAt(120))]) < 0.2);
    }
}
