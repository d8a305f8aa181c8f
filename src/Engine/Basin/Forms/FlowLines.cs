using SecondShore.Engine.Basin.Terrain;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Forms;

/// <summary>Follows flow upstream as lines of cells: a stem from an outlet and the branches that join it.</summary>
internal static class FlowLines
{
    /// <summary>A line of cells from its downstream end up; <paramref name="Joins"/> is the stem's cell it flows into, -1 for a stem.</summary>
    public sealed record Line(List<int> Cells, int Joins);

    /// <summary>The stem from an outlet and every branch that carries enough flow, branches of branches included.</summary>
    /// <param name="flow">Flow.</param>
    /// <param name="outlet">Where to start.</param>
    /// <param name="branchCells">Flow from which a side flow is a branch, cells.</param>
    /// <param name="endCells">Flow below which a line ends, cells.</param>
    public static List<Line> From(FlowD8 flow, int outlet, double branchCells, double endCells)
    {
        List<Line> lines = [];
        Queue<(int Start, int Joins)> open = new([(outlet, -1)]);
        while (open.TryDequeue(out (int Start, int Joins) next))
        {
            List<int> cells = [next.Start];
            int at = next.Start;
            while (true)
            {
                int best = -1;
                foreach (int j in Upstream(flow, at))
                    if (best < 0 || flow.CellsAbove[j] > flow.CellsAbove[best]) best = j;
                foreach (int j in Upstream(flow, at))
                    if (j != best && flow.CellsAbove[j] >= branchCells) open.Enqueue((j, at));
                if (best < 0 || flow.CellsAbove[best] < endCells) break;
                cells.Add(best);
                at = best;
            }

            lines.Add(new Line(cells, next.Joins));
        }

        return lines;
    }

    /// <summary>The line's cell centres, smoothed by a running bell of a half-width in points; ends stay.</summary>
    public static PlanePoint[] Smooth(GridFrame frame, IReadOnlyList<int> cells, int half)
    {
        double[] x = new double[cells.Count], y = new double[cells.Count];
        for (int k = 0; k < x.Length; k++)
        {
            PlanePoint p = frame.Centre(cells[k]);
            (x[k], y[k]) = (p.XM, p.YM);
        }

        for (int pass = 0; pass < 3; pass++)
        {
            x = Running(x, half);
            y = Running(y, half);
        }

        PlanePoint[] points = new PlanePoint[x.Length];
        for (int k = 0; k < x.Length; k++) points[k] = new PlanePoint(x[k], y[k]);
        return points;
    }

    /// <summary>Running mean whose window shrinks towards the ends.</summary>
    public static double[] Running(double[] values, int half)
    {
        double[] sums = new double[values.Length + 1], means = new double[values.Length];
        for (int k = 0; k < values.Length; k++) sums[k + 1] = sums[k] + values[k];
        for (int k = 0; k < values.Length; k++)
        {
            int h = Math.Min(half, Math.Min(k, values.Length - 1 - k));
            means[k] = (sums[k + h + 1] - sums[k - h]) / ((2 * h) + 1);
        }

        return means;
    }

    /// <summary>Unit direction of a line at a point over a lag either side.</summary>
    public static (double X, double Y) Direction(IReadOnlyList<PlanePoint> line, int k, int lag)
    {
        PlanePoint a = line[Math.Max(0, k - lag)], b = line[Math.Min(line.Count - 1, k + lag)];
        double d = a.DistanceToM(b);
        return d < 1e-9 ? (1, 0) : ((b.XM - a.XM) / d, (b.YM - a.YM) / d);
    }

    private static IEnumerable<int> Upstream(FlowD8 flow, int i)
    {
        int cx = i % flow.Frame.Nx, cy = i / flow.Frame.Nx;
        for (int k = 0; k < 8; k++)
        {
            int x = cx + Compass8.StepX[k], y = cy + Compass8.StepY[k];
            if (!flow.Frame.Contains(x, y)) continue;
            int j = flow.Frame.Index(x, y);
            if (flow.Downstream[j] == i) yield return j;
        }
    }
}
