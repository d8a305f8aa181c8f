using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Arms;

/// <summary>Distances along the water within a region.</summary>
internal static class WaterDistance
{
    /// <summary>Distance from the sources to every cell of a region, cells (8 directions); infinite elsewhere.</summary>
    /// <param name="frame">Frame.</param>
    /// <param name="label">Region by cell.</param>
    /// <param name="region">The region.</param>
    /// <param name="sources">Cells of the region at distance 0.</param>
    public static float[] From(GridFrame frame, int[] label, int region, IEnumerable<int> sources)
    {
        float[] cells = new float[frame.Count];
        Array.Fill(cells, float.PositiveInfinity);
        PriorityQueue<int, float> open = new();
        foreach (int s in sources)
        {
            cells[s] = 0;
            open.Enqueue(s, 0);
        }

        while (open.TryDequeue(out int i, out float at))
        {
            if (at > cells[i]) continue;
            int cx = i % frame.Nx, cy = i / frame.Nx;
            for (int k = 0; k < 9; k++)
            {
                int dx = (k % 3) - 1, dy = (k / 3) - 1;
                if (!frame.Contains(cx + dx, cy + dy)) continue;
                int j = frame.Index(cx + dx, cy + dy);
                if (label[j] != region) continue;
                float reached = at + (dx != 0 && dy != 0 ? 1.41421356f : 1f);
                if (reached >= cells[j]) continue;
                cells[j] = reached;
                open.Enqueue(j, reached);
            }
        }

        return cells;
    }
}
