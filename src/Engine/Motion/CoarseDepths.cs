using SecondShore.Engine.Basin;
using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Motion;

/// <summary>A depth grid gathered into blocks of whole cells: the grid that motion is computed on. Immutable.</summary>
public sealed class CoarseDepths
{
    private CoarseDepths(GridFrame frame, float[] depthM, float[] waterShare)
    {
        Frame = frame;
        DepthM = depthM;
        WaterShare = waterShare;
    }

    /// <summary>The coarse frame; its south-west corner is that of the fine one.</summary>
    public GridFrame Frame { get; }

    /// <summary>[Ny*Nx] mean depth of the block's water, m; 0 without any.</summary>
    public float[] DepthM { get; }

    /// <summary>[Ny*Nx] share of the block that is water, 0 to 1.</summary>
    public float[] WaterShare { get; }

    /// <summary>Gathers blocks of <paramref name="factor"/> by <paramref name="factor"/> cells; incomplete blocks at the far edges count as land beyond.</summary>
    /// <param name="grid">The fine grid.</param>
    /// <param name="factor">Cells a side, 1 or more.</param>
    public static CoarseDepths Of(DepthGrid grid, int factor)
    {
        GridFrame fine = Require.NotNull(grid).Frame;
        Require.InRange(factor, 1, int.MaxValue);
        int nx = (fine.Nx + factor - 1) / factor, ny = (fine.Ny + factor - 1) / factor;
        GridFrame frame = new(fine.WestM, fine.SouthM, fine.CellM * factor, nx, ny);
        float[] sumM = new float[frame.Count], share = new float[frame.Count];
        for (int iy = 0; iy < fine.Ny; iy++)
        {
            int row = iy * fine.Nx, coarseRow = iy / factor * nx;
            for (int ix = 0; ix < fine.Nx; ix++)
            {
                float depthM = grid.DepthM[row + ix];
                if (!(depthM > 0)) continue;
                sumM[coarseRow + (ix / factor)] += depthM;
                share[coarseRow + (ix / factor)]++;
            }
        }

        for (int i = 0; i < sumM.Length; i++)
        {
            if (share[i] == 0) continue;
            sumM[i] /= share[i];
            share[i] /= factor * factor;
        }

        return new CoarseDepths(frame, sumM, share);
    }

    /// <summary>The least factor that makes cells of about the wanted side and keeps the lake within a number of water cells.</summary>
    /// <param name="grid">The fine grid.</param>
    /// <param name="cellM">Wanted side, m; finer only where the grid itself is coarser.</param>
    /// <param name="maxWaterCells">Most water cells.</param>
    public static int FactorFor(DepthGrid grid, double cellM, int maxWaterCells)
    {
        Require.NotNull(grid);
        Require.Positive(cellM);
        Require.InRange(maxWaterCells, 1, int.MaxValue);
        long water = 0;
        foreach (float depthM in grid.DepthM)
            if (depthM > 0) water++;
        double byCount = Math.Sqrt((double)water / maxWaterCells);
        double byLength = cellM / grid.Frame.CellM;
        return Math.Max(1, Math.Max((int)Math.Ceiling(byCount - 1e-9), (int)Math.Round(byLength)));
    }
}
