using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Forms;

/// <summary>Traces the rings where a height field crosses zero about a set of cells (marching squares on cell centres).</summary>
public static class CellOutline
{
    /// <summary>Rings around cells; the one of largest area first. Rings repeat no point. Costs as much as the cells' box is large, not the grid.</summary>
    /// <param name="frame">The grid.</param>
    /// <param name="elevationM">[Ny*Nx] heights that cross 0 at the edge; where they do not, the edge lies midway between cells.</param>
    /// <param name="cells">Indices of the cells inside, in any order.</param>
    public static List<IReadOnlyList<PlanePoint>> Trace(GridFrame frame, float[] elevationM, ReadOnlySpan<int> cells)
    {
        Require.NotNull(elevationM);
        return cells.Length == 0 ? [] : new Walk(frame, elevationM, cells).Rings();
    }

    /// <summary>Signed area of a ring, m2, positive when it turns left.</summary>
    public static double AreaM2(IReadOnlyList<PlanePoint> ring)
    {
        double twice = 0;
        for (int i = 0, j = ring.Count - 1; i < ring.Count; j = i++) twice += (ring[j].XM * ring[i].YM) - (ring[i].XM * ring[j].YM);
        return 0.5 * twice;
    }

    // The box of the cells with a margin of one cell. An edge between two centres has the number of its west or south cell,
    // twice, and one more where it runs north.
    private sealed class Walk
    {
        private readonly GridFrame _frame;
        private readonly float[] _elevationM;
        private readonly int _west;
        private readonly int _south;
        private readonly int _nx;
        private readonly int _ny;
        private readonly bool[] _inside;
        private readonly int[] _next;
        private readonly List<int> _starts = [];

        public Walk(GridFrame frame, float[] elevationM, ReadOnlySpan<int> cells)
        {
            (_frame, _elevationM) = (frame, elevationM);
            int x0 = int.MaxValue, x1 = -1, y0 = int.MaxValue, y1 = -1;
            foreach (int i in cells)
            {
                int x = i % frame.Nx, y = i / frame.Nx;
                (x0, x1, y0, y1) = (Math.Min(x0, x), Math.Max(x1, x), Math.Min(y0, y), Math.Max(y1, y));
            }

            (_west, _south, _nx, _ny) = (x0 - 1, y0 - 1, x1 - x0 + 3, y1 - y0 + 3);
            _inside = new bool[_nx * _ny];
            foreach (int i in cells) _inside[(((i / frame.Nx) - _south) * _nx) + (i % frame.Nx) - _west] = true;
            _next = new int[2 * _inside.Length];
            Array.Fill(_next, -1);
        }

        public List<IReadOnlyList<PlanePoint>> Rings()
        {
            for (int iy = 0; iy < _ny - 1; iy++)
                for (int ix = 0; ix < _nx - 1; ix++) Square((iy * _nx) + ix);
            List<IReadOnlyList<PlanePoint>> rings = [];
            foreach (int start in _starts)
            {
                if (_next[start] < 0) continue;
                List<PlanePoint> ring = [];
                for (int at = start; _next[at] >= 0;)
                {
                    ring.Add(Place(at));
                    (at, _next[at]) = (_next[at], -1);
                }

                if (ring.Count > 3) rings.Add(ring);
            }

            rings.Sort((a, b) => Math.Abs(AreaM2(b)).CompareTo(Math.Abs(AreaM2(a))));
            return rings;
        }

        private void Square(int cell)
        {
            int key = (_inside[cell] ? 1 : 0) | (_inside[cell + 1] ? 2 : 0) | (_inside[cell + _nx + 1] ? 4 : 0) | (_inside[cell + _nx] ? 8 : 0);
            if (key is 0 or 15) return;
            int s = 2 * cell, n = s + (2 * _nx), w = s + 1, e = s + 3;
            switch (key)
            {
                case 1: Link(w, s); break;
                case 2: Link(s, e); break;
                case 3: Link(w, e); break;
                case 4: Link(e, n); break;
                case 5: Link(w, s); Link(e, n); break;
                case 6: Link(s, n); break;
                case 7: Link(w, n); break;
                case 8: Link(n, w); break;
                case 9: Link(n, s); break;
                case 10: Link(s, e); Link(n, w); break;
                case 11: Link(n, e); break;
                case 12: Link(e, w); break;
                case 13: Link(e, s); break;
                case 14: Link(s, w); break;
            }
        }

        private void Link(int from, int to)
        {
            _next[from] = to;
            _starts.Add(from);
        }

        private PlanePoint Place(int edge)
        {
            int up = edge & 1, x = _west + ((edge >> 1) % _nx), y = _south + ((edge >> 1) / _nx), x1 = x + 1 - up, y1 = y + up;
            double a = Height(x, y), b = Height(x1, y1), t = !(a * b < 0) ? 0.5 : Math.Clamp(a / (a - b), 0.02, 0.98);
            return new PlanePoint(_frame.WestM + ((x + 0.5 + (t * (x1 - x))) * _frame.CellM), _frame.SouthM + ((y + 0.5 + (t * (y1 - y))) * _frame.CellM));
        }

        private double Height(int x, int y) => _frame.Contains(x, y) ? _elevationM[_frame.Index(x, y)] : 5;
    }
}
