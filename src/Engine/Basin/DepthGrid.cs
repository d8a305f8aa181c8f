using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin;

/// <summary>The lake's bottom on a square grid in the lake's plane, at one water level. Treated as immutable.</summary>
public sealed class DepthGrid
{
    /// <summary>Makes a depth grid.</summary>
    /// <param name="projection">The lake's plane.</param>
    /// <param name="frame">The grid's frame.</param>
    /// <param name="depthM">[Ny*Nx], row-major, row 0 southmost: depth of water, m, above 0; NaN on land and outside. Kept, not copied.</param>
    /// <param name="depthSdM">[Ny*Nx]: standard error of the depth, m; null takes 0.3 m + 3 % of depth. Kept, not copied.</param>
    /// <exception cref="ArgumentException">An array's length is not the number of cells.</exception>
    public DepthGrid(LocalProjection projection, GridFrame frame, float[] depthM, float[]? depthSdM = null)
    {
        Projection = Require.NotNull(projection);
        Frame = Require.NotNull(frame);
        DepthM = Require.NotNull(depthM);
        Require.SameLength(depthM.Length, frame.Count, nameof(depthM));
        if (depthSdM is not null) Require.SameLength(depthSdM.Length, frame.Count, nameof(depthSdM));
        DepthSdM = depthSdM ?? DefaultSdM(depthM);
    }

    /// <summary>The lake's plane.</summary>
    public LocalProjection Projection { get; }

    /// <summary>The grid's frame.</summary>
    public GridFrame Frame { get; }

    /// <summary>[Ny*Nx] depth of water, m; NaN on land and outside the lake.</summary>
    public float[] DepthM { get; }

    /// <summary>[Ny*Nx] standard error of the depth, m.</summary>
    public float[] DepthSdM { get; }

    /// <summary>Whether the water ends in a shore where its cells end; false where only the soundings end there.</summary>
    public bool EdgeIsShore { get; init; } = true;

    /// <summary>Whether a cell is water.</summary>
    public bool IsWater(int ix, int iy) => Frame.Contains(ix, iy) && DepthM[Frame.Index(ix, iy)] > 0;

    /// <summary>Depth at a point, m, bilinear between the water cells around it; NaN where the point's own cell is land.</summary>
    public double DepthAtM(PlanePoint point)
    {
        if (!Frame.TryCellAt(point, out int ix, out int iy) || !IsWater(ix, iy)) return double.NaN;
        double column = Frame.ColumnAt(point.XM), row = Frame.RowAt(point.YM);
        int x0 = (int)Math.Floor(column), y0 = (int)Math.Floor(row);
        double tx = column - x0, ty = row - y0, sum = 0, weights = 0;
        for (int dy = 0; dy <= 1; dy++)
        {
            for (int dx = 0; dx <= 1; dx++)
            {
                if (!IsWater(x0 + dx, y0 + dy)) continue;
                double weight = (dx == 0 ? 1 - tx : tx) * (dy == 0 ? 1 - ty : ty);
                sum += weight * DepthM[Frame.Index(x0 + dx, y0 + dy)];
                weights += weight;
            }
        }

        return weights > 0 ? sum / weights : DepthM[Frame.Index(ix, iy)];
    }

    /// <summary>The lake when the water stands lower or higher; cells that fall dry become land.</summary>
    /// <param name="dropM">How far the surface lies below this grid's level, m; negative for higher water (no land is flooded).</param>
    public DepthGrid Lowered(double dropM)
    {
        Require.Finite(dropM);
        if (dropM == 0) return this;
        float[] depthM = new float[DepthM.Length];
        for (int i = 0; i < depthM.Length; i++)
        {
            double depth = DepthM[i] - dropM;
            depthM[i] = depth > 0 ? (float)depth : float.NaN;
        }

        return new DepthGrid(Projection, Frame, depthM, DepthSdM) { EdgeIsShore = EdgeIsShore };
    }

    private static float[] DefaultSdM(float[] depthM)
    {
        float[] sdM = new float[depthM.Length];
        for (int i = 0; i < sdM.Length; i++) sdM[i] = float.IsNaN(depthM[i]) ? 0f : 0.3f + (0.03f * depthM[i]);
        return sdM;
    }
}
