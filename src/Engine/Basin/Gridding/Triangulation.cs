using System.Runtime.CompilerServices;
using SecondShore.Engine.Core;

namespace SecondShore.Engine.Basin.Gridding;

/// <summary>
/// Delaunay triangulation of points in the lake's plane, by half-edges. Coordinates are snapped to a fine whole-number
/// lattice (about a millimetre), which makes every predicate exact.
/// </summary>
/// <remarks>
/// Half-edge <c>e</c> of triangle <c>e / 3</c> runs from vertex <c>Origin[e]</c> to <c>Origin[Next(e)]</c>, counter-clockwise.
/// Outside the hull stand ghost triangles with the vertex <see cref="Ghost"/> at infinity, so every half-edge has a twin.
/// Source: Delaunay1934 by incremental insertion and flips (Lawson1977), points in biased random rounds along a Hilbert
/// curve (AmentaEtAl2003).
/// </remarks>
internal sealed partial class Triangulation
{
    private const int MaxLattice = 1 << 26;
    private readonly int[] _x;
    private readonly int[] _y;
    private readonly double _westM;
    private readonly double _southM;
    private readonly double _quantumM;
    private readonly int[] _origin;
    private readonly int[] _twin;
    private int _edges;
    private int _last;

    /// <summary>Triangulates points.</summary>
    /// <param name="xM">Eastings, m, finite.</param>
    /// <param name="yM">Northings, m, finite, of the same number.</param>
    /// <param name="cancel">Stops the work.</param>
    public Triangulation(ReadOnlySpan<double> xM, ReadOnlySpan<double> yM, CancellationToken cancel = default)
    {
        Require.SameLength(yM.Length, xM.Length, nameof(yM));
        int n = xM.Length;
        (_x, _y) = (new int[n], new int[n]);
        (double west, double east) = Range(xM);
        (double south, double north) = Range(yM);
        (_westM, _southM) = (west, south);
        _quantumM = Math.Max(1.0 / 1024, Math.Max(east - west, north - south) / MaxLattice);
        for (int i = 0; i < n; i++)
        {
            _x[i] = (int)Math.Round((xM[i] - west) / _quantumM);
            _y[i] = (int)Math.Round((yM[i] - south) / _quantumM);
        }

        int room = Math.Max(0, 3 * ((2 * n) - 2));
        (_origin, _twin) = (new int[room], new int[room]);
        Build(cancel);
    }

    /// <summary>Number of points given.</summary>
    public int Count => _x.Length;

    /// <summary>The vertex at infinity.</summary>
    public int Ghost => _x.Length;

    /// <summary>Number of half-edges in use, three a triangle, ghosts included; 0 when all points lie on one line.</summary>
    public int EdgeCount => _edges;

    /// <summary>Origin vertex by half-edge.</summary>
    public ReadOnlySpan<int> Origin => _origin.AsSpan(0, _edges);

    /// <summary>Twin by half-edge.</summary>
    public ReadOnlySpan<int> Twin => _twin.AsSpan(0, _edges);

    /// <summary>Easting of a vertex as snapped, m.</summary>
    public double VertexXM(int vertex) => _westM + (_x[vertex] * _quantumM);

    /// <summary>Northing of a vertex as snapped, m.</summary>
    public double VertexYM(int vertex) => _southM + (_y[vertex] * _quantumM);

    /// <summary>Lattice columns by vertex.</summary>
    public ReadOnlySpan<int> LatticeX => _x;

    /// <summary>Lattice rows by vertex.</summary>
    public ReadOnlySpan<int> LatticeY => _y;

    /// <summary>Lattice coordinates of a vertex.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public (int X, int Y) Lattice(int vertex) => (_x[vertex], _y[vertex]);

    /// <summary>The half-edge after this one in its triangle.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static int Next(int edge) => edge % 3 == 2 ? edge - 2 : edge + 1;

    /// <summary>The half-edge before this one in its triangle.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static int Previous(int edge) => edge % 3 == 0 ? edge + 2 : edge - 1;

    /// <summary>Whether a triangle touches infinity.</summary>
    public bool IsGhost(int triangle)
    {
        int e = triangle * 3;
        return _origin[e] == Ghost || _origin[e + 1] == Ghost || _origin[e + 2] == Ghost;
    }

    /// <summary>Snaps a place to the lattice; places far outside are brought near, still outside.</summary>
    public (int X, int Y) Snap(double xM, double yM)
    {
        const int far = MaxLattice / 2;
        double x = Math.Clamp(Math.Round((xM - _westM) / _quantumM), -far, MaxLattice + far);
        double y = Math.Clamp(Math.Round((yM - _southM) / _quantumM), -far, MaxLattice + far);
        return ((int)x, (int)y);
    }

    /// <summary>The triangle that holds a lattice point, walking from a triangle near it; a ghost when it lies outside the hull.</summary>
    public int Locate(int x, int y, int start)
    {
        int triangle = start;
        if (IsGhost(triangle)) triangle = _twin[RealEdge(triangle)] / 3;
        int from = -1;
        while (true)
        {
            int e = triangle * 3, step = -1;
            for (int k = 0; k < 3; k++)
            {
                int edge = e + k;
                if (edge == from) continue;
                if (Orient(_origin[edge], _origin[Next(edge)], x, y) < 0) { step = edge; break; }
            }

            if (step < 0) return triangle;
            from = _twin[step];
            triangle = from / 3;
            if (IsGhost(triangle)) return triangle;
        }
    }

    /// <summary>Whether a lattice point lies strictly inside the circle of a triangle (for a ghost: outside its hull edge).</summary>
    public bool Conflicts(int triangle, int x, int y)
    {
        int e = triangle * 3, ghost = Ghost;
        int a = _origin[e], b = _origin[e + 1], c = _origin[e + 2];
        if (a == ghost) return SeesHullEdge(b, c, x, y);
        if (b == ghost) return SeesHullEdge(c, a, x, y);
        if (c == ghost) return SeesHullEdge(a, b, x, y);
        return InCircle(_x[a] - x, _y[a] - y, _x[b] - x, _y[b] - y, _x[c] - x, _y[c] - y);
    }

    /// <summary>Sign of the turn a, b, p: above 0 when p lies left. Exact.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private long Orient(int a, int b, int x, int y)
    {
        long ax = _x[a], ay = _y[a];
        return ((_x[b] - ax) * (y - ay)) - ((_y[b] - ay) * (x - ax));
    }

    private bool SeesHullEdge(int a, int b, int x, int y)
    {
        long turn = Orient(a, b, x, y);
        if (turn != 0) return turn > 0;
        long dot = ((long)(_x[a] - x) * (_x[b] - x)) + ((long)(_y[a] - y) * (_y[b] - y));
        return dot < 0;
    }

    // Coordinates relative to the tested point. Whole-number parts are exact; the double result is trusted outside its
    // rounding bound, else 128 bits decide.
    private static bool InCircle(long ax, long ay, long bx, long by, long cx, long cy)
    {
        long a2 = (ax * ax) + (ay * ay), b2 = (bx * bx) + (by * by), c2 = (cx * cx) + (cy * cy);
        long bc = (bx * cy) - (cx * by), ca = (cx * ay) - (ax * cy), ab = (ax * by) - (bx * ay);
        double ta = (double)a2 * bc, tb = (double)b2 * ca, tc = (double)c2 * ab;
        double sum = ta + tb + tc, bound = 1e-15 * (Math.Abs(ta) + Math.Abs(tb) + Math.Abs(tc));
        if (sum > bound) return true;
        if (sum < -bound) return false;
        return ((Int128)a2 * bc) + ((Int128)b2 * ca) + ((Int128)c2 * ab) > 0;
    }

    private int RealEdge(int triangle)
    {
        int e = triangle * 3;
        if (_origin[e] == Ghost) return e + 1;
        return _origin[e + 1] == Ghost ? e + 2 : e;
    }

    private static (double Low, double High) Range(ReadOnlySpan<double> values)
    {
        double low = double.PositiveInfinity, high = double.NegativeInfinity;
        foreach (double value in values)
        {
            low = Math.Min(low, Require.Finite(value));
            high = Math.Max(high, value);
        }

        return values.Length == 0 ? (0, 0) : (low, high);
    }
}
