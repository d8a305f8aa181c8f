using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Tests.Day;

/// <summary>Five made lakes that are hard to cross: an island, a comb of spits, a river bend, a maze of bays, a strait one cell wide.</summary>
internal static class RouteLakes
{
    public static IReadOnlyList<(string Name, DepthGrid Grid)> Five { get; } =
    [
        ("island", Make(120, 100, 20, (x, y) => 20 - (Distance(x, y, 60, 50) * 0.42) - (Distance(x, y, 62, 48) < 16 ? 40 : 0))),
        ("comb", Make(160, 90, 15, (x, y) => (x % 16 == 8 && (x / 16 % 2 == 0 ? y > 12 : y < 77)) || x < 2 || y < 2 || x > 157 || y > 87 ? -1 : 8)),
        ("river", Make(300, 160, 25, (x, y) => 24 - (2.4 * Math.Abs(y - 80 - (55 * Math.Sin(x / 28.0)))))),
        ("bays", Make(200, 200, 12, Noise)),
        ("strait", Make(140, 80, 10, (x, y) => Distance(x, y, 35, 40) < 28 || Distance(x, y, 105, 40) < 28 || (y == 40 && x > 60 && x < 80) ? 6 : -1)),
    ];

    public static DepthGrid Make(int nx, int ny, double cellM, Func<int, int, double> depthM)
    {
        float[] depths = new float[nx * ny];
        for (int iy = 0; iy < ny; iy++)
        {
            for (int ix = 0; ix < nx; ix++)
            {
                double depth = depthM(ix, iy);
                depths[(iy * nx) + ix] = depth > 0 ? (float)depth : float.NaN;
            }
        }

        return new DepthGrid(new LocalProjection(new GeoPoint(44, -90)), new GridFrame(0, 0, cellM, nx, ny), depths);
    }

    /// <summary>A random point in water.</summary>
    public static PlanePoint RandomWater(DepthGrid grid, SeededRandom random)
    {
        while (true)
        {
            var point = new PlanePoint(random.NextDouble(grid.Frame.WestM, grid.Frame.EastM), random.NextDouble(grid.Frame.SouthM, grid.Frame.NorthM));
            if (grid.Frame.TryCellAt(point, out int ix, out int iy) && grid.IsWater(ix, iy)) return point;
        }
    }

    private static double Distance(double x, double y, double cx, double cy) => Math.Sqrt(((x - cx) * (x - cx)) + ((y - cy) * (y - cy)));

    private static double Noise(int x, int y)
    {
        double sum = 0;
        for (int k = 1; k <= 6; k++)
            sum += Math.Sin((x * 0.031 * k) + (1.7 * k * k)) * Math.Cos((y * 0.027 * k) + (0.9 * k * k * k)) / Math.Sqrt(k);
        double edge = Math.Min(Math.Min(x, 199 - x), Math.Min(y, 199 - y)) / 12.0;
        return (6 * sum) + 3 - (edge < 1 ? 12 : 0);
    }
}
