namespace SecondShore.Engine.Motion.Layers;

/// <summary>
/// Keeps both layers from running dry: where a cell's outflow of a layer over a step would take more than it holds, the
/// faces through which that layer leaves are slowed. What one cell loses its neighbour still gains, so volume is kept.
/// </summary>
internal sealed class ThinCells
{
    /// <summary>Thickness that a layer keeps, m.</summary>
    public const double FloorM = 0.02;

    private readonly InterfaceGrid _grid;
    private readonly bool[] _thin;
    private readonly double[] _upperShare;
    private readonly double[] _lowerShare;
    private readonly int[] _cells;

    public ThinCells(InterfaceGrid grid)
    {
        _grid = grid;
        _thin = new bool[grid.Length];
        _upperShare = new double[grid.Length];
        _lowerShare = new double[grid.Length];
        Array.Fill(_upperShare, 1.0);
        Array.Fill(_lowerShare, 1.0);
        _cells = new int[grid.ActiveCount];
    }

    /// <summary>Number of cells watched.</summary>
    public int Count { get; private set; }

    /// <summary>Forgets the cells watched.</summary>
    public void Clear()
    {
        for (int n = 0; n < Count; n++) _thin[_cells[n]] = false;
        Count = 0;
    }

    /// <summary>Watches a cell.</summary>
    public void Add(int cell)
    {
        _thin[cell] = true;
        _cells[Count++] = cell;
    }

    /// <summary>Slows the faces of watched cells where a layer would run dry in the coming step.</summary>
    /// <param name="f">The fields.</param>
    /// <param name="flow">dt/dx.</param>
    /// <param name="upperM">Thickness of the upper layer at rest, m.</param>
    public void Limit(InterfaceArrays f, double flow, double upperM)
    {
        if (Count == 0) return;
        int stride = _grid.Stride;
        for (int n = 0; n < Count; n++)
        {
            int i = _cells[n];
            double east = f.East[i] * f.EastRoot[i], west = f.East[i - 1] * f.EastRoot[i - 1];
            double north = f.North[i] * f.NorthRoot[i], south = f.North[i - stride] * f.NorthRoot[i - stride];
            double upperOut = (Math.Max(0, east) + Math.Max(0, -west)) + (Math.Max(0, north) + Math.Max(0, -south));
            double lowerOut = (Math.Max(0, -east) + Math.Max(0, west)) + (Math.Max(0, -north) + Math.Max(0, south));
            _upperShare[i] = Share(upperM + f.OffsetM[i], upperOut * flow);
            _lowerShare[i] = Share(_grid.DepthM[i] - upperM - f.OffsetM[i], lowerOut * flow);
        }

        for (int n = 0; n < Count; n++)
        {
            int i = _cells[n];
            f.East[i] *= FaceShare(f.East[i], i, i + 1);
            f.North[i] *= FaceShare(f.North[i], i, i + stride);
            // A watched neighbour slows the shared face itself.
            if (!_thin[i - 1]) f.East[i - 1] *= FaceShare(f.East[i - 1], i - 1, i);
            if (!_thin[i - stride]) f.North[i - stride] *= FaceShare(f.North[i - stride], i - stride, i);
        }

        for (int n = 0; n < Count; n++) _upperShare[_cells[n]] = _lowerShare[_cells[n]] = 1.0;
    }

    // Motion from a to b carries upper water out of a and lower water out of b.
    private double FaceShare(double motion, int a, int b) => motion > 0
        ? Math.Min(_upperShare[a], _lowerShare[b])
        : Math.Min(_upperShare[b], _lowerShare[a]);

    private static double Share(double thicknessM, double leavingM)
    {
        double spareM = Math.Max(0.0, thicknessM - FloorM);
        return leavingM <= spareM ? 1.0 : spareM / leavingM;
    }
}
