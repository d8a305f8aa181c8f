using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Motion;

/// <summary>The water cells of the computing grid, numbered, with what is needed to read fields at any place. Immutable.</summary>
public sealed class MotionGrid
{
    private readonly int[] _waterOf;

    /// <summary>Numbers the water cells: those at least half water.</summary>
    public MotionGrid(CoarseDepths depths)
    {
        Depths = Require.NotNull(depths);
        _waterOf = new int[depths.Frame.Count];
        List<int> cells = [];
        for (int i = 0; i < _waterOf.Length; i++)
        {
            bool water = depths.WaterShare[i] >= 0.5f;
            _waterOf[i] = water ? cells.Count : -1;
            if (water) cells.Add(i);
        }

        Cells = [.. cells];
    }

    /// <summary>Depths on the computing grid.</summary>
    public CoarseDepths Depths { get; }

    /// <summary>The computing grid's frame.</summary>
    public GridFrame Frame => Depths.Frame;

    /// <summary>Index in the frame of each water cell.</summary>
    public int[] Cells { get; }

    /// <summary>Number of the water cell at a column and row; -1 on land and outside.</summary>
    public int WaterAt(int ix, int iy) => Frame.Contains(ix, iy) ? _waterOf[Frame.Index(ix, iy)] : -1;

    /// <summary>The water cells around a place and their bilinear weights, sum 1.</summary>
    /// <param name="place">The place; off the water the nearest water within 40 cells is taken.</param>
    /// <param name="cells">[4] numbers of water cells.</param>
    /// <param name="weights">[4] weights.</param>
    /// <returns>Cells found, 0 to 4.</returns>
    public int Around(PlanePoint place, Span<int> cells, Span<double> weights)
    {
        double column = Math.Clamp(Frame.ColumnAt(place.XM), -1e6, 1e6), row = Math.Clamp(Frame.RowAt(place.YM), -1e6, 1e6);
        if (double.IsNaN(column) || double.IsNaN(row)) return 0;
        int x0 = (int)Math.Floor(column), y0 = (int)Math.Floor(row), count = 0;
        double sum = 0;
        for (int k = 0; k < 4; k++)
        {
            int dx = k & 1, dy = k >> 1, water = WaterAt(x0 + dx, y0 + dy);
            double weight = (dx == 0 ? 1 - (column - x0) : column - x0) * (dy == 0 ? 1 - (row - y0) : row - y0);
            if (water < 0 || !(weight > 1e-9)) continue;
            cells[count] = water;
            weights[count++] = weight;
            sum += weight;
        }

        for (int k = 0; k < count; k++) weights[k] /= sum;
        if (count > 0) return count;
        cells[0] = Nearest((int)Math.Round(column), (int)Math.Round(row), column, row);
        weights[0] = 1.0;
        return cells[0] < 0 ? 0 : 1;
    }

    /// <summary>For each water cell the nearest cell (in steps over water) at which a field holds a value.</summary>
    /// <param name="has">[Frame.Count] whether a cell holds a value.</param>
    /// <returns>Index in the frame for each water cell; -1 where no water leads to one.</returns>
    public int[] NearestWith(ReadOnlySpan<bool> has)
    {
        int[] from = new int[Cells.Length];
        Queue<int> queue = new();
        for (int w = 0; w < Cells.Length; w++)
        {
            from[w] = has[Cells[w]] ? Cells[w] : -1;
            if (from[w] >= 0) queue.Enqueue(w);
        }

        while (queue.TryDequeue(out int w))
        {
            int ix = Cells[w] % Frame.Nx, iy = Cells[w] / Frame.Nx;
            for (int k = 0; k < 8; k++)
            {
                int next = WaterAt(ix + StepX[k], iy + StepY[k]);
                if (next < 0 || from[next] >= 0) continue;
                from[next] = from[w];
                queue.Enqueue(next);
            }
        }

        return from;
    }

    private static readonly int[] StepX = [1, -1, 0, 0, 1, 1, -1, -1];
    private static readonly int[] StepY = [0, 0, 1, -1, 1, -1, 1, -1];

    private int Nearest(int ix, int iy, double column, double row)
    {
        int best = -1;
        double bestSquared = double.MaxValue;
        for (int ring = 1; ring <= 40; ring++)
        {
            if (bestSquared < (ring - 1.0) * (ring - 1.0)) break;
            for (int dy = -ring; dy <= ring; dy++)
            {
                for (int dx = -ring; dx <= ring; dx += Math.Abs(dy) == ring ? 1 : 2 * ring)
                {
                    int water = WaterAt(ix + dx, iy + dy);
                    double squared = ((ix + dx - column) * (ix + dx - column)) + ((iy + dy - row) * (iy + dy - row));
                    if (water < 0 || squared >= bestSquared) continue;
                    best = water;
                    bestSquared = squared;
                }
            }
        }

        return best;
    }
}
