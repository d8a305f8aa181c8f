using System.Runtime.CompilerServices;

namespace SecondShore.Engine.Basin.Gridding;

/// <summary>Natural neighbour interpolation: a point takes from each neighbour as much as it would steal of its territory.</summary>
/// <remarks>Source: Sibson1981. Smooth but at the data, exact there, never outside their range. Immutable; each thread asks through its own <see cref="Probe"/>.</remarks>
internal sealed class NaturalNeighbour
{
    private readonly Triangulation _mesh;
    private readonly float[] _values;

    // By triangle, in lattice units: centre and squared radius of its circle, and how far a distance may be off by rounding.
    private readonly double[] _centreX;
    private readonly double[] _centreY;
    private readonly double[] _radius2;
    private readonly double[] _slack2;

    /// <summary>Prepares a triangulation for interpolation.</summary>
    /// <param name="mesh">Triangulation with at least one triangle.</param>
    /// <param name="values">Value by point.</param>
    public NaturalNeighbour(Triangulation mesh, ReadOnlySpan<float> values)
    {
        (_mesh, _values) = (mesh, values.ToArray());
        int triangles = mesh.EdgeCount / 3;
        (_centreX, _centreY, _radius2, _slack2) = (new double[triangles], new double[triangles], new double[triangles], new double[triangles]);
        ReadOnlySpan<int> origin = mesh.Origin, px = mesh.LatticeX, py = mesh.LatticeY;
        for (int t = 0; t < triangles; t++)
        {
            _radius2[t] = double.NegativeInfinity;
            if (mesh.IsGhost(t)) continue;
            int a = origin[3 * t], b = origin[(3 * t) + 1], c = origin[(3 * t) + 2];
            double ux = px[b] - px[a], uy = py[b] - py[a], vx = px[c] - px[a], vy = py[c] - py[a];
            Circumcentre(ux, uy, vx, vy, out double x, out double y);
            (_centreX[t], _centreY[t]) = (px[a] + x, py[a] + y);
            _radius2[t] = (x * x) + (y * y);
            _slack2[t] = Slack2(ux, uy, vx, vy, Math.Abs(px[a]) + Math.Abs(py[a]), _radius2[t]);
        }
    }

    /// <summary>What a thread asks when it draws a grid: value at a place, NaN outside the hull.</summary>
    public AskSurface Ask()
    {
        Probe probe = new(this);
        int triangle = 0;
        return (xM, yM) => probe.TryAt(xM, yM, ref triangle, out double value) ? value : double.NaN;
    }

    // Bound on the rounding of a squared distance to a circle's centre; infinite where the triangle is a sliver, so that exact numbers decide.
    private static double Slack2(double ux, double uy, double vx, double vy, double atLattice, double radius2)
    {
        const double unit = 2.3e-16;
        double u2 = (ux * ux) + (uy * uy), v2 = (vx * vx) + (vy * vy), cross = Math.Abs((ux * vy) - (uy * vx));
        double radius = Math.Sqrt(radius2), over = Math.Abs(ux * vy) + Math.Abs(uy * vx), tops = ((Math.Abs(vy) + Math.Abs(vx)) * u2) + ((Math.Abs(uy) + Math.Abs(ux)) * v2);
        double off = unit * (((3 * tops) + (4 * radius * over)) / cross + atLattice + (2 * radius));
        return off < 0.01 * radius ? 16 * ((radius * off) + (unit * radius2)) : double.PositiveInfinity;
    }

    // Centre of the circle through the origin and two points.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Circumcentre(double ux, double uy, double vx, double vy, out double x, out double y)
    {
        double d = 2 * ((ux * vy) - (uy * vx)), u2 = (ux * ux) + (uy * uy), v2 = (vx * vx) + (vy * vy);
        x = ((vy * u2) - (uy * v2)) / d;
        y = ((ux * v2) - (vx * u2)) / d;
    }

    /// <summary>Asks for values, with work space of its own. Not for two threads at once.</summary>
    public sealed class Probe(NaturalNeighbour of)
    {
        private readonly int[] _stamp = new int[of._radius2.Length];
        private int[] _cavity = new int[64];
        private int _visit;

        /// <summary>Value at a place; false outside the hull.</summary>
        /// <param name="xM">Easting, m.</param>
        /// <param name="yM">Northing, m.</param>
        /// <param name="triangle">A triangle near by, replaced by the one that holds the place.</param>
        /// <param name="value">The value.</param>
        public bool TryAt(double xM, double yM, ref int triangle, out double value)
        {
            Triangulation mesh = of._mesh;
            (int x, int y) = mesh.Snap(xM, yM);
            int t = triangle = mesh.Locate(x, y, triangle);
            value = double.NaN;
            if (mesh.IsGhost(t)) return false;
            ReadOnlySpan<int> origin = mesh.Origin, px = mesh.LatticeX, py = mesh.LatticeY;
            for (int e = 3 * t; e < (3 * t) + 3; e++)
            {
                int v = origin[e];
                if (px[v] != x || py[v] != y) continue;
                value = of._values[v];
                return true;
            }

            value = Sibson(t, x, y);
            if (double.IsNaN(value)) value = Linear(t, x, y);
            return true;
        }

        /// <summary>Value on the flat triangle that holds a place; false outside the hull.</summary>
        public bool TryLinearAt(double xM, double yM, ref int triangle, out double value)
        {
            (int x, int y) = of._mesh.Snap(xM, yM);
            triangle = of._mesh.Locate(x, y, triangle);
            value = of._mesh.IsGhost(triangle) ? double.NaN : Linear(triangle, x, y);
            return !double.IsNaN(value);
        }

        private double Linear(int t, int x, int y)
        {
            ReadOnlySpan<int> origin = of._mesh.Origin;
            int a = origin[3 * t], b = origin[(3 * t) + 1], c = origin[(3 * t) + 2];
            return LinearSurface.At(Corner(a), Corner(b), Corner(c), x, y);
            (double, double, double) Corner(int v) => (of._mesh.Lattice(v).X, of._mesh.Lattice(v).Y, of._values[v]);
        }

        // Walks once round the cavity that the point would dig; NaN where rounding spoils the weights.
        private double Sibson(int t, int x, int y)
        {
            int start = Dig(t, x, y), edge = start, visit = _visit;
            ReadOnlySpan<int> origin = of._mesh.Origin, twin = of._mesh.Twin, px = of._mesh.LatticeX, py = of._mesh.LatticeY;
            double[] centreX = of._centreX, centreY = of._centreY;
            float[] values = of._values;
            int[] stamp = _stamp;
            int w = origin[edge], v = origin[Triangulation.Next(edge)];
            double vx = px[v] - x, vy = py[v] - y;
            Circumcentre(px[w] - x, py[w] - y, vx, vy, out double gx, out double gy);
            double firstX = gx, firstY = gy, weights = 0, sum = 0, pullX = 0, pullY = 0, span = 0, least = 0;
            do
            {
                double area = 0, fromX = gx, fromY = gy;
                int f = edge;
                while (true)
                {
                    int inside = f / 3;
                    double cx = centreX[inside] - x, cy = centreY[inside] - y;
                    area += (fromX * cy) - (fromY * cx);
                    (fromX, fromY) = (cx, cy);
                    f = Triangulation.Next(f);
                    int across = twin[f];
                    if (stamp[across / 3] != visit) break;
                    f = across;
                }

                w = origin[Triangulation.Next(f)];
                double wx = px[w] - x, wy = py[w] - y, hx = firstX, hy = firstY;
                if (f != start) Circumcentre(vx, vy, wx, wy, out hx, out hy);
                area += (fromX * hy) - (fromY * hx);
                area += (hx * gy) - (hy * gx);
                weights += area;
                sum += area * values[v];
                pullX += area * vx;
                pullY += area * vy;
                span = Math.Max(span, Math.Max(Math.Abs(vx), Math.Abs(vy)));
                least = Math.Min(least, -Math.Abs(area) * (area * weights < 0 ? 1 : 0));
                (gx, gy, edge, v, vx, vy) = (hx, hy, f, w, wx, wy);
            }
            while (edge != start);
            double size = Math.Abs(weights);
            // Right weights balance about the point itself: anything else is rounding.
            bool sound = size > 0 && double.IsFinite(sum) && least > -1e-3 * size && Math.Abs(pullX) + Math.Abs(pullY) < 0.01 * span * size;
            return sound ? sum / weights : double.NaN;
        }

        // Marks the triangles whose circle holds the point; returns an edge of the cavity's rim.
        private int Dig(int t, int x, int y)
        {
            int visit = ++_visit, count = 0, rim = -1;
            int[] stamp = _stamp;
            _cavity[count++] = t;
            stamp[t] = visit;
            ReadOnlySpan<int> twin = of._mesh.Twin;
            for (int k = 0; k < count; k++)
            {
                int first = 3 * _cavity[k];
                for (int e = first; e < first + 3; e++)
                {
                    int other = twin[e] / 3;
                    if (stamp[other] == visit) continue;
                    double dx = of._centreX[other] - x, dy = of._centreY[other] - y, inside = of._radius2[other] - ((dx * dx) + (dy * dy));
                    bool conflicts = Math.Abs(inside) > of._slack2[other] ? inside > 0 : of._mesh.Conflicts(other, x, y);
                    if (!conflicts) { rim = e; continue; }
                    if (count == _cavity.Length) Array.Resize(ref _cavity, 2 * count);
                    _cavity[count++] = other;
                    stamp[other] = visit;
                }
            }

            return rim;
        }
    }
}
