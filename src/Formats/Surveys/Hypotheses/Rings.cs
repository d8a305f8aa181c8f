namespace SecondShore.Formats.Surveys.Hypotheses;

/// <summary>What closed lines and outlines tell by how they lie in each other: one height alone is an outline, values by lake are no contours.</summary>
internal static class Rings
{
    private const int MostRings = 3000;
    private const double NestedShare = 0.4;
    private const double SmallShare = 0.001;

    /// <summary>Sorts rings; false, with an error in the log, where they are no survey.</summary>
    public static bool Sort(string file, RawSurvey raw, ProblemLog log)
    {
        OutlinesOfOneHeight(raw);
        if (raw.Lines.Count == 0 && raw.Polygons.Count > 2 && NestedWithoutDepth(raw))
        {
            log.Error(file, $"its {raw.Polygons.Count} rings lie within each other and carry no depth that can be read: they are contours without their depths. Export the attribute with the depths too, or set survey.depth_column.");
            return false;
        }

        List<RawLine> rings = [.. raw.Lines.Where(l => l.Closed)];
        if (rings.Count is < 2 or > MostRings) return true;
        (int[] parent, double[] area) = Nest(rings);
        double largest = area.Max();
        int[] outer = [.. Enumerable.Range(0, rings.Count).Where(i => parent[i] < 0 && area[i] >= SmallShare * largest)];
        bool[] holds = new bool[rings.Count];
        foreach (int p in parent) if (p >= 0) holds[p] = true;
        // A register gives each of its lakes one value: nothing lies within anything, and no edge is shared.
        if (rings.Count >= 4 && rings.Count == raw.Lines.Count && outer.Count(i => !holds[i]) > 0.7 * rings.Count && !ShareCorners(rings))
        {
            log.Error(file, $"each of its {outer.Length} separate waters has one value ({rings.Min(r => r.Z):G6} to {rings.Max(r => r.Z):G6}): that is one number for a whole lake, not its contours. Take a file with the depths within the lake.");
            return false;
        }

        if (outer.Length > 1) raw.Waters.AddRange(outer.OrderByDescending(i => area[i]).Select(i => rings[i]));
        return true;
    }

    // A shore drawn at its level, or an outline with the lake's greatest depth: one value is no contour map.
    private static void OutlinesOfOneHeight(RawSurvey raw)
    {
        if (raw.Lines.Count == 0 || raw.Points.Count > 0 || raw.Raster is not null || !raw.Lines.TrueForAll(l => l.Z == raw.Lines[0].Z)) return;
        int open = raw.Lines.Count(l => !l.Closed);
        if (open == raw.Lines.Count || (open > 0 && raw.Sense != DepthSense.Elevation)) return;
        raw.Doubts.Add($"All its shapes stand at {raw.Lines[0].Z}: taken as outlines at that level, not as contours.");
        if (open > 0) raw.Doubts.Add($"{open} lines are open pieces, not loops, and cannot serve as a shoreline.");
        raw.Polygons.AddRange(RingNesting.Nest([.. raw.Lines.Where(l => l.Closed).Select(l => (l.X, l.Y))]));
        raw.Lines.Clear();
        (raw.Sense, raw.Unit, raw.OddUnit) = (null, null, false);
    }

    private static bool NestedWithoutDepth(RawSurvey raw)
    {
        List<RawLine> rings = [.. raw.Polygons.Take(MostRings).Select(p => new RawLine(p.Outer.X, p.Outer.Y, 0, true))];
        return Nest(rings).Parent.Count(p => p >= 0) > NestedShare * rings.Count;
    }

    private static bool ShareCorners(List<RawLine> rings)
    {
        HashSet<(double, double)> seen = [];
        int shared = 0, all = 0;
        foreach (RawLine ring in rings)
            for (int i = 0; i < ring.X.Length; i += Math.Max(1, ring.X.Length / 400), all++) if (!seen.Add((ring.X[i], ring.Y[i]))) shared++;
        return shared > 0.03 * all;
    }

    /// <summary>The smallest ring around each, and the area of each one's box.</summary>
    private static (int[] Parent, double[] Area) Nest(List<RawLine> rings)
    {
        (double West, double South, double East, double North)[] boxes = [.. rings.Select(r => (r.X.Min(), r.Y.Min(), r.X.Max(), r.Y.Max()))];
        double[] area = [.. boxes.Select(b => (b.East - b.West) * (b.North - b.South))];
        int[] order = [.. Enumerable.Range(0, rings.Count).OrderByDescending(i => area[i])], parent = new int[rings.Count];
        for (int k = 0; k < order.Length; k++)
        {
            int i = order[k];
            parent[i] = -1;
            for (int j = k - 1; j >= 0 && parent[i] < 0; j--)
            {
                (double west, double south, double east, double north) = boxes[order[j]];
                if (west <= boxes[i].West && east >= boxes[i].East && south <= boxes[i].South && north >= boxes[i].North
                    && area[order[j]] > area[i] && RingNesting.Inside((rings[order[j]].X, rings[order[j]].Y), rings[i].X[0], rings[i].Y[0])) parent[i] = order[j];
            }
        }

        return (parent, area);
    }
}
