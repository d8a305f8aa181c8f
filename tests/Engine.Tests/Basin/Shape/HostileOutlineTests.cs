using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Shape;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Tests.Basin.Shape;

public class HostileOutlineTests
{
    [Fact]
    public void Random_outlines_that_cross_themselves_give_a_whole_bottom_or_a_reason()
    {
        int bottoms = 0;
        for (ulong seed = 1; seed <= 150; seed++)
        {
            LakeSketch sketch = Random(new SeededRandom(seed));
            GuessedBottom guess = BottomGuesser.Guess(sketch);
            if (guess.Grid is not { } grid)
            {
                Assert.Equal(BasinFindings.EmptyOutline, guess.Refusal!.Kind);
                continue;
            }

            bottoms++;
            double deepestM = 0;
            int water = 0;
            for (int i = 0; i < grid.DepthM.Length; i++)
            {
                if (float.IsNaN(grid.DepthM[i])) continue;
                water++;
                deepestM = Math.Max(deepestM, grid.DepthM[i]);
                Assert.True(grid.DepthM[i] > 0 && float.IsFinite(grid.DepthM[i]), $"seed {seed}: depth {grid.DepthM[i]}");
                Assert.True(grid.DepthSdM[i] > 0 && float.IsFinite(grid.DepthSdM[i]), $"seed {seed}: error {grid.DepthSdM[i]}");
            }

            Assert.True(water > 0);
            Assert.Equal(guess.DeepestM, deepestM, 0.01 * guess.DeepestM);
            SoundedBottom sounded = guess.Sound();
            SoundHere.Best(sounded, 0.5 * guess.DeepestM, 0.5, 2);
        }

        Assert.True(bottoms > 100, $"only {bottoms} of 150 gave a bottom");
    }

    [Fact]
    public void A_ring_without_area_is_refused_in_one_finding()
    {
        PlanePoint[] line = [new(0, 0), new(500, 0), new(1000, 0)];
        PlanePoint[] point = [new(5, 5), new(5, 5), new(5, 5)];
        foreach (PlanePoint[] ring in (PlanePoint[][])[line, point, [new(0, 0), new(1, 1)]])
        {
            GuessedBottom guess = BottomGuesser.Guess(Outlines.Sketch(ring));
            Assert.Null(guess.Grid);
            Assert.Equal(BasinFindings.EmptyOutline, guess.Refusal!.Kind);
        }
    }

    [Fact]
    public void A_lake_that_an_island_fills_is_refused()
    {
        GuessedBottom guess = BottomGuesser.Guess(Outlines.Sketch(Outlines.Circle(100), Outlines.Circle(100)));
        Assert.Equal(BasinFindings.EmptyOutline, guess.Refusal?.Kind);
    }

    [Fact]
    public void Repeated_points_and_a_closed_ring_change_nothing()
    {
        PlanePoint[] ring = Outlines.Ellipse(400, 200);
        DepthGrid once = BottomGuesser.Guess(Outlines.Sketch(ring) with { DeepestM = 8 }).Grid!;
        DepthGrid often = BottomGuesser.Guess(Outlines.Sketch([.. ring.SelectMany(p => new[] { p, p, p }), ring[0]]) with
        {
            DeepestM = 8
        }).Grid!;
        Assert.Equal(once.DepthM, often.DepthM);
    }

    [Fact]
    public void A_lake_across_the_date_line_is_an_ordinary_lake()
    {
        LocalProjection there = new(new GeoPoint(-17, 179.9999));
        GeoPoint[] ring = [.. Outlines.Circle(500).Select(there.ToGeo)];
        DepthGrid grid = BottomGuesser.Guess(new LakeSketch(new Shoreline([new WaterPolygon(ring, [])])) { DeepestM = 9 }).Grid!;
        Assert.Equal(Math.PI * 250_000, grid.DepthM.Count(z => z > 0) * grid.Frame.CellAreaM2, 0.03 * Math.PI * 250_000);
    }

    // Stars, bow ties, spikes, doubled points, loops: any ring of a few places, some with an island that crosses the shore.
    private static LakeSketch Random(SeededRandom random)
    {
        int corners = 3 + random.NextInt(20);
        double sizeM = Math.Pow(10, random.NextDouble(0, 5));
        PlanePoint[] ring = [.. Enumerable.Range(0, corners)
            .Select(_ => new PlanePoint(random.NextDouble(-sizeM, sizeM), random.NextDouble(-sizeM, sizeM)))];
        if (random.NextDouble() < 0.3) ring[random.NextInt(corners)] = ring[random.NextInt(corners)];
        if (random.NextDouble() < 0.2) ring[random.NextInt(corners)] = new PlanePoint(30 * sizeM / 10, 0.01 * sizeM);
        PlanePoint[][] rings = random.NextDouble() < 0.5
            ? [ring]
            : [ring, [.. ring.Take(3).Select(p => new PlanePoint(0.5 * p.XM, 0.5 * p.YM))]];
        return Outlines.Sketch(rings) with
        {
            Kind = random.NextDouble() < 0.5 ? BasinKind.Dammed : BasinKind.Natural,
            Dam = random.NextDouble() < 0.5 ? Outlines.Plane.ToGeo(new PlanePoint(sizeM, 0)) : null,
            DeepestM = random.NextDouble() < 0.5 ? random.NextDouble(0.5, 60) : null,
            MeanM = random.NextDouble() < 0.3 ? random.NextDouble(0.5, 20) : null,
            WaterCells = 400,
        };
    }
}
