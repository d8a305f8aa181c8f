using CsCheck;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Shore;
using SecondShore.TestKit;

namespace SecondShore.Engine.Tests.Basin.Shore;

public class SecondShoreLineTests
{
    [Theory]
    [InlineData(5.0)]
    [InlineData(12.3)]
    [InlineData(27.0)]
    public void Second_shore_of_a_cone_lies_within_a_tenth_of_a_cell_of_its_circle(double thermoclineM)
    {
        DepthGrid cone = LakeShapes.Cone(300, 30, 10);
        double radiusM = 300 * (1 - (thermoclineM / 30));
        SecondShoreLine shore = SecondShoreLine.Trace(cone, thermoclineM);
        DepthContour line = Assert.Single(shore.Lines);
        Assert.True(line.Closed);
        foreach (var p in line.Points) Assert.Equal(radiusM, Math.Sqrt((p.XM * p.XM) + (p.YM * p.YM)), 1.0);
        Assert.Equal(2 * Math.PI * radiusM, shore.LengthM, 0.01 * 2 * Math.PI * radiusM);
        Assert.True(line.SignedAreaM2 > 0, "deeper water lies inside, on the left");
    }

    [Fact]
    public void Shoreline_of_a_cone_lies_within_a_quarter_of_a_cell_of_its_circle()
    {
        DepthContour shore = Assert.Single(Contours.Trace(LakeShapes.Cone(300, 30, 10), [0.0]));
        foreach (var p in shore.Points) Assert.Equal(300, Math.Sqrt((p.XM * p.XM) + (p.YM * p.YM)), 2.5);
    }

    [Fact]
    public void A_thermocline_that_tilts_gives_the_line_where_it_meets_the_bottom()
    {
        DepthGrid cone = LakeShapes.Cone(300, 30, 10);
        float[] tilted = new float[cone.Frame.Count];
        for (int i = 0; i < tilted.Length; i++) tilted[i] = (float)(10 + (cone.Frame.Centre(i).XM / 100));
        foreach (var p in SecondShoreLine.Trace(cone, tilted).Lines.SelectMany(l => l.Points))
            Assert.Equal(10 + (p.XM / 100), 30 * (1 - (Math.Sqrt((p.XM * p.XM) + (p.YM * p.YM)) / 300)), 0.1);
    }

    [Fact]
    public void A_level_array_gives_the_same_line_as_a_level_number()
    {
        DepthGrid cone = LakeShapes.Cone(300, 30, 10);
        float[] level = new float[cone.Frame.Count];
        Array.Fill(level, 8f);
        Assert.Equal(SecondShoreLine.Trace(cone, 8).LengthM, SecondShoreLine.Trace(cone, level).LengthM, 0.01);
        Array.Fill(level, float.NaN);
        Assert.Empty(SecondShoreLine.Trace(cone, level).Lines);
    }

    [Fact]
    public void Every_line_of_any_lake_is_closed_and_there_is_one_where_it_is_deep_enough() =>
        Gen.Select(Gen.Double[-5, 12].Array[49], Gen.Double[0.2, 8]).Hold((cells, level) =>
        {
            DepthGrid grid = LakeShapes.FromFormula(7, 7, 10, (x, y) => cells[((int)((y + 35) / 10) * 7) + (int)((x + 35) / 10)]);
            var lines = Contours.Trace(grid, [level]);
            Assert.All(lines, l => Assert.True(l.Closed && l.Points.Length >= 3));
            // A cell exactly at the level may leave a line of no length, which is none.
            if (grid.DepthM.Any(d => d > level + 1e-3)) Assert.NotEmpty(lines);
            if (!grid.DepthM.Any(d => d >= level)) Assert.Empty(lines);
        }, 500);

    [Fact]
    public void Where_only_the_soundings_end_the_line_ends_too()
    {
        DepthGrid shored = LakeShapes.FromFormula(20, 20, 10, (x, _) => 10 + (x / 20));
        DepthGrid open = new(shored.Projection, shored.Frame, shored.DepthM) { EdgeIsShore = false };
        DepthContour line = Assert.Single(Contours.Trace(open, [10.0]));
        Assert.False(line.Closed);
        Assert.Equal(190, line.LengthM, 1.0);
        Assert.True(Assert.Single(Contours.Trace(shored, [10.0])).Closed);
    }

    [Fact]
    public void A_line_around_a_hump_runs_the_other_way_round()
    {
        DepthGrid grid = LakeShapes.FromFormula(40, 40, 10, (x, y) => 20 - (12 * Math.Exp(-((x * x) + (y * y)) / 5000)));
        DepthContour around = Contours.Trace(grid, [15.0]).MinBy(l => l.LengthM)!;
        Assert.True(around.SignedAreaM2 < 0);
    }

    [Fact]
    public void Many_levels_at_once_give_the_lines_of_each_alone()
    {
        DepthGrid grid = LakeShapes.Cone(300, 30, 10);
        double[] levels = [0, 4, 9.5, 17, 26];
        var together = Contours.Trace(grid, levels);
        var alone = levels.SelectMany(l => Contours.Trace(grid, [l])).ToList();
        Assert.Equal(alone.Select(l => (l.LevelM, l.Closed, l.Points.Length)), together.Select(l => (l.LevelM, l.Closed, l.Points.Length)));
        Assert.Equal(alone.SelectMany(l => l.Points), together.SelectMany(l => l.Points));
    }
}
