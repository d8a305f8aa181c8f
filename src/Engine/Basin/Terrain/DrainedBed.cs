using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Terrain;

/// <summary>The bed as if the lake were drained through its outlet: hollows filled until every cell runs down to it. Immutable.</summary>
/// <remarks>Source: WangLiu2006 and BarnesEtAl2014 (priority flood with a small gradient).</remarks>
public sealed class DrainedBed
{
    private DrainedBed(GridFrame frame, float[] filledM, int[] order, double filledShare) =>
        (Frame, FilledM, Order, FilledShare) = (frame, filledM, order, filledShare);

    /// <summary>The grid's frame.</summary>
    public GridFrame Frame { get; }

    /// <summary>[Ny*Nx] elevation of the filled bed, m (minus depth, so below 0); NaN on land and on water cut off from every outlet.</summary>
    public float[] FilledM { get; }

    /// <summary>Cells in rising order of <see cref="FilledM"/>: each after a cell it can drain to.</summary>
    public int[] Order { get; }

    /// <summary>Volume filled as a share of the lake's volume: under a tenth means that the bed once drained, so it can hold a channel.</summary>
    public double FilledShare { get; }

    /// <summary>Drains the bed through its deepest cell on the shore, as at a dam.</summary>
    /// <param name="grid">Depths.</param>
    /// <param name="gradientM">Rise from cell to cell across filled ground, m.</param>
    public static DrainedBed Of(DepthGrid grid, double gradientM = 1e-3)
    {
        Require.NotNull(grid);
        return Of(grid, DeepestShoreCells(grid), gradientM);
    }

    /// <summary>Drains the bed through given cells.</summary>
    /// <param name="grid">Depths.</param>
    /// <param name="outlets">Indices of water cells.</param>
    /// <param name="gradientM">Rise from cell to cell across filled ground, m.</param>
    public static DrainedBed Of(DepthGrid grid, ReadOnlySpan<int> outlets, double gradientM = 1e-3)
    {
        Require.NotNull(grid);
        Require.NotNegative(gradientM);
        GridFrame frame = grid.Frame;
        float[] filledM = new float[frame.Count];
        Array.Fill(filledM, float.NaN);
        List<int> order = new(frame.Count / 2);
        PriorityQueue<int, float> open = new();
        foreach (int outlet in outlets)
        {
            if (!(grid.DepthM[outlet] > 0) || !float.IsNaN(filledM[outlet])) continue;
            filledM[outlet] = -grid.DepthM[outlet];
            open.Enqueue(outlet, filledM[outlet]);
        }

        double filledM3 = 0, waterM3 = 0;
        while (open.TryDequeue(out int i, out float level))
        {
            order.Add(i);
            filledM3 += level + grid.DepthM[i];
            waterM3 += grid.DepthM[i];
            int cx = i % frame.Nx, cy = i / frame.Nx;
            for (int k = 0; k < 8; k++)
            {
                int x = cx + Compass8.StepX[k], y = cy + Compass8.StepY[k];
                if (!frame.Contains(x, y)) continue;
                int j = frame.Index(x, y);
                if (!(grid.DepthM[j] > 0) || !float.IsNaN(filledM[j])) continue;
                filledM[j] = Math.Max(-grid.DepthM[j], (float)(level + gradientM));
                open.Enqueue(j, filledM[j]);
            }
        }

        return new DrainedBed(frame, filledM, [.. order], waterM3 > 0 ? filledM3 / waterM3 : 0);
    }

    /// <summary>The deepest cell beside land or the grid's edge, for each water that does not touch another.</summary>
    public static int[] DeepestShoreCells(DepthGrid grid)
    {
        Require.NotNull(grid);
        GridFrame frame = grid.Frame;
        Gridding.WaterPieces pieces = Gridding.WaterPieces.Of(grid.DepthM, frame);
        int[] deepest = new int[pieces.Count];
        Array.Fill(deepest, -1);
        for (int i = 0; i < frame.Count; i++)
        {
            int piece = pieces.Label[i];
            if (piece < 0 || !OnShore(grid, i)) continue;
            if (deepest[piece] < 0 || grid.DepthM[i] > grid.DepthM[deepest[piece]]) deepest[piece] = i;
        }

        return deepest;
    }

    private static bool OnShore(DepthGrid grid, int i)
    {
        int x = i % grid.Frame.Nx, y = i / grid.Frame.Nx;
        for (int k = 0; k < 8; k++)
            if (!grid.IsWater(x + Compass8.StepX[k], y + Compass8.StepY[k])) return true;
        return false;
    }
}
