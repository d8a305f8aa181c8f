using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Gridding;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Tests.Basin.Gridding;

public class SurveyGridderTests
{
    [Fact]
    public void Soundings_of_a_cone_with_its_shoreline_give_the_cone_back()
    {
        GriddedLake lake = SurveyGridder.Grid(new Survey { Soundings = [Cone(2000)], Shoreline = LakeShapes.Circle(500) });
        Assert.True(lake.IsGridded);
        Assert.Equal(Math.PI * 500 * 500, lake.Hypsography.SurfaceAreaM2, 0.01 * Math.PI * 500 * 500);
        Assert.Equal(Math.PI * 500 * 500 * 40 / 3, lake.Hypsography.VolumeM3, 0.02 * Math.PI * 500 * 500 * 40 / 3);
        foreach (double r in (double[])[50, 200, 400])
            Assert.Equal(40 * (1 - (r / 500)), lake.Grid.DepthAtM(lake.Grid.Projection.ToPlane(LakeShapes.Plane.ToGeo(new(0, r)))), 0.8);
    }

    [Fact]
    public void An_island_in_the_shoreline_is_land()
    {
        GriddedLake lake = SurveyGridder.Grid(new Survey
        {
            Soundings = [Cone(2000)],
            Shoreline = LakeShapes.Circle(500, 180, LakeShapes.CircleRing(0, 250, 60)),
        });
        PlanePoint onIsland = lake.Grid!.Projection.ToPlane(LakeShapes.Plane.ToGeo(new(0, 250)));
        Assert.True(double.IsNaN(lake.Grid.DepthAtM(onIsland)));
    }

    [Fact]
    public void Without_a_shoreline_the_edge_is_drawn_around_the_soundings_and_said()
    {
        GriddedLake lake = SurveyGridder.Grid(new Survey { Soundings = [Cone(3000)] });
        Assert.True(lake.IsGridded);
        Assert.Contains(lake.Assumed, a => a.Say(UnitSystem.Metric).StartsWith("No shoreline is given", StringComparison.Ordinal));
        Assert.InRange(lake.Hypsography.SurfaceAreaM2, 0.9 * Math.PI * 490 * 490, Math.PI * 500 * 500);
    }

    [Fact]
    public void Land_between_two_arms_whose_shores_are_marks_of_depth_0_is_no_water()
    {
        // A river bent back on itself: two arms 120 m wide, 500 m of land between them, and a bend that joins them in the east.
        List<(double X, double Y, double Depth)> points = [];
        for (double x = -1500; x <= 900; x += 12)
        {
            foreach (double middle in (double[])[-310, 310])
                for (double off = -60; off <= 60; off += 12) points.Add((x, middle + off, Math.Max(0, 9 * (1 - (Math.Abs(off) / 60)))));
        }

        for (double y = -370; y <= 370; y += 12)
            for (double off = -60; off <= 60; off += 12) points.Add((960 + off, y, Math.Max(0, 9 * (1 - (Math.Abs(off) / 60)))));
        GriddedLake lake = SurveyGridder.Grid(new Survey { Soundings = [LakeShapes.Soundings(points)] }, new GridOptions { Projection = LakeShapes.Plane, CellM = 30 });
        foreach (double x in (double[])[-1400, -600, 0, 700])
        {
            Assert.True(double.IsNaN(lake.Grid!.DepthAtM(new(x, 0))), $"land at {x} is {lake.Grid.DepthAtM(new(x, 0)):0.00} m deep");
            Assert.Equal(9, lake.Grid.DepthAtM(new(x, 310)), 1.0);
        }

        // The river is four cells wide: half a cell of doubt on either shore.
        Assert.InRange(lake.Hypsography!.SurfaceAreaM2, 0.85 * 120 * 5500, 1.35 * 120 * 5500);
    }

    [Fact]
    public void A_raster_keeps_its_cells_and_depths()
    {
        DepthGrid cone = LakeShapes.Cone(300, 30, 10);
        GriddedLake lake = SurveyGridder.Grid(new Survey { Rasters = [PlaneRaster.Of(cone)] });
        Assert.True(lake.IsGridded);
        Assert.Equal(10, lake.Grid.Frame.CellM, 0.01);
        Assert.Equal(Hypsography.FromGrid(cone)!.VolumeM3, lake.Hypsography.VolumeM3, 0.01 * lake.Hypsography.VolumeM3);
    }

    [Fact]
    public void Two_rasters_side_by_side_merge_into_one_lake()
    {
        DepthGrid whole = LakeShapes.FromFormula(80, 40, 10, (x, y) => 12 - (Math.Abs(y) / 20));
        float[] west = [.. whole.DepthM], east = [.. whole.DepthM];
        for (int i = 0; i < west.Length; i++)
        {
            if (i % 80 >= 45) west[i] = float.NaN;
            if (i % 80 < 35) east[i] = float.NaN;
        }

        Survey survey = new()
        {
            Rasters = [PlaneRaster.Of(new DepthGrid(whole.Projection, whole.Frame, west)), PlaneRaster.Of(new DepthGrid(whole.Projection, whole.Frame, east))],
        };
        GriddedLake lake = SurveyGridder.Grid(survey);
        Assert.Equal(whole.DepthM.Count(d => d > 0) * 100.0, lake.Hypsography!.SurfaceAreaM2, 0.02 * lake.Hypsography.SurfaceAreaM2);
        Assert.Equal(12, lake.Grid!.DepthAtM(lake.Grid.Projection.ToPlane(LakeShapes.Plane.ToGeo(new(0, 0)))), 0.3);
    }

    [Fact]
    public void A_lake_of_one_cell_is_a_lake()
    {
        DepthGrid one = LakeShapes.FromFormula(1, 1, 10, (_, _) => 5);
        GriddedLake lake = SurveyGridder.Grid(new Survey { Rasters = [PlaneRaster.Of(one)] });
        Assert.True(lake.IsGridded);
        Assert.Equal(5, lake.Hypsography.MaxDepthM, 1e-6);
        Assert.Equal(500, lake.Hypsography.VolumeM3, 10.0);
    }

    [Fact]
    public void Surveys_that_give_no_lake_are_refused_in_one_sentence()
    {
        Refused(new Survey(), "nothing to grid");
        Refused(new Survey { Shoreline = LakeShapes.Circle(100) }, "no depths");
        Refused(new Survey { Soundings = [LakeShapes.Soundings([(0, 0, 5), (10, 10, 6), (20, 20, 7)])] }, "one line");
        Refused(new Survey { Soundings = [LakeShapes.Soundings([(0, 0, 5)])] }, "one line");
        Refused(new Survey { Soundings = [LakeShapes.Soundings([(0, 0, -5), (10, 0, -6), (0, 10, -7)])] }, "elevations");
        Refused(new Survey { Soundings = [new SoundingSet("a", [double.NaN], [0], [1], null, [])] }, "nothing to grid");
    }

    [Fact]
    public void A_stray_cluster_far_away_is_left_out_and_said()
    {
        var points = ConePoints(1000).Concat(Enumerable.Range(0, 6).Select(i => (6000.0 + i, -3000.0, 4.0)));
        GriddedLake lake = SurveyGridder.Grid(new Survey { Soundings = [LakeShapes.Soundings(points)] });
        Assert.True(lake.IsGridded);
        Assert.Contains(lake.Assumed, a => a.Say(UnitSystem.Metric).StartsWith("6 soundings lie far off", StringComparison.Ordinal));
        Assert.True(lake.Grid.Frame.EastM - lake.Grid.Frame.WestM < 1200);
    }

    private static void Refused(Survey survey, string part)
    {
        GriddedLake lake = SurveyGridder.Grid(survey);
        Assert.False(lake.IsGridded);
        string refusal = lake.Refusal.Say(UnitSystem.Metric);
        Assert.Contains(part, refusal, StringComparison.Ordinal);
        Assert.EndsWith(".", refusal, StringComparison.Ordinal);
    }

    private static SoundingSet Cone(int count) => LakeShapes.Soundings(ConePoints(count));

    private static IEnumerable<(double, double, double)> ConePoints(int count)
    {
        // A sunflower: even cover without a lattice.
        for (int i = 0; i < count; i++)
        {
            double r = 498 * Math.Sqrt((i + 0.5) / count), a = i * 2.399963;
            yield return (r * Math.Cos(a), r * Math.Sin(a), 40 * (1 - (r / 500)));
        }
    }
}
