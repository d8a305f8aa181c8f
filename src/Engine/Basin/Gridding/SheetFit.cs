using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Gridding;

/// <summary>Settles a drawn sheet on its soundings, as it is read: straight between the centres of cells.</summary>
/// <remarks>
/// A surface drawn at the centres of cells misses, between them, the soundings it was drawn from, the more the coarser the
/// cells. What each sounding is off by is shared among the four cells about it, a few times over: successive corrections
/// (Cressman1959). A cell that few soundings speak for gives way less, so that one ping's noise does not stand as a bump.
/// Work space is kept between sheets of one frame. Not for two threads at once.
/// </remarks>
internal sealed class SheetFit(GridFrame frame)
{
    private const int Passes = 4;

    /// <summary>Weight of a cell's own drawn depth against that of soundings at its centre.</summary>
    private const float OwnWeight = 0.3f;

    private readonly float[] _off = new float[frame.Count];
    private readonly float[] _weight = new float[frame.Count];

    /// <summary>Depth at a place, straight between the cells about it; NaN where its own cell has none.</summary>
    public static double At(float[] depthM, bool[]? mask, GridFrame frame, double xM, double yM)
    {
        if (!frame.TryCellAt(new(xM, yM), out int ix, out int iy) || !IsWater(depthM, mask, frame.Index(ix, iy))) return double.NaN;
        double column = frame.ColumnAt(xM), row = frame.RowAt(yM), sum = 0, weights = 0;
        int x0 = (int)Math.Floor(column), y0 = (int)Math.Floor(row);
        for (int k = 0; k < 4; k++)
        {
            double weight = Weight(k, column - x0, row - y0);
            if (!TryCorner(depthM, mask, frame, x0, y0, k, out int i)) continue;
            sum += weight * depthM[i];
            weights += weight;
        }

        return weights > 0 ? sum / weights : depthM[frame.Index(ix, iy)];
    }

    /// <summary>Index of a corner cell about a place; false outside the frame.</summary>
    public static bool TryCorner(GridFrame frame, int x0, int y0, int k, out int i)
    {
        int x = x0 + (k & 1), y = y0 + (k >> 1);
        i = (y * frame.Nx) + x;
        return frame.Contains(x, y);
    }

    /// <summary>Settles a sheet in place.</summary>
    /// <param name="depthM">[Ny*Nx] depths, NaN where none was drawn.</param>
    /// <param name="mask">[Ny*Nx] water; null where depths alone say.</param>
    /// <param name="cloud">Points; only soundings in the water count.</param>
    public void Settle(float[] depthM, bool[]? mask, PointCloud cloud)
    {
        for (int pass = 0; pass < Passes; pass++)
        {
            Gather(depthM, mask, cloud);
            Give(depthM, cloud);
        }
    }

    private void Gather(float[] depthM, bool[]? mask, PointCloud cloud)
    {
        ReadOnlySpan<double> xM = cloud.XM, yM = cloud.YM;
        ReadOnlySpan<float> soundedM = cloud.DepthM;
        ReadOnlySpan<PointKind> kinds = cloud.Kind;
        for (int p = 0; p < xM.Length; p++)
        {
            if (kinds[p] != PointKind.Sounding || !(soundedM[p] > 0)) continue;
            double at = At(depthM, mask, frame, xM[p], yM[p]);
            if (double.IsNaN(at)) continue;
            float off = (float)(soundedM[p] - at);
            double column = frame.ColumnAt(xM[p]), row = frame.RowAt(yM[p]);
            int x0 = (int)Math.Floor(column), y0 = (int)Math.Floor(row);
            for (int k = 0; k < 4; k++)
            {
                if (!TryCorner(depthM, mask, frame, x0, y0, k, out int i)) continue;
                float weight = (float)Weight(k, column - x0, row - y0);
                _off[i] += weight * off;
                _weight[i] += weight;
            }
        }
    }

    // Water stays water: a correction takes at most half of a depth away.
    private void Give(float[] depthM, PointCloud cloud)
    {
        ReadOnlySpan<double> xM = cloud.XM, yM = cloud.YM;
        for (int p = 0; p < xM.Length; p++)
        {
            int x0 = (int)Math.Floor(frame.ColumnAt(xM[p])), y0 = (int)Math.Floor(frame.RowAt(yM[p]));
            for (int k = 0; k < 4; k++)
            {
                if (!TryCorner(frame, x0, y0, k, out int i) || _weight[i] <= 0) continue;
                depthM[i] = Math.Max(0.5f * depthM[i], depthM[i] + (_off[i] / (_weight[i] + OwnWeight)));
                (_off[i], _weight[i]) = (0, 0);
            }
        }
    }

    private static double Weight(int k, double tx, double ty) => ((k & 1) == 0 ? 1 - tx : tx) * ((k >> 1) == 0 ? 1 - ty : ty);

    private static bool TryCorner(float[] depthM, bool[]? mask, GridFrame frame, int x0, int y0, int k, out int i) =>
        TryCorner(frame, x0, y0, k, out i) && IsWater(depthM, mask, i);

    private static bool IsWater(float[] depthM, bool[]? mask, int i) => depthM[i] > 0 && (mask is null || mask[i]);
}
