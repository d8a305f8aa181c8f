namespace SecondShore.Formats.Surveys;

/// <summary>Sorts rings into waters and islands by which ring lies within which, whatever their turn.</summary>
internal static class RingNesting
{
    private static readonly int MostCompared = 4000;

    /// <summary>Polygons of rings: a ring within an odd number of others is an island of the smallest ring around it.</summary>
    public static List<RawPolygon> Nest(IReadOnlyList<(double[] X, double[] Y)> rings)
    {
        if (rings.Count > MostCompared) return [.. rings.Select(r => new RawPolygon(r, []))];
        Box[] boxes = [.. rings.Select(r => new Box(r.X.Min(), r.Y.Min(), r.X.Max(), r.Y.Max()))];
        int[] order = [.. Enumerable.Range(0, rings.Count).OrderByDescending(i => boxes[i].Area)];
        int[] parent = new int[rings.Count], depth = new int[rings.Count];
        List<(double[] X, double[] Y)>[] islands = new List<(double[] X, double[] Y)>[rings.Count];
        List<int> outers = [];
        for (int k = 0; k < order.Length; k++)
        {
            int i = order[k];
            parent[i] = -1;
            for (int j = k - 1; j >= 0 && parent[i] < 0; j--)
                if (boxes[order[j]].Holds(boxes[i]) && Inside(rings[order[j]], rings[i].X[0], rings[i].Y[0])) parent[i] = order[j];
            depth[i] = parent[i] < 0 ? 0 : depth[parent[i]] + 1;
            islands[i] = [];
            if (depth[i] % 2 == 0) outers.Add(i);
            else islands[parent[i]].Add(rings[i]);
        }

        return [.. outers.Select(i => new RawPolygon(rings[i], islands[i]))];
    }

    /// <summary>Whether a place lies within a ring.</summary>
    internal static bool Inside((double[] X, double[] Y) ring, double x, double y)
    {
        bool inside = false;
        for (int i = 0, j = ring.X.Length - 1; i < ring.X.Length; j = i++)
        {
            if ((ring.Y[i] > y) != (ring.Y[j] > y)
                && x < ((ring.X[j] - ring.X[i]) * (y - ring.Y[i]) / (ring.Y[j] - ring.Y[i])) + ring.X[i]) inside = !inside;
        }

        return inside;
    }

    private readonly record struct Box(double West, double South, double East, double North)
    {
        public double Area => (East - West) * (North - South);

        public bool Holds(Box other) => other.West >= West && other.East <= East && other.South >= South && other.North <= North;
    }
}
