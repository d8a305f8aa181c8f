namespace SecondShore.Formats.Surveys.Hypotheses;

/// <summary>Rings that share edges: bands of depth side by side become contours, zones without a depth are no shore.</summary>
internal static class AdjoiningRings
{
    private const int MostEdges = 4_000_000;
    private const double BandShare = 0.15;
    private const double ZoneShare = 0.25;

    private readonly record struct Edge(double Ax, double Ay, double Bx, double By)
    {
        public static Edge Of(double ax, double ay, double bx, double by) =>
            ax < bx || (ax == bx && ay <= by) ? new Edge(ax, ay, bx, by) : new Edge(bx, by, ax, ay);
    }

    /// <summary>Sorts the rings of a raw survey; false, with an error in the log, where they are zones.</summary>
    public static bool Sort(string file, RawSurvey raw, ProblemLog log, CancellationToken cancellation)
    {
        if (raw.Lines.Count == 0 && raw.Polygons.Count > 2 && ShareOfZones(raw, cancellation) > ZoneShare)
        {
            log.Error(file, $"its {raw.Polygons.Count} polygons adjoin each other and carry no depth: they are zones of one water, not shores. Take the outline of the lake, and its depths.");
            return false;
        }

        if (!Rings.Sort(file, raw, log)) return false;
        if (raw.Lines.Count > 1) CutBands(raw, cancellation);
        return true;
    }

    // Lakes of their own share no corner; zones of one water share most of theirs.
    private static double ShareOfZones(RawSurvey raw, CancellationToken cancellation)
    {
        Dictionary<(double, double), int> seen = [];
        long all = 0, shared = 0;
        for (int p = 0; p < raw.Polygons.Count; p++)
        {
            cancellation.ThrowIfCancellationRequested();
            (double[] x, double[] y) = raw.Polygons[p].Outer;
            if (all + x.Length > MostEdges) return 0;
            for (int i = 0; i < x.Length; i++, all++)
                if (seen.TryGetValue((x[i], y[i]), out int of) ? of != p : !seen.TryAdd((x[i], y[i]), p)) shared++;
        }

        return all == 0 ? 0 : 2.0 * shared / all;
    }

    // Of an edge between two bands the deeper one's value stays: a band is named by the depth at which it begins.
    private static void CutBands(RawSurvey raw, CancellationToken cancellation)
    {
        Dictionary<Edge, double> deepest = [];
        long all = 0, shared = 0;
        double sign = raw.Sense == DepthSense.Elevation || raw.Lines.Count(l => l.Z < 0) * 2 > raw.Lines.Count(l => l.Z != 0) ? -1 : 1;
        foreach (RawLine line in raw.Lines)
        {
            cancellation.ThrowIfCancellationRequested();
            if (!line.Closed) continue;
            if (all + line.X.Length > MostEdges) return;
            for (int i = 0, j = line.X.Length - 1; i < line.X.Length; j = i++, all++)
            {
                Edge edge = Edge.Of(line.X[j], line.Y[j], line.X[i], line.Y[i]);
                if (!deepest.TryGetValue(edge, out double before)) deepest[edge] = line.Z;
                else
                {
                    shared++;
                    if (sign * line.Z > sign * before) deepest[edge] = line.Z;
                }
            }
        }

        if (shared < BandShare * all) return;
        List<RawLine> cut = [];
        foreach (RawLine line in raw.Lines)
        {
            if (line.Closed) Cut(line, deepest, cut);
            else cut.Add(line);
        }

        raw.Lines.Clear();
        raw.Lines.AddRange(cut);
        raw.Doubts.Add("Its polygons are bands of depth side by side: each boundary is taken as the contour of the deeper band.");
    }

    private static void Cut(RawLine line, Dictionary<Edge, double> deepest, List<RawLine> into)
    {
        int n = line.X.Length;
        bool[] own = new bool[n];
        int kept = 0, start = -1;
        for (int i = 0; i < n; i++)
        {
            int next = (i + 1) % n;
            own[i] = deepest[Edge.Of(line.X[i], line.Y[i], line.X[next], line.Y[next])] == line.Z;
            if (own[i]) kept++;
            else start = next;
        }

        if (kept == n) into.Add(line);
        if (kept == n || kept == 0) return;
        List<double> x = [], y = [];
        for (int k = 0; k < n; k++)
        {
            int i = (start + k) % n, next = (i + 1) % n;
            if (own[i])
            {
                if (x.Count == 0) Add(i);
                Add(next);
            }
            else
            {
                End();
            }
        }

        End();

        void Add(int i)
        {
            x.Add(line.X[i]);
            y.Add(line.Y[i]);
        }

        void End()
        {
            if (x.Count > 1) into.Add(new RawLine([.. x], [.. y], line.Z, false));
            x.Clear();
            y.Clear();
        }
    }
}
