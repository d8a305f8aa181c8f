using CsCheck;
using SecondShore.Engine.Basin.Gridding;
using SecondShore.TestKit;

namespace SecondShore.Engine.Tests.Basin.Gridding;

public class TriangulationTests
{
    [Fact]
    public void No_point_lies_in_the_circle_of_a_triangle() =>
        Gen.Select(Gen.Int[0, 30], Gen.Int[0, 30]).Array[3, 60].Hold(points => AssertDelaunay(points), 300);

    [Fact]
    public void Points_on_a_lattice_and_on_tracks_triangulate_whole()
    {
        AssertDelaunay([.. from x in Enumerable.Range(0, 12) from y in Enumerable.Range(0, 9) select (x, y)]);
        AssertDelaunay([.. Enumerable.Range(0, 80).Select(i => (i % 40, i / 40 * 17))]);
        AssertDelaunay([.. Enumerable.Range(0, 60).Select(i => (i * i, i))]);
    }

    [Fact]
    public void Points_of_one_line_or_fewer_than_three_give_no_triangle()
    {
        Assert.Equal(0, new Triangulation([0.0, 1, 2, 3], [0.0, 1, 2, 3]).EdgeCount);
        Assert.Equal(0, new Triangulation([5.0, 5], [1.0, 2]).EdgeCount);
        Assert.Equal(0, new Triangulation([], []).EdgeCount);
        Assert.Equal(0, new Triangulation([7.0, 7, 7], [1.0, 1, 1]).EdgeCount);
    }

    [Fact]
    public void Locating_finds_the_triangle_that_holds_a_point()
    {
        double[] x = [0, 50, 0, 60, 20, 33], y = [0, 0, 80, 70, 30, 12];
        Triangulation mesh = new(x, y);
        (int px, int py) = mesh.Snap(22, 20);
        int t = mesh.Locate(px, py, 0);
        Assert.False(mesh.IsGhost(t));
        for (int k = 0; k < 3; k++)
        {
            int a = mesh.Origin[(3 * t) + k], b = mesh.Origin[Triangulation.Next((3 * t) + k)];
            double turn = ((mesh.VertexXM(b) - mesh.VertexXM(a)) * (20 - mesh.VertexYM(a))) - ((mesh.VertexYM(b) - mesh.VertexYM(a)) * (22 - mesh.VertexXM(a)));
            Assert.True(turn >= -1e-6);
        }

        (px, py) = mesh.Snap(-300, 900);
        Assert.True(mesh.IsGhost(mesh.Locate(px, py, 0)));
    }

    private static void AssertDelaunay((int X, int Y)[] points)
    {
        Triangulation mesh = new([.. points.Select(p => p.X * 1.0)], [.. points.Select(p => p.Y * 1.0)]);
        var distinct = points.Distinct().ToList();
        bool flat = distinct.Count < 3 || distinct.All(p =>
            ((long)(distinct[1].X - distinct[0].X) * (p.Y - distinct[0].Y)) == ((long)(distinct[1].Y - distinct[0].Y) * (p.X - distinct[0].X)));
        if (flat) { Assert.Equal(0, mesh.EdgeCount); return; }
        Assert.Equal(3 * ((2 * distinct.Count) - 2), mesh.EdgeCount);
        double area = 0;
        for (int e = 0; e < mesh.EdgeCount; e++)
        {
            Assert.Equal(e, mesh.Twin[mesh.Twin[e]]);
            Assert.Equal(mesh.Origin[e], mesh.Origin[Triangulation.Next(mesh.Twin[e])]);
        }

        for (int t = 0; t < mesh.EdgeCount / 3; t++)
        {
            if (mesh.IsGhost(t)) continue;
            (long X, long Y)[] c = [.. Enumerable.Range(0, 3).Select(k => points[mesh.Origin[(3 * t) + k]]).Select(p => ((long)p.X, (long)p.Y))];
            long twice = ((c[1].X - c[0].X) * (c[2].Y - c[0].Y)) - ((c[1].Y - c[0].Y) * (c[2].X - c[0].X));
            Assert.True(twice > 0, "every triangle turns counter-clockwise");
            area += 0.5 * twice;
            foreach ((int x, int y) in distinct) Assert.False(InCircle(c, x, y));
        }

        Assert.Equal(HullArea(distinct), area, 1e-6);
    }

    private static bool InCircle((long X, long Y)[] c, long x, long y)
    {
        decimal ax = c[0].X - x, ay = c[0].Y - y, bx = c[1].X - x, by = c[1].Y - y, cx = c[2].X - x, cy = c[2].Y - y;
        return (((ax * ax) + (ay * ay)) * ((bx * cy) - (cx * by))) + (((bx * bx) + (by * by)) * ((cx * ay) - (ax * cy)))
            + (((cx * cx) + (cy * cy)) * ((ax * by) - (bx * ay))) > 0;
    }

    private static double HullArea(List<(int X, int Y)> points)
    {
        var sorted = points.OrderBy(p => p.X).ThenBy(p => p.Y).ToList();
        List<(int X, int Y)> hull = [];
        foreach (var pass in new[] { sorted, Enumerable.Reverse(sorted).ToList() })
        {
            int start = hull.Count;
            foreach (var p in pass)
            {
                while (hull.Count - start >= 2 && Turn(hull[^2], hull[^1], p) <= 0) hull.RemoveAt(hull.Count - 1);
                hull.Add(p);
            }

            hull.RemoveAt(hull.Count - 1);
        }

        double sum = 0;
        for (int i = 0; i < hull.Count; i++)
        {
            var (a, b) = (hull[i], hull[(i + 1) % hull.Count]);
            sum += ((double)a.X * b.Y) - ((double)b.X * a.Y);
        }

        return 0.5 * sum;
    }

    private static long Turn((int X, int Y) a, (int X, int Y) b, (int X, int Y) c) =>
        ((long)(b.X - a.X) * (c.Y - a.Y)) - ((long)(b.Y - a.Y) * (c.X - a.X));
}
