using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Shape;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Tests.Basin.Shape;

public class BottomGuesserTests
{
    [Fact]
    public void A_round_lake_is_deepest_in_its_middle_and_shallower_all_the_way_to_its_shore()
    {
        DepthGrid grid = Guess(Outlines.Sketch(Outlines.Circle(300)) with { DeepestM = 12 });
        Assert.Equal(12, grid.DepthAtM(new PlanePoint(0, 0)), 0.3);
        double before = 12.1;
        for (double outM = 20; outM < 295; outM += 20)
        {
            double[] round = [.. Enumerable.Range(0, 8)
                .Select(k => grid.DepthAtM(Outlines.Turned(new PlanePoint(outM, 0), k * Math.PI / 4)))];
            Assert.True(round.Max() - round.Min() < 0.08 * 12, $"{outM} m from the middle one depth is told: {string.Join(" ", round)}");
            Assert.True(round.Average() < before, $"depth at {outM} m: {round.Average()} after {before}");
            before = round.Average();
        }
    }

    [Fact]
    public void Numbers_of_a_cone_give_the_cone()
    {
        BasinNumbers cone = new() { CrossPower = 1, WidthPower = 1, SheetShare = 0, BroadShare = 1 };
        DepthGrid grid = BottomGuesser.Guess(Outlines.Sketch(Outlines.Circle(300)) with { DeepestM = 12 },
            new ShapeNumbers(cone, cone)).Grid!;
        for (int i = 0; i < grid.DepthM.Length; i++)
        {
            if (!(grid.DepthM[i] > 0)) continue;
            PlanePoint p = grid.Frame.Centre(i);
            double trueM = 12 * (1 - (Math.Sqrt((p.XM * p.XM) + (p.YM * p.YM)) / 300));
            Assert.True(Math.Abs(grid.DepthM[i] - trueM) < 0.5, $"{p}: {grid.DepthM[i]} where the cone is {trueM} m deep");
        }
    }

    [Fact]
    public void A_sheet_over_a_round_lake_sags_as_a_parabola()
    {
        BasinNumbers sheet = new() { SheetShare = 1, SheetPower = 1, BroadShare = 1 };
        DepthGrid grid = BottomGuesser.Guess(Outlines.Sketch(Outlines.Circle(300)) with { DeepestM = 10 },
            new ShapeNumbers(sheet, sheet)).Grid!;
        foreach (double outM in (double[])[0, 100, 200, 280])
            Assert.Equal(10 * (1 - (outM * outM / 90_000)), grid.DepthAtM(new PlanePoint(outM, 0)), 0.25);
    }

    [Fact]
    public void A_dammed_valley_falls_from_its_tail_to_its_dam()
    {
        LakeSketch sketch = Outlines.Sketch(Outlines.Valley(3000, 500)) with
        {
            Kind = BasinKind.Dammed,
            Dam = Outlines.Plane.ToGeo(new PlanePoint(3000, 0)),
            DeepestM = 20
        };
        DepthGrid grid = Guess(sketch);
        double[] along = [.. new[] { 400.0, 1000, 1600, 2200, 2700 }.Select(x => grid.DepthAtM(new PlanePoint(x, 0)))];
        Assert.Equal(along.Order(), along);
        Assert.True(along[^1] > 3 * along[0], $"{along[0]} m at the tail, {along[^1]} m before the dam");
        foreach (double xM in (double[])[1000, 2200])
        {
            double half = xM / 12, middle = grid.DepthAtM(new PlanePoint(xM, 0));
            Assert.True(grid.DepthAtM(new PlanePoint(xM, 0.8 * half)) < 0.75 * middle, "banks are shallower than the stream");
        }
    }

    [Fact]
    public void A_dam_at_the_other_end_turns_the_valley_round()
    {
        PlanePoint[] strip = [new(0, 0), new(3000, 0), new(3000, 400), new(0, 400)];
        LakeSketch sketch = Outlines.Sketch(strip) with { Kind = BasinKind.Dammed, DeepestM = 20 };
        double east = Guess(sketch with { Dam = Outlines.Plane.ToGeo(new PlanePoint(3000, 200)) }).DepthAtM(new PlanePoint(2600, 200));
        DepthGrid west = Guess(sketch with { Dam = Outlines.Plane.ToGeo(new PlanePoint(0, 200)) });
        Assert.True(east > 2 * west.DepthAtM(new PlanePoint(2600, 200)));
        Assert.Equal(east, west.DepthAtM(new PlanePoint(400, 200)), 1.5);
    }

    [Fact]
    public void A_dam_that_nobody_showed_is_said_and_stands_at_the_wide_end()
    {
        GuessedBottom guess = BottomGuesser.Guess(Outlines.Sketch(Outlines.Valley(3000, 500)) with
        {
            Kind = BasinKind.Dammed,
            DeepestM = 20
        });
        Assert.Contains(guess.Assumed, f => f.Kind == BasinFindings.GuessedDam);
        Assert.True(guess.Dam!.Value.XM > 2500, $"{guess.Dam}");
    }

    [Fact]
    public void An_island_is_land_and_the_water_shoals_to_it()
    {
        DepthGrid grid = Guess(Outlines.Sketch(Outlines.Circle(400), Outlines.Circle(60)) with { DeepestM = 10 });
        Assert.True(double.IsNaN(grid.DepthAtM(new PlanePoint(0, 0))));
        Assert.True(grid.DepthAtM(new PlanePoint(75, 0)) < 0.6 * grid.DepthAtM(new PlanePoint(230, 0)));
        Assert.True(grid.DepthAtM(new PlanePoint(385, 0)) < 0.6 * grid.DepthAtM(new PlanePoint(230, 0)));
    }

    [Theory]
    [InlineData(0.3, 5000, -800)]
    [InlineData(1.1, 0, 0)]
    [InlineData(Math.PI / 2, -300, 20_000)]
    public void A_lake_turned_and_moved_has_the_same_bottom(double turnRad, double xM, double yM)
    {
        DepthGrid still = Guess(Outlines.Sketch(Outlines.Ellipse(600, 200)) with { DeepestM = 15 });
        DepthGrid moved = Guess(Outlines.Sketch(Outlines.Ellipse(600, 200, turnRad, xM, yM)) with { DeepestM = 15 });
        SeededRandom random = new(7);
        for (int q = 0; q < 200; q++)
        {
            double r = Math.Sqrt(random.NextDouble(0, 0.9)), a = random.NextDouble(0, 2 * Math.PI);
            PlanePoint p = new(600 * r * Math.Cos(a), 200 * r * Math.Sin(a));
            Assert.Equal(still.DepthAtM(p), moved.DepthAtM(Outlines.Turned(p, turnRad, xM, yM)), 0.9);
        }
    }

    [Fact]
    public void Deeper_water_is_deeper_everywhere_and_less_sure()
    {
        LakeSketch sketch = Outlines.Sketch(Outlines.Ellipse(500, 250));
        DepthGrid shallow = Guess(sketch with { DeepestM = 6 }), deep = Guess(sketch with { DeepestM = 9 });
        for (int i = 0; i < shallow.DepthM.Length; i++)
        {
            if (!(shallow.DepthM[i] > 0)) continue;
            Assert.True(deep.DepthM[i] > shallow.DepthM[i]);
            Assert.True(deep.DepthSdM[i] > shallow.DepthSdM[i]);
        }

        Assert.Equal(6, shallow.DepthM.Where(z => z > 0).Max(), 0.01);
    }

    [Theory]
    [InlineData(3)]
    [InlineData(4.5)]
    [InlineData(7)]
    public void A_mean_depth_that_is_told_is_the_mean_of_the_bottom(double meanM)
    {
        DepthGrid grid = Guess(Outlines.Sketch(Outlines.Ellipse(500, 250)) with { DeepestM = 10, MeanM = meanM });
        Assert.Equal(meanM, grid.DepthM.Where(z => z > 0).Average(), 0.02 * meanM);
        Assert.Equal(10, grid.DepthM.Where(z => z > 0).Max(), 0.05);
    }

    [Fact]
    public void What_is_not_told_is_assumed_aloud_and_widens_the_error()
    {
        LakeSketch sketch = Outlines.Sketch(Outlines.Ellipse(500, 250));
        GuessedBottom unknown = BottomGuesser.Guess(sketch), told = BottomGuesser.Guess(sketch with { DeepestM = unknown.DeepestM });
        Assert.Contains(unknown.Assumed, f => f.Kind == BasinFindings.DeepestFromArea);
        Assert.Empty(told.Assumed);
        double wide = unknown.Grid!.DepthSdM.Sum(), narrow = told.Grid!.DepthSdM.Sum();
        Assert.True(wide > 1.15 * narrow, $"{wide} against {narrow}");
        Assert.Equal(4, BottomGuesser.Guess(sketch with { MeanM = 4 }).Grid!.DepthM.Where(z => z > 0).Average(), 0.1);
    }

    private static DepthGrid Guess(LakeSketch sketch) => BottomGuesser.Guess(sketch).Grid!;
}
