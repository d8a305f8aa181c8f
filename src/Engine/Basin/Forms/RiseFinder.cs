using SecondShore.Engine.Basin.Terrain;

namespace SecondShore.Engine.Basin.Forms;

/// <summary>A rise (or, upside down, a hollow): top cell, the pass to a higher neighbour, and height over that pass.</summary>
internal sealed record FoundRise(int Top, int Pass, double HeightM, int HigherTop, double HigherM, List<int> Core);

/// <summary>Finds rises by letting the water fall: each new island is a top, and the lower of two that join ends at their pass.</summary>
internal static class RiseFinder
{
    /// <summary>Rises of at least a height.</summary>
    /// <param name="bed">The bed.</param>
    /// <param name="hollows">Whether to look at the bed upside down.</param>
    /// <param name="leastM">Least height.</param>
    public static List<FoundRise> Find(Bed bed, bool hollows, double leastM)
    {
        int n = bed.Frame.Count;
        float[] h = new float[n];
        List<int> order = new(bed.WaterCells);
        for (int i = 0; i < n; i++)
        {
            h[i] = hollows ? -bed.Z[i] : bed.Z[i];
            if (bed.IsWet(i)) order.Add(i);
        }

        order.Sort((a, b) => h[b] != h[a] ? h[b].CompareTo(h[a]) : a.CompareTo(b));
        int[] parent = new int[n + 1];
        Array.Fill(parent, -1);
        int land = n;
        parent[land] = land;
        List<FoundRise> found = [];
        foreach (int c in order)
        {
            parent[c] = c;
            int cx = c % bed.Frame.Nx, cy = c / bed.Frame.Nx;
            for (int k = 0; k < 8; k++)
            {
                int x = cx + Compass8.StepX[k], y = cy + Compass8.StepY[k];
                bool inside = bed.Frame.Contains(x, y);
                int j = inside ? bed.Frame.Index(x, y) : -1;
                bool isLand = !inside || !bed.IsWet(j);
                if (isLand && hollows) continue;
                if (!isLand && parent[j] < 0) continue;
                Join(isLand ? land : j);
            }

            void Join(int other)
            {
                int a = Root(c), b = Root(other);
                if (a == b) return;
                int high = a == land ? a : b == land ? b : h[a] > h[b] || (h[a] == h[b] && a < b) ? a : b, low = high == a ? b : a;
                parent[low] = high;
                double heightM = h[low] - h[c];
                if (heightM >= leastM)
                    found.Add(new FoundRise(low, c, heightM, high == land ? -1 : high, high == land ? double.PositiveInfinity : h[high] - h[c], Core(bed, h, low, h[c] + (0.4 * heightM))));
            }
        }

        return found;

        int Root(int i)
        {
            while (parent[i] != i)
            {
                parent[i] = parent[parent[i]];
                i = parent[i];
            }

            return i;
        }
    }

    // Cells about the top that stand above a level.
    private static List<int> Core(Bed bed, float[] h, int top, double level)
    {
        List<int> cells = [];
        HashSet<int> seen = [top];
        Stack<int> open = new([top]);
        while (open.TryPop(out int c))
        {
            cells.Add(c);
            int cx = c % bed.Frame.Nx, cy = c / bed.Frame.Nx;
            for (int k = 0; k < 8; k++)
            {
                int x = cx + Compass8.StepX[k], y = cy + Compass8.StepY[k];
                if (!bed.Frame.Contains(x, y)) continue;
                int j = bed.Frame.Index(x, y);
                if (bed.IsWet(j) && h[j] >= level && seen.Add(j)) open.Push(j);
            }
        }

        return cells;
    }
}
