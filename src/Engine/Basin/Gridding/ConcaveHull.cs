namespace SecondShore.Engine.Basin.Gridding;

/// <summary>The part of a triangulation that soundings vouch for: land between shore marks goes, and long edges of the rim are dug away from outside.</summary>
/// <remarks>Source: DuckhamEtAl2008, with a length that follows from the survey's own gaps; the rule of land is ours.</remarks>
internal static class ConcaveHull
{
    /// <summary>Triangles kept after digging.</summary>
    /// <param name="mesh">Triangulation.</param>
    /// <param name="depthM">Depth by vertex, m: a triangle whose corners are all at 0 lies on land.</param>
    /// <param name="longestM">Longest hull edge that stays, m.</param>
    public static bool[] Dig(Triangulation mesh, ReadOnlySpan<float> depthM, double longestM)
    {
        int triangles = mesh.EdgeCount / 3;
        bool[] kept = new bool[triangles];
        for (int t = 0; t < triangles; t++) kept[t] = !mesh.IsGhost(t) && !IsLand(mesh, depthM, t);
        ReadOnlySpan<int> twin = mesh.Twin;
        PriorityQueue<int, double> outside = new();
        for (int e = 0; e < mesh.EdgeCount; e++)
            if (kept[e / 3] && !kept[twin[e] / 3]) Enqueue(mesh, outside, e, longestM);
        while (outside.TryDequeue(out int e, out _))
        {
            int t = e / 3;
            if (!kept[t]) continue;
            kept[t] = false;
            for (int k = 1; k <= 2; k++)
            {
                e = Triangulation.Next(e);
                if (kept[twin[e] / 3]) Enqueue(mesh, outside, twin[e], longestM);
            }
        }

        return kept;
    }

    /// <summary>Length that lets the survey's own gaps between tracks stand: twice the longest edge of the triangle in the middle of the water's area.</summary>
    /// <param name="mesh">Triangulation.</param>
    /// <param name="depthM">Depth by vertex, m, by which land is left out; empty where all of it counts.</param>
    public static double LongestM(Triangulation mesh, ReadOnlySpan<float> depthM)
    {
        List<(double EdgeM, double AreaM2)> list = [];
        ReadOnlySpan<int> origin = mesh.Origin;
        double total = 0;
        for (int t = 0; t < mesh.EdgeCount / 3; t++)
        {
            if (mesh.IsGhost(t) || IsLand(mesh, depthM, t)) continue;
            double longest = 0;
            for (int k = 0; k < 3; k++) longest = Math.Max(longest, LengthM(mesh, (3 * t) + k));
            int a = origin[3 * t], b = origin[(3 * t) + 1], c = origin[(3 * t) + 2];
            double areaM2 = 0.5 * (((mesh.VertexXM(b) - mesh.VertexXM(a)) * (mesh.VertexYM(c) - mesh.VertexYM(a)))
                - ((mesh.VertexYM(b) - mesh.VertexYM(a)) * (mesh.VertexXM(c) - mesh.VertexXM(a))));
            list.Add((longest, areaM2));
            total += areaM2;
        }

        list.Sort((p, q) => p.EdgeM.CompareTo(q.EdgeM));
        double below = 0;
        foreach ((double edgeM, double areaM2) in list)
        {
            below += areaM2;
            if (below >= 0.5 * total) return 2 * edgeM;
        }

        return 0;
    }

    /// <summary>Length of a half-edge between real vertices, m.</summary>
    public static double LengthM(Triangulation mesh, int edge)
    {
        int a = mesh.Origin[edge], b = mesh.Origin[Triangulation.Next(edge)];
        double dx = mesh.VertexXM(b) - mesh.VertexXM(a), dy = mesh.VertexYM(b) - mesh.VertexYM(a);
        return Math.Sqrt((dx * dx) + (dy * dy));
    }

    private static bool IsLand(Triangulation mesh, ReadOnlySpan<float> depthM, int t)
    {
        if (depthM.IsEmpty) return false;
        for (int k = 0; k < 3; k++) if (depthM[mesh.Origin[(3 * t) + k]] > 0) return false;
        return true;
    }

    private static void Enqueue(Triangulation mesh, PriorityQueue<int, double> queue, int edge, double longestM)
    {
        double lengthM = LengthM(mesh, edge);
        if (lengthM > longestM) queue.Enqueue(edge, -lengthM);
    }
}
