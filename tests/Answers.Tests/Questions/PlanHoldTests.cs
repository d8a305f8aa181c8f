using SecondShore.Answers.Questions;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Answers.Tests.Questions;

public class PlanHoldTests
{
    // A slope that falls eastward by 1 m in 20 m down to 16 m, and north of it a flat at 9 m.
    private static readonly DepthGrid Bottom = Made();
    private static readonly HeldStop Slope = new("H", new PlanePoint(170, 50), [new(170, 40), new(170, 60)]), Flat = new("F", new PlanePoint(200, 450), []);

    [Fact]
    public void A_layer_two_metres_deeper_slides_down_the_slope_and_leaves_the_flat()
    {
        PlanHold hold = PlanHold.Of(Bottom, [Slope, Flat], 8.8, 10.6);
        Assert.True(hold.Changed);
        Assert.Equal([new StopHold("H", StopFate.Slides), new StopHold("F", StopFate.NoLongerCrosses)], hold.Stops);
        Assert.Equal(1.8, hold.ShiftM!.Value, 9);
    }

    [Fact]
    public void Less_than_a_foot_changes_nothing()
    {
        Assert.False(PlanHold.Of(Bottom, [Slope, Flat], 8.8, 9.0).Changed);
        Assert.False(PlanHold.Of(Bottom, [Slope, Flat], 8.8, 8.6).Changed);
    }

    [Fact]
    public void Without_a_layer_nothing_crosses_any_more_and_what_never_leaned_on_it_stays()
    {
        HeldStop deep = new("D", new PlanePoint(380, 50), []);
        PlanHold hold = PlanHold.Of(Bottom, [Slope, deep], 8.8, null);
        Assert.Equal([new StopHold("H", StopFate.NoLongerCrosses), new StopHold("D", StopFate.Holds)], hold.Stops);
        Assert.Null(hold.ShiftM);
        Assert.False(PlanHold.Of(Bottom, [Slope], null, 8.8).Changed);
    }

    private static DepthGrid Made()
    {
        GridFrame frame = new(0, 0, 10, 40, 60);
        float[] depthM = new float[frame.Count];
        for (int iy = 0; iy < frame.Ny; iy++)
            for (int ix = 0; ix < frame.Nx; ix++) depthM[frame.Index(ix, iy)] = iy >= 30 ? 9f : Math.Min(16f, (ix + 0.5f) * 0.5f);
        return new DepthGrid(new LocalProjection(new GeoPoint(45, -90)), frame, depthM);
    }
}
