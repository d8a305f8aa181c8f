using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Tests.Basin.Forms;

public class BottomFormsTests
{
    private static readonly FormOptions Yardstick30 = new() { YardstickM = 30 };

    [Fact]
    public void A_dome_on_a_plain_is_one_hump_with_its_height_and_place()
    {
        FormMap map = BottomForms.Find(Lake(120, 120, (x, y) => 12 - (6 * Dome(x - 600, y - 550, 80))), Yardstick30, null, TestContext.Current.CancellationToken);
        BottomForm hump = Assert.Single(map.Forms, f => f.Class == FormClass.Hump);
        Assert.InRange(hump.Place.DistanceToM(new PlanePoint(600, 550)), 0, 15);
        Assert.InRange(hump.ProminenceM, 4.5, 6.1);
        Assert.InRange(hump.ShallowM, 5.9, 7.2);
        Assert.DoesNotContain(map.Forms, f => f.Class is FormClass.MainChannel or FormClass.Saddle or FormClass.MainPoint or FormClass.Ledge);
        Assert.Equal(FormClass.Hump, map.Forms[map.FormOfCell[map.Frame.Index(60, 55)]].Class);
    }

    [Fact]
    public void Two_domes_that_touch_have_a_saddle_between_them()
    {
        FormMap map = BottomForms.Find(Lake(120, 120, (x, y) => 14 - (7 * Dome(x - 545, y - 600, 75)) - (6.5 * Dome(x - 655, y - 600, 75))), Yardstick30, null, TestContext.Current.CancellationToken);
        Assert.Equal(2, map.Forms.Count(f => f.Class == FormClass.Hump));
        BottomForm saddle = Assert.Single(map.Forms, f => f.Class == FormClass.Saddle);
        Assert.InRange(saddle.Place.DistanceToM(new PlanePoint(600, 600)), 0, 20);
    }

    [Fact]
    public void A_bowl_is_a_hole_and_a_plain_has_no_rise()
    {
        FormMap map = BottomForms.Find(Lake(120, 120, (x, y) => 8 + (0.004 * x) + (5 * Dome(x - 500, y - 500, 70))), Yardstick30, null, TestContext.Current.CancellationToken);
        Assert.DoesNotContain(map.Forms, f => f.Class == FormClass.Hump);
        Assert.Contains(map.Forms, f => f.Class is FormClass.Flat && f.LengthM > 500);
    }

    [Fact]
    public void A_wall_is_a_bluff_with_two_ends_along_its_foot()
    {
        FormMap map = BottomForms.Find(Lake(150, 60, (x, y) => Math.Min(25, (y - 30) * (x is > 500 and < 1000 ? 1.4 : 0.2))), Yardstick30, null, TestContext.Current.CancellationToken);
        BottomForm wall = Assert.Single(map.Forms, f => f.Class == FormClass.BluffWall);
        Assert.InRange(wall.LengthM, 400, 620);
        Assert.Equal(2, map.Forms.Count(f => f.Class == FormClass.BluffEnd));
        Assert.InRange(wall.EdgeSlopeDeg, 45, 60);
    }

    [Fact]
    public void A_ditch_through_a_sloping_plain_is_the_main_channel_and_its_width_is_right()
    {
        FormMap map = BottomForms.Find(Lake(160, 80, (x, y) => 8 + (0.004 * x) + (4 * Math.Clamp((45 - Math.Abs(y - 400 - (90 * Math.Sin(x / 220)))) / 20, 0, 1))), Yardstick30, null, TestContext.Current.CancellationToken);
        BottomForm channel = Assert.Single(map.Forms, f => f.Class == FormClass.MainChannel);
        Assert.True(channel.LengthM > 1300, $"{channel.LengthM}");
        Assert.InRange(channel.WidthM, 50, 95);
        Assert.All(channel.Geometry.Points, p => Assert.InRange(p.YM - 400 - (90 * Math.Sin(p.XM / 220)), -30, 30));
        Assert.Equal(channel.Geometry.Points.Count, channel.LeftEdge.Count);
    }

    [Fact]
    public void Water_of_a_few_cells_or_none_gives_an_answer_without_forms()
    {
        foreach (int side in (int[])[1, 3, 6])
        {
            FormMap map = BottomForms.Find(Lake(side, side, (_, _) => 2), null, null, TestContext.Current.CancellationToken);
            Assert.DoesNotContain(map.Forms, f => f.Class is FormClass.MainChannel or FormClass.Hump or FormClass.MainPoint);
        }

        Assert.Empty(BottomForms.Find(Lake(5, 5, (_, _) => double.NaN), null, null, TestContext.Current.CancellationToken).Forms);
    }

    [Fact]
    public void Work_that_is_cancelled_stops()
    {
        using CancellationTokenSource stopped = new();
        stopped.Cancel();
        Assert.Throws<OperationCanceledException>(() => BottomForms.Find(Lake(40, 40, (_, _) => 5), null, null, stopped.Token));
    }

    private static double Dome(double dx, double dy, double radius)
    {
        double rest = 1 - (((dx * dx) + (dy * dy)) / (radius * radius));
        return rest > 0 ? rest * rest : 0;
    }

    // A lake of 10 m cells with a rim of land one cell wide.
    private static DepthGrid Lake(int nx, int ny, Func<double, double, double> depthM)
    {
        GridFrame frame = new(0, 0, 10, nx, ny);
        float[] depths = new float[frame.Count];
        for (int i = 0; i < depths.Length; i++)
        {
            int x = i % nx, y = i / nx;
            PlanePoint p = frame.Centre(i);
            double d = depthM(p.XM, p.YM);
            depths[i] = nx > 8 && (x == 0 || y == 0 || x == nx - 1 || y == ny - 1) || !(d > 0) ? float.NaN : (float)d;
        }

        return new DepthGrid(new LocalProjection(new GeoPoint(45, 10)), frame, depths);
    }
}
