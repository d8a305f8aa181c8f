using SecondShore.Engine.Core;

namespace SecondShore.Engine.Motion.Layers;

/// <summary>
/// Where the interface model computes: the cells deep enough for both layers, laid out for vector loops. Immutable.
/// </summary>
/// <remarks>
/// Arrays are [(ny + 2) * stride], row-major with a border row below and above and a border column before each row; past
/// each row stand at least <see cref="Pad"/> border columns, so that a vector loop may overrun a run's end. The face east of
/// cell i is entry i of east arrays, the face north of it entry i of north arrays.
/// </remarks>
internal sealed class InterfaceGrid
{
    /// <summary>Border columns past a row, and the least gap between runs.</summary>
    public const int Pad = 8;

    private InterfaceGrid(CoarseDepths depths, double[] depthM, bool[] active, int stride, int[] runStarts, int[] runEnds, int[] firstRun)
    {
        Depths = depths;
        DepthM = depthM;
        Active = active;
        Stride = stride;
        RunStarts = runStarts;
        RunEnds = runEnds;
        FirstRun = firstRun;
        foreach (bool on in active)
            if (on) ActiveCount++;
        EastOpen = OpenTo(1);
        NorthOpen = OpenTo(stride);
        Outside = Array.ConvertAll(active, on => on ? 0.0 : 1e300);
    }

    private double[] OpenTo(int next)
    {
        double[] open = new double[Length];
        for (int i = 0; i + next < open.Length; i++) open[i] = Active[i] && Active[i + next] ? 1.0 : 0.0;
        return open;
    }

    /// <summary>The depths this grid was cut from.</summary>
    public CoarseDepths Depths { get; }

    /// <summary>Depth of each cell, m; 0 outside.</summary>
    public double[] DepthM { get; }

    /// <summary>Whether each cell takes part.</summary>
    public bool[] Active { get; }

    /// <summary>East faces: 1 between cells that take part, 0 on walls.</summary>
    public double[] EastOpen { get; }

    /// <summary>North faces: the same.</summary>
    public double[] NorthOpen { get; }

    /// <summary>0 for cells that take part, beyond all bounds elsewhere: added, it keeps a cell out of a minimum.</summary>
    public double[] Outside { get; }

    /// <summary>Number of cells that take part.</summary>
    public int ActiveCount { get; }

    /// <summary>Entries a row.</summary>
    public int Stride { get; }

    /// <summary>First entry of each run of neighbouring cells.</summary>
    public int[] RunStarts { get; }

    /// <summary>Entry past each run's end.</summary>
    public int[] RunEnds { get; }

    /// <summary>[ny + 3] index of the first run of each array row.</summary>
    public int[] FirstRun { get; }

    /// <summary>Side of a cell, m.</summary>
    public double CellM => Depths.Frame.CellM;

    /// <summary>Length of the arrays.</summary>
    public int Length => DepthM.Length;

    /// <summary>Rows of cells.</summary>
    public int Rows => Depths.Frame.Ny;

    /// <summary>Array entry of a cell of the frame.</summary>
    public int Entry(int ix, int iy) => ((iy + 1) * Stride) + ix + 1;

    /// <summary>Cuts the grid for an upper layer at rest.</summary>
    /// <param name="depths">Depths.</param>
    /// <param name="upperM">Thickness of the upper layer, m.</param>
    /// <param name="minLowerM">Least thickness below it, m.</param>
    public static InterfaceGrid Of(CoarseDepths depths, double upperM, double minLowerM)
    {
        Require.NotNull(depths);
        int nx = depths.Frame.Nx, ny = depths.Frame.Ny, stride = nx + 1 + Pad;
        double[] depthM = new double[(ny + 2) * stride];
        bool[] active = new bool[depthM.Length];
        List<int> starts = [], ends = [];
        int[] firstRun = new int[ny + 3];
        for (int row = 0; row < ny + 2; row++)
        {
            firstRun[row] = starts.Count;
            if (row == 0 || row == ny + 1) continue;
            for (int ix = 0; ix < nx; ix++)
            {
                int cell = ((row - 1) * nx) + ix, entry = (row * stride) + ix + 1;
                if (depths.WaterShare[cell] < 0.5f || depths.DepthM[cell] < upperM + minLowerM) continue;
                depthM[entry] = depths.DepthM[cell];
                active[entry] = true;
                if (starts.Count > firstRun[row] && entry - ends[^1] < Pad) ends[^1] = entry + 1;
                else { starts.Add(entry); ends.Add(entry + 1); }
            }
        }

        firstRun[ny + 2] = starts.Count;
        return new InterfaceGrid(depths, depthM, active, stride, [.. starts], [.. ends], firstRun);
    }
}
