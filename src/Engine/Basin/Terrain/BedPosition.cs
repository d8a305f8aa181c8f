using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Terrain;

/// <summary>How a cell stands against the bed around it (topographic position index). Immutable.</summary>
public sealed class BedPosition
{
    private BedPosition(GridFrame frame, float[] indexM, float[] sdM) => (Frame, IndexM, SdM) = (frame, indexM, sdM);

    /// <summary>The grid's frame.</summary>
    public GridFrame Frame { get; }

    /// <summary>[Ny*Nx] elevation above the mean of the ring around, m: positive on humps and points, negative in troughs; NaN on land.</summary>
    public float[] IndexM { get; }

    /// <summary>[Ny*Nx] standard deviation of the bed in the ring, m, to make the index comparable between steep and level bed; NaN on land.</summary>
    public float[] SdM { get; }

    /// <summary>Computes the index over a ring of water cells. Source: Weiss2001.</summary>
    /// <param name="grid">Depths.</param>
    /// <param name="outerM">Outer radius of the ring, m.</param>
    /// <param name="innerM">Inner radius, m; 0 leaves out only the cell itself.</param>
    /// <param name="cancel">Stops the work.</param>
    public static BedPosition Of(DepthGrid grid, double outerM, double innerM = 0, CancellationToken cancel = default)
    {
        Require.NotNull(grid);
        Require.Positive(outerM);
        Require.InRange(innerM, 0, outerM);
        GridFrame frame = grid.Frame;
        RowSums sums = new(grid.DepthM, frame);
        int reach = (int)Math.Min(outerM / frame.CellM, Math.Max(frame.Nx, frame.Ny));
        int[] outer = HalfWidths(outerM / frame.CellM, reach), inner = HalfWidths(innerM / frame.CellM, reach);
        float[] indexM = new float[frame.Count], sdM = new float[frame.Count];
        for (int iy = 0; iy < frame.Ny; iy++)
        {
            cancel.ThrowIfCancellationRequested();
            for (int ix = 0; ix < frame.Nx; ix++)
            {
                int i = frame.Index(ix, iy);
                indexM[i] = sdM[i] = float.NaN;
                if (!(grid.DepthM[i] > 0)) continue;
                double sum = 0, square = 0, count = 0;
                for (int dy = -reach; dy <= reach; dy++)
                {
                    int y = iy + dy;
                    if ((uint)y >= (uint)frame.Ny) continue;
                    sums.Add(y, ix - outer[Math.Abs(dy)], ix + outer[Math.Abs(dy)], 1, ref sum, ref square, ref count);
                    if (inner[Math.Abs(dy)] >= 0) sums.Add(y, ix - inner[Math.Abs(dy)], ix + inner[Math.Abs(dy)], -1, ref sum, ref square, ref count);
                }

                double mean = count > 0 ? sum / count : grid.DepthM[i];
                indexM[i] = (float)(mean - grid.DepthM[i]);
                sdM[i] = count > 0 ? (float)Math.Sqrt(Math.Max(0, (square / count) - (mean * mean))) : 0f;
            }
        }

        return new BedPosition(frame, indexM, sdM);
    }

    // Half width of a disc by row offset, -1 outside; radius 0 is the cell itself.
    private static int[] HalfWidths(double radiusCells, int reach)
    {
        int[] half = new int[reach + 1];
        for (int dy = 0; dy <= reach; dy++)
        {
            double rest = (radiusCells * radiusCells * (1 + 1e-12)) - ((double)dy * dy);
            half[dy] = rest < 0 ? -1 : (int)Math.Sqrt(rest);
        }

        return half;
    }

    // Running sums along rows: a disc then costs one look-up a row.
    private sealed class RowSums
    {
        private readonly double[] _sum;
        private readonly double[] _square;
        private readonly int[] _count;
        private readonly int _width;

        public RowSums(float[] depthM, GridFrame frame)
        {
            _width = frame.Nx + 1;
            (_sum, _square, _count) = (new double[_width * frame.Ny], new double[_width * frame.Ny], new int[_width * frame.Ny]);
            for (int iy = 0; iy < frame.Ny; iy++)
            {
                for (int ix = 0; ix < frame.Nx; ix++)
                {
                    int k = (iy * _width) + ix;
                    double depth = depthM[(iy * frame.Nx) + ix];
                    bool water = depth > 0;
                    _sum[k + 1] = _sum[k] + (water ? depth : 0);
                    _square[k + 1] = _square[k] + (water ? depth * depth : 0);
                    _count[k + 1] = _count[k] + (water ? 1 : 0);
                }
            }
        }

        // Adds (sign 1) or takes away (-1) the cells first to last of a row: sum and sum of squares of elevation, and count.
        public void Add(int row, int first, int last, int sign, ref double sum, ref double square, ref double count)
        {
            int from = (row * _width) + Math.Max(0, first), to = (row * _width) + Math.Min(_width - 1, last + 1);
            sum += sign * (_sum[to] - _sum[from]);
            square += sign * (_square[to] - _square[from]);
            count += sign * (_count[to] - _count[from]);
        }
    }
}
