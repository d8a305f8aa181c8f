using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Terrain;

/// <summary>Flow over the drained bed in the true direction of fall, split between two neighbours. Immutable. Source: Tarboton1997.</summary>
public sealed class FlowDInfinity
{
    private FlowDInfinity(GridFrame frame, float[] fallDeg, float[] slope, float[] cells) =>
        (Frame, FallToDeg, Slope, CellsAbove) = (frame, fallDeg, slope, cells);

    /// <summary>The grid's frame.</summary>
    public GridFrame Frame { get; }

    /// <summary>[Ny*Nx] bearing of fall, degrees clockwise from grid north; NaN at outlets and on land.</summary>
    public float[] FallToDeg { get; }

    /// <summary>[Ny*Nx] steepest fall, metres per metre; 0 at outlets, NaN on land.</summary>
    public float[] Slope { get; }

    /// <summary>[Ny*Nx] cells that drain through a cell, itself counted, in parts; 0 on land.</summary>
    public float[] CellsAbove { get; }

    /// <summary>Steepest fall on one triangular facet.</summary>
    /// <param name="e0M">Elevation of the cell, m.</param>
    /// <param name="e1M">Elevation of the neighbour along a side, m.</param>
    /// <param name="e2M">Elevation of the neighbour at the corner beyond it, m.</param>
    /// <param name="cellM">Side of a cell, m.</param>
    /// <returns>Slope, and the angle from the side neighbour towards the corner, 0 to 45 degrees in radians.</returns>
    public static (double Slope, double AngleRad) Facet(double e0M, double e1M, double e2M, double cellM)
    {
        double s1 = (e0M - e1M) / cellM, s2 = (e1M - e2M) / cellM;
        double angle = Math.Atan2(s2, s1);
        if (angle < 0) return (s1, 0);
        return angle > Math.PI / 4
            ? ((e0M - e2M) / (cellM * Math.Sqrt(2)), Math.PI / 4)
            : (Math.Sqrt((s1 * s1) + (s2 * s2)), angle);
    }

    /// <summary>Routes the flow.</summary>
    /// <param name="bed">Drained bed.</param>
    public static FlowDInfinity Of(DrainedBed bed)
    {
        Require.NotNull(bed);
        GridFrame frame = bed.Frame;
        float[] fallDeg = new float[frame.Count], slope = new float[frame.Count], cells = new float[frame.Count];
        Array.Fill(fallDeg, float.NaN);
        Array.Fill(slope, float.NaN);
        for (int k = bed.Order.Length - 1; k >= 0; k--)
        {
            int i = bed.Order[k];
            cells[i] += 1;
            (double steepest, int side, int corner, double angle, double fromEastDeg) = Fall(bed, i);
            slope[i] = (float)steepest;
            if (side < 0 && corner < 0) continue;
            fallDeg[i] = (float)((450 - fromEastDeg) % 360);
            double toCorner = side < 0 ? 1 : corner < 0 ? 0 : angle / (Math.PI / 4);
            if (side >= 0) cells[side] += (float)((1 - toCorner) * cells[i]);
            if (corner >= 0) cells[corner] += (float)(toCorner * cells[i]);
        }

        return new FlowDInfinity(frame, fallDeg, slope, cells);
    }

    private static (double Slope, int Side, int Corner, double AngleRad, double FromEastDeg) Fall(DrainedBed bed, int i)
    {
        GridFrame frame = bed.Frame;
        int cx = i % frame.Nx, cy = i / frame.Nx;
        double e0 = bed.FilledM[i];
        (double Slope, int Side, int Corner, double AngleRad, double FromEastDeg) best = (0, -1, -1, 0, 0);
        for (int facet = 0; facet < 8; facet++)
        {
            // Sides are even directions, corners odd; facets alternate in turning sense.
            int sideK = ((facet + 1) / 2 * 2) % 8, cornerK = (facet / 2 * 2) + 1;
            int side = Lower(bed, cx, cy, sideK, e0), corner = Lower(bed, cx, cy, cornerK, e0);
            if (side < 0 && corner < 0) continue;
            (double slope, double angle) = side >= 0 && corner >= 0
                ? Facet(e0, bed.FilledM[side], bed.FilledM[corner], frame.CellM)
                : side >= 0 ? ((e0 - bed.FilledM[side]) / frame.CellM, 0)
                : ((e0 - bed.FilledM[corner]) / (frame.CellM * Math.Sqrt(2)), Math.PI / 4);
            if (slope <= best.Slope) continue;
            double turn = facet % 2 == 0 ? angle : -angle;
            best = (slope, angle < Math.PI / 4 ? side : -1, angle > 0 ? corner : -1, angle, ((sideK * 45) + double.RadiansToDegrees(turn) + 360) % 360);
        }

        return best;
    }

    // A neighbour that lies lower, else -1: flow never runs up, so falling order is enough to route it.
    private static int Lower(DrainedBed bed, int cx, int cy, int k, double e0)
    {
        int x = cx + Compass8.StepX[k], y = cy + Compass8.StepY[k];
        if (!bed.Frame.Contains(x, y)) return -1;
        int j = bed.Frame.Index(x, y);
        return bed.FilledM[j] < e0 ? j : -1;
    }
}
