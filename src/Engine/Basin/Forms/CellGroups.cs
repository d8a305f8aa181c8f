using SecondShore.Engine.Basin.Terrain;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Forms;

/// <summary>Connected groups of marked cells, and their long axis as a path of cells.</summary>
internal static class CellGroups
{
    /// <summary>Groups of marked cells that touch by side or corner, each in index order of discovery.</summary>
    public static List<List<int>> Of(bool[] marked, GridFrame frame, int leastCells)
    {
        bool[] seen = new bool[marked.Length];
        List<List<int>> groups = [];
        Stack<int> open = new();
        for (int start = 0; start < marked.Length; start++)
        {
            if (!marked[start] || seen[start]) continue;
            List<int> group = [];
            seen[start] = true;
            open.Push(start);
            while (open.TryPop(out int c))
            {
                group.Add(c);
                int cx = c % frame.Nx, cy = c / frame.Nx;
                for (int k = 0; k < 8; k++)
                {
                    int x = cx + Compass8.StepX[k], y = cy + Compass8.StepY[k];
                    if (!frame.Contains(x, y)) continue;
                    int j = frame.Index(x, y);
                    if (!marked[j] || seen[j]) continue;
                    seen[j] = true;
                    open.Push(j);
                }
            }

            if (group.Count >= leastCells) groups.Add(group);
        }

        return groups;
    }

    /// <summary>The longest of the shortest paths through a group: from the cell farthest from any start to the one farthest from it.</summary>
    public static List<int> LongAxis(List<int> group, GridFrame frame)
    {
        HashSet<int> cells = [.. group];
        int end = Farthest(group[0], cells, frame, out _);
        int other = Farthest(end, cells, frame, out Dictionary<int, int> from);
        List<int> path = [other];
        while (path[^1] != end) path.Add(from[path[^1]]);
        return path;
    }

    /// <summary>Shrinks (negative) or grows (positive) marked cells by a distance in cells, by distance to the edge.</summary>
    public static bool[] Grow(bool[] marked, GridFrame frame, double cells)
    {
        bool shrink = cells < 0;
        bool[] target = new bool[marked.Length];
        for (int i = 0; i < marked.Length; i++) target[i] = shrink ? !marked[i] : marked[i];
        if (!Array.Exists(target, t => t)) return (bool[])marked.Clone();
        float[] squared = Gridding.NearestCell.Of(target, frame.Nx, frame.Ny).SquaredCells;
        double limit = cells * cells;
        bool[] result = new bool[marked.Length];
        for (int i = 0; i < marked.Length; i++) result[i] = shrink ? squared[i] > limit : squared[i] <= limit;
        return result;
    }

    private static int Farthest(int start, HashSet<int> cells, GridFrame frame, out Dictionary<int, int> from)
    {
        Dictionary<int, double> cost = new() { [start] = 0 };
        from = [];
        PriorityQueue<int, double> open = new([(start, 0.0)]);
        int last = start;
        double most = 0;
        while (open.TryDequeue(out int c, out double d))
        {
            if (d > cost[c]) continue;
            if (d > most) (most, last) = (d, c);
            int cx = c % frame.Nx, cy = c / frame.Nx;
            for (int k = 0; k < 8; k++)
            {
                int x = cx + Compass8.StepX[k], y = cy + Compass8.StepY[k];
                if (!frame.Contains(x, y)) continue;
                int j = frame.Index(x, y);
                if (!cells.Contains(j)) continue;
                double next = d + Compass8.Length[k];
                if (cost.TryGetValue(j, out double known) && known <= next) continue;
                cost[j] = next;
                from[j] = c;
                open.Enqueue(j, next);
            }
        }

        return last;
    }
}
