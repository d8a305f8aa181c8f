namespace SecondShore.Formats.Surveys.Hypotheses;

/// <summary>Points that lie together, far from all others.</summary>
/// <param name="Indices">Which points, ascending.</param>
/// <param name="X">Middle of the first number.</param>
/// <param name="Y">Middle of the second.</param>
internal sealed record RowGroup(IReadOnlyList<int> Indices, double X, double Y)
{
    private const int FewestPoints = 12;

    /// <summary>Groups of a set of points, the largest first; one where nothing lies apart.</summary>
    /// <param name="points">The points, in their own numbers.</param>
    /// <param name="kilometre">A kilometre in those numbers.</param>
    public static List<RowGroup> Of(RawPoints points, double kilometre)
    {
        int n = points.X.Length;
        if (n < FewestPoints) return [new RowGroup([.. Enumerable.Range(0, n)], 0, 0)];
        double[] cutsX = Cuts(points.X, kilometre), cutsY = Cuts(points.Y, kilometre);
        Dictionary<(int, int), List<int>> found = [];
        for (int i = 0; i < n; i++)
        {
            (int, int) cell = (Rank(cutsX, points.X[i]), Rank(cutsY, points.Y[i]));
            if (!found.TryGetValue(cell, out List<int>? list)) found[cell] = list = [];
            list.Add(i);
        }

        return [.. found.Values.OrderByDescending(l => l.Count).Select(l => new RowGroup(l, Median(points.X, l), Median(points.Y, l)))];
    }

    private static int Rank(double[] cuts, double value)
    {
        int at = Array.BinarySearch(cuts, value);
        return at < 0 ? ~at : at;
    }

    // Where sorted numbers leave a gap of three times what the middle half spans, and a kilometre.
    private static double[] Cuts(double[] values, double kilometre)
    {
        double[] sorted = [.. values];
        Array.Sort(sorted);
        int n = sorted.Length;
        // A quarter elsewhere must not widen the measure: the shortest span of half the points.
        double half = double.PositiveInfinity;
        for (int i = 0; i + (n / 2) < n; i++) half = Math.Min(half, sorted[i + (n / 2)] - sorted[i]);
        double gap = (6 * half) + kilometre;
        List<double> cuts = [];
        for (int i = 1; i < n && cuts.Count < 200; i++) if (sorted[i] - sorted[i - 1] > gap) cuts.Add((sorted[i] + sorted[i - 1]) / 2);
        return [.. cuts];
    }

    private static double Median(double[] values, List<int> of)
    {
        double[] sorted = [.. of.Select(i => values[i])];
        Array.Sort(sorted);
        return sorted[sorted.Length / 2];
    }

    /// <summary>The points of a group alone; a track is broken where points are left out.</summary>
    public static RawPoints Keep(RawPoints points, IReadOnlyList<int> indices)
    {
        List<int> kept = [.. indices], breaks = [];
        foreach (int at in points.TrackBreaks)
        {
            int moved = kept.BinarySearch(at);
            moved = moved < 0 ? ~moved : moved;
            if (moved > 0 && moved < kept.Count && (breaks.Count == 0 || breaks[^1] < moved)) breaks.Add(moved);
        }

        return new RawPoints([.. kept.Select(i => points.X[i])], [.. kept.Select(i => points.Y[i])], [.. kept.Select(i => points.Z[i])], breaks);
    }
}
