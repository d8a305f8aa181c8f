using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Gridding;

/// <summary>The cells of the lake's grid about left-out soundings, drawn by every method from the kept ones.</summary>
internal sealed class TrialGrid
{
    private readonly GridFrame _frame;
    private readonly bool[]? _mask;
    private readonly PointCloud _beside;
    private readonly PointCloud _gone;
    private readonly List<int> _cells = [];
    private readonly float[][] _sheets;

    /// <summary>Finds the cells that matter: those about left-out soundings, and about kept ones that share such a cell.</summary>
    public TrialGrid(GridFrame frame, bool[]? mask, PointCloud kept, PointCloud gone)
    {
        (_frame, _mask, _gone) = (frame, mask, gone);
        byte[] asked = new byte[frame.Count];
        for (int p = 0; p < gone.Count; p++) Ask(gone, p, asked, 1);
        _beside = kept.Where(p => Touches(kept, p, asked));
        for (int p = 0; p < _beside.Count; p++) Ask(_beside, p, asked, 2);
        _sheets = new float[TrialErrors.Methods.Length][];
    }

    /// <summary>Draws them.</summary>
    /// <param name="mesh">Triangulation of the thinned points.</param>
    /// <param name="thinned">The kept points, thinned to half cells.</param>
    /// <param name="kriging">The same by distance; null when kriging and the mean by distance are not tried.</param>
    /// <param name="cancel">Stops the work.</param>
    public void Draw(Triangulation mesh, PointCloud thinned, LocalKriging? kriging, CancellationToken cancel)
    {
        for (int m = 0; m < _sheets.Length; m++)
        {
            if (m >= 2 && kriging is null) { _sheets[m] = []; continue; }
            _sheets[m] = new float[_frame.Count];
            Array.Fill(_sheets[m], float.NaN);
        }

        NaturalNeighbour.Probe natural = new(new NaturalNeighbour(mesh, thinned.DepthM));
        int triangle = 0;
        for (int k = 0; k < _cells.Count; k++)
        {
            if ((k & 1023) == 0) cancel.ThrowIfCancellationRequested();
            int i = _cells[k];
            PlanePoint at = _frame.Centre(i);
            if (!natural.TryLinearAt(at.XM, at.YM, ref triangle, out double linear) || !natural.TryAt(at.XM, at.YM, ref triangle, out double smooth)) continue;
            (_sheets[0][i], _sheets[1][i]) = ((float)linear, (float)smooth);
            if (kriging is null) continue;
            (double kriged, double mean) = kriging.BothAt(at.XM, at.YM);
            (_sheets[2][i], _sheets[3][i]) = ((float)kriged, (float)mean);
        }
    }

    /// <summary>What every method was off by, as drawn and once settled, at the left-out soundings that all of them reach.</summary>
    public TrialErrors Errors(Triangulation mesh)
    {
        List<int> reached = [];
        List<double> distances = [];
        int triangle = 0;
        for (int p = 0; p < _gone.Count; p++)
        {
            double x = _gone.XM[p], y = _gone.YM[p];
            (int latticeX, int latticeY) = mesh.Snap(x, y);
            triangle = mesh.Locate(latticeX, latticeY, triangle);
            if (mesh.IsGhost(triangle) || !Array.TrueForAll(_sheets, sheet => sheet.Length == 0 || double.IsFinite(SheetFit.At(sheet, _mask, _frame, x, y)))) continue;
            reached.Add(p);
            distances.Add(NearestCornerM(mesh, triangle, x, y));
        }

        double[][] drawn = Array.ConvertAll(_sheets, sheet => OffM(sheet, reached));
        SheetFit fit = new(_frame);
        foreach (float[] sheet in _sheets)
            if (sheet.Length > 0) fit.Settle(sheet, _mask, _beside);
        return new TrialErrors([.. distances], drawn, Array.ConvertAll(_sheets, sheet => OffM(sheet, reached)));
    }

    private double[] OffM(float[] sheet, List<int> reached)
    {
        double[] off = new double[sheet.Length == 0 ? 0 : reached.Count];
        for (int k = 0; k < off.Length; k++)
            off[k] = SheetFit.At(sheet, _mask, _frame, _gone.XM[reached[k]], _gone.YM[reached[k]]) - _gone.DepthM[reached[k]];
        return off;
    }

    private void Ask(PointCloud cloud, int p, byte[] asked, byte mark)
    {
        int x0 = (int)Math.Floor(_frame.ColumnAt(cloud.XM[p])), y0 = (int)Math.Floor(_frame.RowAt(cloud.YM[p]));
        for (int k = 0; k < 4; k++)
        {
            if (!SheetFit.TryCorner(_frame, x0, y0, k, out int i) || asked[i] != 0) continue;
            asked[i] = mark;
            _cells.Add(i);
        }
    }

    private bool Touches(PointCloud cloud, int p, byte[] asked)
    {
        if (cloud.Kind[p] != PointKind.Sounding) return false;
        int x0 = (int)Math.Floor(_frame.ColumnAt(cloud.XM[p])), y0 = (int)Math.Floor(_frame.RowAt(cloud.YM[p]));
        for (int k = 0; k < 4; k++)
            if (SheetFit.TryCorner(_frame, x0, y0, k, out int i) && asked[i] == 1) return true;
        return false;
    }

    private static double NearestCornerM(Triangulation mesh, int triangle, double x, double y)
    {
        double least = double.PositiveInfinity;
        for (int k = 0; k < 3; k++)
        {
            int v = mesh.Origin[(3 * triangle) + k];
            double dx = mesh.VertexXM(v) - x, dy = mesh.VertexYM(v) - y;
            least = Math.Min(least, (dx * dx) + (dy * dy));
        }

        return Math.Sqrt(least);
    }
}
