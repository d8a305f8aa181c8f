using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Gridding;

/// <summary>Natural neighbour interpolation: a point takes from each neighbour as much as it would steal of its territory.</summary>
/// <remarks>Source: Sibson1981. Smooth but at the data, exact there, never outside their range. Not for two threads at once.</remarks>
internal sealed class NaturalNeighbour
{
    private readonly Triangulation _mesh;
    private readonly float[] _values;
    private readonly double[] _centreX;
    private readonly double[] _centreY;
    private readonly int[] _stamp;
    private int[] _cavity = new int[64];
    private int _visit;

    /// <summary>Prepares a triangulation for interpolation.</summary>
    /// <param name="mesh">Triangulation with at least one triangle.</param>
    /// <param name="values">Value by point.</param>
    public NaturalNeighbour(Triangulation mesh, ReadOnlySpan<float> values)
    {
        (_mesh, _values) = (mesh, values.ToArray());
        int triangles = mesh.EdgeCount / 3;
        (_centreX, _centreY, _stamp) = (new double[triangles], new double[triangles], new int[triangles]);
        ReadOnlySpan<int> origin = mesh.Origin;
        for (int t = 0; t < triangles; t++)
        {
            if (mesh.IsGhost(t)) continue;
            (int ax, int ay) = mesh.Lattice(origin[3 * t]);
            (int bx, int by) = mesh.Lattice(origin[(3 * t) + 1]);
            (int cx, int cy) = mesh.Lattice(origin[(3 * t) + 2]);
            (double x, double y) = Circumcentre(bx - ax, by - ay, cx - ax, cy - ay);
            (_centreX[t], _centreY[t]) = (ax + x, ay + y);
        }
    }

    /// <summary>Fills the wanted cells of a grid; cells outside the hull, or in triangles not used, are left as they are.</summary>
    public void Draw(bool[]? wanted, bool[]? used, GridFrame frame, float[] target, CancellationToken cancel)
    {
        int triangle = 0;
        for (int iy = 0; iy < frame.Ny; iy++)
        {
            if ((iy & 15) == 0) cancel.ThrowIfCancellationRequested();
            // To and fro, so that each walk is one step.
            for (int k = 0; k < frame.Nx; k++)
            {
                int ix = (iy & 1) == 0 ? k : frame.Nx - 1 - k, i = frame.Index(ix, iy);
                if (wanted is not null && !wanted[i]) continue;
                var centre = frame.Centre(ix, iy);
                if (TryAt(centre.XM, centre.YM, ref triangle, out double value) && (used is null || used[triangle])) target[i] = (float)value;
            }
        }
    }

    /// <summary>Value at a place; false outside the hull.</summary>
    /// <param name="xM">Easting, m.</param>
    /// <param name="yM">Northing, m.</param>
    /// <param name="triangle">A triangle near by, replaced by the one that holds the place.</param>
    /// <param name="value">The value.</param>
    public bool TryAt(double xM, double yM, ref int triangle, out double value)
    {
        (int x, int y) = _mesh.Snap(xM, yM);
        int t = triangle = _mesh.Locate(x, y, triangle);
        value = double.NaN;
        if (_mesh.IsGhost(t)) return false;
        ReadOnlySpan<int> origin = _mesh.Origin;
        for (int k = 0; k < 3; k++)
        {
            int v = origin[(3 * t) + k];
            if (_mesh.Lattice(v) != (x, y)) continue;
            value = _values[v];
            return true;
        }

        value = Sibson(t, x, y) ?? Linear(t, x, y);
        return true;
    }

    /// <summary>Value on the flat triangle that holds a place; false outside the hull.</summary>
    public bool TryLinearAt(double xM, double yM, ref int triangle, out double value)
    {
        (int x, int y) = _mesh.Snap(xM, yM);
        triangle = _mesh.Locate(x, y, triangle);
        value = _mesh.IsGhost(triangle) ? double.NaN : Linear(triangle, x, y);
        return !double.IsNaN(value);
    }

    private double Linear(int t, int x, int y)
    {
        ReadOnlySpan<int> origin = _mesh.Origin;
        int a = origin[3 * t], b = origin[(3 * t) + 1], c = origin[(3 * t) + 2];
        return LinearSurface.At(Corner(a), Corner(b), Corner(c), x, y);
        (double, double, double) Corner(int v) => (_mesh.Lattice(v).X, _mesh.Lattice(v).Y, _values[v]);
    }

    // Walks once round the cavity that the point would dig; null where rounding spoils the weights.
    private double? Sibson(int t, int x, int y)
    {
        int start = Dig(t, x, y);
        ReadOnlySpan<int> origin = _mesh.Origin, twin = _mesh.Twin;
        int edge = start;
        (double gx, double gy) = NewCentre(origin[edge], origin[Triangulation.Next(edge)], x, y);
        (double firstX, double firstY) = (gx, gy);
        double weights = 0, sum = 0, pullX = 0, pullY = 0, span = 0, least = 0;
        do
        {
            int v = origin[Triangulation.Next(edge)];
            double area = 0, fromX = gx, fromY = gy;
            int f = edge;
            while (true)
            {
                int inside = f / 3;
                double cx = _centreX[inside] - x, cy = _centreY[inside] - y;
                area += (fromX * cy) - (fromY * cx);
                (fromX, fromY) = (cx, cy);
                f = Triangulation.Next(f);
                if (_stamp[twin[f] / 3] != _visit) break;
                f = twin[f];
            }

            (double hx, double hy) = f == start ? (firstX, firstY) : NewCentre(v, origin[Triangulation.Next(f)], x, y);
            area += (fromX * hy) - (fromY * hx);
            area += (hx * gy) - (hy * gx);
            (gx, gy, edge) = (hx, hy, f);
            (int vx, int vy) = _mesh.Lattice(v);
            weights += area;
            sum += area * _values[v];
            pullX += area * (vx - x);
            pullY += area * (vy - y);
            span = Math.Max(span, Math.Max(Math.Abs(vx - x), Math.Abs(vy - y)));
            least = Math.Min(least, -Math.Abs(area) * (area * weights < 0 ? 1 : 0));
        }
        while (edge != start);
        double size = Math.Abs(weights);
        // Right weights balance about the point itself: anything else is rounding.
        bool sound = size > 0 && double.IsFinite(sum) && least > -1e-3 * size && Math.Abs(pullX) + Math.Abs(pullY) < 0.01 * span * size;
        return sound ? sum / weights : null;
    }

    // Marks the triangles whose circle holds the point; returns an edge of the cavity's rim.
    private int Dig(int t, int x, int y)
    {
        _visit++;
        int count = 0, rim = -1;
        _cavity[count++] = t;
        _stamp[t] = _visit;
        ReadOnlySpan<int> twin = _mesh.Twin;
        for (int k = 0; k < count; k++)
        {
            for (int e = 3 * _cavity[k]; e < (3 * _cavity[k]) + 3; e++)
            {
                int other = twin[e] / 3;
                if (_stamp[other] == _visit) continue;
                if (_mesh.IsGhost(other) || !_mesh.Conflicts(other, x, y)) { rim = e; continue; }
                if (count == _cavity.Length) Array.Resize(ref _cavity, 2 * count);
                _cavity[count++] = other;
                _stamp[other] = _visit;
            }
        }

        return rim;
    }

    private (double X, double Y) NewCentre(int u, int v, int x, int y)
    {
        (int ux, int uy) = _mesh.Lattice(u);
        (int vx, int vy) = _mesh.Lattice(v);
        return Circumcentre(ux - x, uy - y, vx - x, vy - y);
    }

    // Centre of the circle through the origin and two points.
    private static (double X, double Y) Circumcentre(double ux, double uy, double vx, double vy)
    {
        double d = 2 * ((ux * vy) - (uy * vx)), u2 = (ux * ux) + (uy * uy), v2 = (vx * vx) + (vy * vy);
        return (((vy * u2) - (uy * v2)) / d, ((ux * v2) - (vx * u2)) / d);
    }
}
