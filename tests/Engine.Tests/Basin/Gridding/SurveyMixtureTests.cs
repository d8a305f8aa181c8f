using CsCheck;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Gridding;
using SecondShore.Engine.Core.Geo;
using SecondShore.TestKit;

namespace SecondShore.Engine.Tests.Basin.Gridding;

public class SurveyMixtureTests
{
    [Fact]
    public void Contours_of_a_cone_leave_no_terrace_and_a_hollow_in_the_middle()
    {
        ContourLine[] contours = [.. Enumerable.Range(1, 5).Select(k => new ContourLine(k * 5, LakeShapes.CircleRing(0, 0, 500 - (k * 500 / 6.0)), true))];
        GriddedLake lake = SurveyGridder.Grid(new Survey { Contours = contours, Shoreline = LakeShapes.Circle(500) }, new GridOptions { Projection = LakeShapes.Plane, CellM = 5 });
        double middle = lake.Grid!.DepthAtM(new(0, 0));
        Assert.InRange(middle, 25.8, 27.5);
        double last = double.NegativeInfinity;
        for (double r = 480; r >= 5; r -= 25)
        {
            double depth = lake.Grid.DepthAtM(new(r, 0));
            Assert.True(depth > last, $"at {r} m: {depth} after {last}");
            if (r > 90) Assert.Equal(30 * (1 - (r / 500)), depth, 0.5);
            last = depth;
        }
    }

    [Fact]
    public void Two_lakes_of_one_contour_file_stay_two_and_the_land_between_them_dry()
    {
        ContourLine[] contours = [.. from x in (double[])[-2000, 2000] from k in Enumerable.Range(0, 4)
                                     select new ContourLine(k * 2, LakeShapes.CircleRing(x, 0, 400 - (k * 90)), true)];
        DepthGrid grid = SurveyGridder.Grid(new Survey { Contours = contours }, new GridOptions { Projection = LakeShapes.Plane, CellM = 20 }).Grid!;
        Assert.InRange(grid.DepthAtM(new(-2000, 0)), 6, 7);
        Assert.InRange(grid.DepthAtM(new(2000, 0)), 6, 7);
        Assert.False(grid.DepthAtM(new(0, 0)) > 0);
    }

    [Fact]
    public void An_outline_of_something_else_does_not_leave_the_soundings_dry()
    {
        var points = from x in Enumerable.Range(-20, 41) from y in Enumerable.Range(-20, 41) select (x * 10.0, y * 10.0, 8.0);
        Survey survey = new() { Soundings = [LakeShapes.Soundings(points)], Shoreline = new Shoreline([new WaterPolygon(LakeShapes.CircleRing(0, 0, 20), [])]) };
        GriddedLake lake = SurveyGridder.Grid(survey, new GridOptions { Projection = LakeShapes.Plane, CellM = 10 });
        Assert.Equal(8, lake.Grid!.DepthAtM(new(150, -150)), 0.1);
        Assert.Contains(lake.Assumed, a => a.Say(UnitSystem.Metric).Contains("not the shore of this water", StringComparison.Ordinal));
        Survey whole = survey with { Shoreline = LakeShapes.Circle(600) };
        Assert.DoesNotContain(SurveyGridder.Grid(whole, new GridOptions { Projection = LakeShapes.Plane, CellM = 10 }).Assumed, a => a.Say(UnitSystem.Metric).Contains("not the shore", StringComparison.Ordinal));
    }

    [Fact]
    public void Soundings_correct_a_raster_near_them_and_leave_it_alone_far_away()
    {
        DepthGrid cone = LakeShapes.Cone(500, 30, 10);
        var points = from x in Enumerable.Range(-6, 13)
                     from y in Enumerable.Range(-6, 13)
                     where x < -1
                     select (x * 30.0, y * 30.0, 32 - (30 * Math.Sqrt((x * x * 900) + (y * y * 900)) / 500));
        Survey survey = new() { Rasters = [PlaneRaster.Of(cone)], Soundings = [LakeShapes.Soundings(points)] };
        DepthGrid grid = SurveyGridder.Grid(survey, new GridOptions { Projection = cone.Projection, Frame = cone.Frame }).Grid!;
        Assert.Equal(cone.DepthAtM(new(-120, 0)) + 2, grid.DepthAtM(new(-120, 0)), 0.3);
        Assert.Equal(cone.DepthAtM(new(250, 0)), grid.DepthAtM(new(250, 0)), 0.05);
    }

    [Fact]
    public void A_later_file_wins_where_two_overlap_and_the_seam_is_feathered()
    {
        static IEnumerable<(double, double, double)> Lattice(double west, double east, double depthM) =>
            from x in Enumerable.Range(0, 201) let xM = west + (x * (east - west) / 200) from y in Enumerable.Range(0, 21) select (xM, y * 10.0, depthM);
        Survey survey = new() { Soundings = [LakeShapes.Soundings(Lattice(0, 1200, 10)), LakeShapes.Soundings(Lattice(600, 1800, 12))] };
        GriddedLake lake = SurveyGridder.Grid(survey, new GridOptions { Projection = LakeShapes.Plane, CellM = 5 });
        Assert.Contains(lake.Done, d => d.Contains("gave way", StringComparison.Ordinal));
        Assert.Equal(12, lake.Grid!.DepthAtM(new(900, 100)), 0.05);
        Assert.Equal(10, lake.Grid.DepthAtM(new(300, 100)), 0.05);
        for (double x = 400; x < 800; x += 5)
            Assert.True(Math.Abs(lake.Grid.DepthAtM(new(x + 5, 100)) - lake.Grid.DepthAtM(new(x, 100))) < 0.9, "no step at the seam");
    }

    [Fact]
    public void A_creek_that_was_never_sounded_is_not_left_dry()
    {
        (double, double)[] outline = [(-600, -200), (600, -200), (600, 200), (60, 200), (60, 900), (-60, 900), (-60, 200), (-600, 200)];
        var points = from x in Enumerable.Range(-29, 59) from y in Enumerable.Range(-9, 19) select (x * 20.0, y * 20.0, 15 * (1 - (Math.Abs(y * 20.0) / 200)));
        Survey survey = new() { Soundings = [LakeShapes.Soundings(points)], Shoreline = new([new WaterPolygon(LakeShapes.Ring(outline), [])]) };
        GriddedLake lake = SurveyGridder.Grid(survey, new GridOptions { Projection = LakeShapes.Plane, CellM = 5 });
        Assert.True(lake.Grid!.DepthAtM(new(0, 600)) > 1);
        Assert.Contains(lake.Assumed, a => a.Say(UnitSystem.Metric).Contains("no sounding near", StringComparison.Ordinal));
        int there = lake.Grid.Frame.Index((int)lake.Grid.Frame.ColumnAt(0), (int)lake.Grid.Frame.RowAt(600));
        Assert.True(lake.Grid.DepthSdM[there] > 0.5, "and its doubt is told");
    }

    private static readonly Gen<((int X, int Y, double DepthM)[] Points, bool Shored)> AnySurvey =
        Gen.Select(Gen.Int[-40, 40], Gen.Int[-40, 40], Gen.Double[-2, 25]).Array[0, 60].Select(Gen.Bool);

    [Fact]
    [LongerCheck]
    public void Any_survey_gives_finite_depths_within_its_range_or_a_refusal() =>
        AnySurvey.Hold(s => GivesDepthsWithDoubtOrARefusal(s.Points, s.Shored), LongCheck.Number(30, 300));

    // An outermost sounding whose cell has no depth of its own took depth and doubt from the water about it.
    [Theory]
    [InlineData("4NRrGV2n1314")]
    public void A_survey_that_once_left_water_without_doubt_tells_it(string seed) =>
        AnySurvey.At(seed, s => GivesDepthsWithDoubtOrARefusal(s.Points, s.Shored));

    private static void GivesDepthsWithDoubtOrARefusal((int X, int Y, double DepthM)[] points, bool shored)
    {
        Survey survey = new()
        {
            Soundings = [LakeShapes.Soundings(points.Select(p => (p.X * 5.0, p.Y * 5.0, p.DepthM)))],
            Shoreline = shored ? LakeShapes.Circle(250, 40) : null,
        };
        GriddedLake lake = SurveyGridder.Grid(survey, new GridOptions { MaxCells = 20_000 });
        Assert.Equal(lake.IsGridded, lake.Refusal is null);
        if (!lake.IsGridded) return;
        double most = points.Max(p => p.DepthM);
        for (int i = 0; i < lake.Grid.DepthM.Length; i++)
        {
            float depth = lake.Grid.DepthM[i], sd = lake.Grid.DepthSdM[i];
            if (float.IsNaN(depth)) continue;
            Assert.InRange(depth, float.Epsilon, (float)Math.Max(0.101, (1.3 * most) + 0.1));
            Assert.True(sd > 0 && float.IsFinite(sd), $"cell {i} is {depth} m deep with a standard error of {sd} m");
        }
    }

    [Fact]
    public void Mirrored_soundings_give_the_mirrored_grid()
    {
        static IEnumerable<(double, double, double)> Points(int sign)
        {
            for (int i = 0; i < 500; i++)
            {
                double x = (i * 37 % 401) - 200, y = (i * 91 % 397) - 198;
                yield return (sign * (x + 0.3), y + 0.1, 10 + (0.02 * x) + (3 * Math.Sin(y / 50)));
            }
        }

        GridOptions options = new() { Projection = LakeShapes.Plane, Frame = new(-220, -220, 5, 88, 88), Method = GriddingMethod.NaturalNeighbour };
        float[] east = SurveyGridder.Grid(new Survey { Soundings = [LakeShapes.Soundings(Points(1))] }, options).Grid!.DepthM;
        float[] west = SurveyGridder.Grid(new Survey { Soundings = [LakeShapes.Soundings(Points(-1))] }, options).Grid!.DepthM;
        for (int i = 0; i < east.Length; i++)
        {
            // Beyond the outermost soundings two triangles may be equally near: which one answers is no claim of this test.
            if (i % 88 is < 6 or > 81 || i / 88 is < 6 or > 81) continue;
            float mirrored = west[(i / 88 * 88) + 87 - (i % 88)];
            if (!float.IsNaN(east[i]) && !float.IsNaN(mirrored)) Assert.Equal(east[i], mirrored, 0.05f);
        }

        Assert.True(east.Count(d => !float.IsNaN(d)) > 5000);
    }
}
