using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Terrain;

/// <summary>Flow over the drained bed, each cell to its steepest neighbour. Immutable. Source: OCallaghanMark1984.</summary>
public sealed class FlowD8
{
    private FlowD8(GridFrame frame, int[] downstream, float[] cells) =>
        (Frame, Downstream, CellsAbove) = (frame, downstream, cells);

    /// <summary>The grid's frame.</summary>
    public GridFrame Frame { get; }

    /// <summary>[Ny*Nx] index of the cell that a cell drains to; -1 at outlets and on land.</summary>
    public int[] Downstream { get; }

    /// <summary>[Ny*Nx] number of cells that drain through a cell, itself counted; 0 on land.</summary>
    public float[] CellsAbove { get; }

    /// <summary>Routes the flow.</summary>
    /// <param name="bed">Drained bed.</param>
    public static FlowD8 Of(DrainedBed bed)
    {
        Require.NotNull(bed);
        GridFrame frame = bed.Frame;
        int[] downstream = new int[frame.Count];
        float[] cells = new float[frame.Count];
        Array.Fill(downstream, -1);
        foreach (int i in bed.Order) downstream[i] = Steepest(bed, i);
        for (int k = bed.Order.Length - 1; k >= 0; k--)
        {
            int i = bed.Order[k];
            cells[i] += 1;
            if (downstream[i] >= 0) cells[downstream[i]] += cells[i];
        }

        return new FlowD8(frame, downstream, cells);
    }

    private static int Steepest(DrainedBed bed, int i)
    {
        GridFrame frame = bed.Frame;
        int cx = i % frame.Nx, cy = i / frame.Nx, best = -1;
        double steepest = 0;
        for (int k = 0; k < 8; k++)
        {
            int x = cx + Compass8.StepX[k], y = cy + Compass8.StepY[k];
            if (!frame.Contains(x, y)) continue;
            int j = frame.Index(x, y);
            double fall = (bed.FilledM[i] - bed.FilledM[j]) / Compass8.Length[k];
            if (fall > steepest) (steepest, best) = (fall, j);
        }

        return best;
    }
}
