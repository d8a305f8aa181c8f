using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;
using SecondShore.Engine.Motion;

namespace SecondShore.Engine.Tests.Motion;

/// <summary>Basins of simple shape for motion tests.</summary>
internal static class TestBasins
{
    public static readonly LocalProjection Plane = new(new GeoPoint(45, -90));

    /// <summary>A basin whose depth is a function of the cell's centre; 0 or less is land.</summary>
    public static DepthGrid Of(int nx, int ny, double cellM, Func<double, double, double> depthM)
    {
        GridFrame frame = new(0, 0, cellM, nx, ny);
        float[] depths = new float[frame.Count];
        for (int i = 0; i < depths.Length; i++)
        {
            PlanePoint at = frame.Centre(i);
            double depth = depthM(at.XM, at.YM);
            depths[i] = depth > 0 ? (float)depth : float.NaN;
        }

        return new DepthGrid(Plane, frame, depths);
    }

    /// <summary>A box full of water.</summary>
    public static DepthGrid Box(int nx, int ny, double cellM, double depthM) => Of(nx, ny, cellM, (_, _) => depthM);

    /// <summary>A round basin of even depth in the middle of its grid.</summary>
    public static DepthGrid Round(int cellsAcross, double cellM, double depthM)
    {
        double middle = 0.5 * cellsAcross * cellM;
        return Of(cellsAcross, cellsAcross, cellM, (x, y) => Math.Sqrt(((x - middle) * (x - middle)) + ((y - middle) * (y - middle))) < middle ? depthM : 0);
    }

    /// <summary>A winding drowned valley with islands, different for every seed; deepest along its channel.</summary>
    public static DepthGrid Winding(int seed, int nx = 60, int ny = 40, double cellM = 50, double deepestM = 25)
    {
        double phase = seed * 1.7, bend = 0.15 + (0.05 * (seed % 4)), width = 0.22 + (0.03 * (seed % 3));
        return Of(nx, ny, cellM, (x, y) =>
        {
            double s = x / (nx * cellM), t = (y / (ny * cellM)) - 0.5 - (bend * Math.Sin((7 * s) + phase));
            double depth = deepestM * (1 - (t * t / (width * width))) * (0.6 + (0.4 * s));
            double island = Math.Sin((23 * s) + phase) * Math.Sin((17 * y / (ny * cellM)) + (2 * phase));
            if (island > 0.93) return 0;
            return s is < 0.02 or > 0.98 ? 0 : depth + (1.5 * Math.Sin((40 * s) + phase) * Math.Cos(31 * y / (ny * cellM)));
        });
    }

    public static CoarseDepths Depths(this DepthGrid grid) => CoarseDepths.Of(grid, 1);
}
