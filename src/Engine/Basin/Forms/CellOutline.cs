using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Forms;

/// <summary>Traces the rings where a height field crosses zero about a set of cells (marching squares on cell centres).</summary>
public static class CellOutline
{
    /// <summary>Rings around cells that are inside; the one of largest area first. Rings repeat no point.</summary>
    /// <param name="frame">The grid.</param>
    /// <param name="elevationM">[Ny*Nx] heights that cross 0 at the edge; where they do not, the edge lies midway between cells.</param>
    /// <param name="inside">Whether a cell, by its index, is inside.</param>
    public static List<IReadOnlyList<PlanePoint>> Trace(GridFrame frame, float[] elevationM, Func<int, bool> inside)
    {
        int nx = frame.Nx, ny = frame.Ny;
        Dictionary<long, long> next = [];
        Dictionary<long, PlanePoint> places = [];
        for (int iy = -1; iy < ny; iy++)
        {
            for (int ix = -1; ix < nx; ix++)
            {
                bool sw = In(ix, iy), se = In(ix + 1, iy), nw = In(ix, iy + 1), ne = In(ix + 1, iy + 1);
                int key = (sw ? 1 : 0) | (se ? 2 : 0) | (ne ? 4 : 0) | (nw ? 8 : 0);
                long s = Edge(ix, iy, 0), n = Edge(ix, iy + 1, 0), w = Edge(ix, iy, 1), e = Edge(ix + 1, iy, 1);
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
        }

        List<IReadOnlyList<PlanePoint>> rings = [];
        while (next.Count > 0)
        {
            long start = 0;
            foreach (long key in next.Keys) { start = key; break; }
            List<PlanePoint> ring = [];
            long at = start;
            while (next.Remove(at, out long to))
            {
                ring.Add(places[at]);
                at = to;
            }

            if (ring.Count > 3) rings.Add(ring);
        }

        rings.Sort((a, b) => Math.Abs(AreaM2(b)).CompareTo(Math.Abs(AreaM2(a))));
        return rings;

        bool In(int x, int y) => frame.Contains(x, y) && inside(frame.Index(x, y));

        void Link(long from, long to)
        {
            next[from] = to;
            places[from] = Place(from);
        }

        long Edge(int x, int y, int up) => ((((long)(y + 1) * (nx + 3)) + x + 1) * 2) + up;

        PlanePoint Place(long edge)
        {
            int up = (int)(edge & 1);
            long cell = edge >> 1;
            int x = (int)(cell % (nx + 3)) - 1, y = (int)(cell / (nx + 3)) - 1, x1 = x + 1 - up, y1 = y + up;
            double a = Height(x, y), b = Height(x1, y1), t = !(a * b < 0) ? 0.5 : Math.Clamp(a / (a - b), 0.02, 0.98);
            return new PlanePoint(frame.WestM + ((x + 0.5 + (t * (x1 - x))) * frame.CellM), frame.SouthM + ((y + 0.5 + (t * (y1 - y))) * frame.CellM));
        }

        double Height(int x, int y) => frame.Contains(x, y) ? elevationM[frame.Index(x, y)] : 5;
    }

    /// <summary>Signed area of a ring, m2, positive when it turns left.</summary>
    public static double AreaM2(IReadOnlyList<PlanePoint> ring)
    {
        double twice = 0;
        for (int i = 0, j = ring.Count - 1; i < ring.Count; j = i++) twice += (ring[j].XM * ring[i].YM) - (ring[i].XM * ring[j].YM);
        return 0.5 * twice;
    }
}
