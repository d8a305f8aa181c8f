using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Day;

/// <summary>Pulls a way straight at any angle: vertices that are not needed go, corners are cut as far as the water allows.</summary>
internal sealed class RouteSmoother
{
    private readonly NavigableWater _water;
    private readonly float[] _slowness;
    private readonly int _block, _blocksX;

    public RouteSmoother(NavigableWater water, float[] slowness, int block, int blocksX)
    {
        _water = water;
        _slowness = slowness;
        _block = block;
        _blocksX = blocksX;
    }

    /// <summary>A way of the same ends that takes no longer and crosses nothing blocked.</summary>
    public List<PlanePoint> Smooth(List<PlanePoint> way)
    {
        if (way.Count < 3) return way;
        List<PlanePoint> pulled = Pull(way);
        for (int pass = 0; pass < 3 && pulled.Count > 2; pass++)
        {
            List<PlanePoint> cut = Pull(CutCorners(pulled));
            if (TimeS(cut) > TimeS(pulled) * 0.9995) break;
            pulled = cut;
        }

        return pulled;
    }

    /// <summary>Time along a way, s.</summary>
    public double TimeS(IReadOnlyList<PlanePoint> way)
    {
        double s = 0;
        for (int i = 1; i < way.Count; i++) s += StraightS(way[i - 1], way[i]);
        return s;
    }

    private double StraightS(PlanePoint a, PlanePoint b) => _water.StraightS(a, b, _slowness, _block, _blocksX);

    // From each kept vertex, the farthest later one that is seen and reached no later straight than along the way.
    private List<PlanePoint> Pull(List<PlanePoint> way)
    {
        double[] alongS = new double[way.Count];
        for (int i = 1; i < way.Count; i++) alongS[i] = alongS[i - 1] + StraightS(way[i - 1], way[i]);
        List<PlanePoint> kept = [way[0]];
        int at = 0;
        while (at < way.Count - 1)
        {
            int next = at + 1;
            // Doubling, then closing in: sight is lost once on most shores, and a missed later sight only costs a vertex.
            int step = 1;
            while (at + step < way.Count && Shortcut(at, at + step)) { next = at + step; step *= 2; }
            int low = next, high = Math.Min(way.Count - 1, at + step);
            while (high > low)
            {
                int middle = (low + high + 1) / 2;
                if (Shortcut(at, middle)) low = middle; else high = middle - 1;
            }

            next = low;
            kept.Add(way[next]);
            at = next;
        }

        return kept;

        bool Shortcut(int from, int to) => to == from + 1 || StraightS(way[from], way[to]) <= alongS[to] - alongS[from] + 1e-6;
    }

    // A vertex is replaced by the two ends of the best chord that cuts its corner.
    private List<PlanePoint> CutCorners(List<PlanePoint> way)
    {
        List<PlanePoint> cut = [way[0]];
        for (int i = 1; i < way.Count - 1; i++)
        {
            PlanePoint before = cut[^1], corner = way[i], after = way[i + 1];
            double low = 0, high = 1;
            for (int k = 0; k < 6; k++)
            {
                double share = 0.5 * (low + high);
                PlanePoint p = Between(corner, before, share), q = Between(corner, after, share);
                if (StraightS(p, q) <= StraightS(p, corner) + StraightS(corner, q) + 1e-9) low = share; else high = share;
            }

            if (low < 0.02) { cut.Add(corner); continue; }
            cut.Add(Between(corner, before, low));
            cut.Add(Between(corner, after, low));
        }

        cut.Add(way[^1]);
        return cut;
    }

    private static PlanePoint Between(PlanePoint a, PlanePoint b, double share) =>
        new(a.XM + (share * (b.XM - a.XM)), a.YM + (share * (b.YM - a.YM)));
}
