using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Arms;

/// <summary>Hollows of the bed that stay apart until the water has risen well over their floors.</summary>
/// <remarks>
/// Water rises from the floors (a watershed over a merge tree): where two hollows meet, the shallower one is kept apart when
/// it is deep enough below the sill and wide enough at it, else it becomes part of the other.
/// </remarks>
internal static class SillBasins
{
    /// <summary>Smallest relief that is told from the noise of a survey, m.</summary>
    public static readonly double LeastReliefM = 1.5;

    /// <summary>Basin by cell, -1 on land.</summary>
    public static int[] Label(DepthGrid grid, double sillShare, int leastCells)
    {
        GridFrame frame = grid.Frame;
        int[] order = DeepestFirst(grid.DepthM);
        int[] label = new int[frame.Count];
        Array.Fill(label, -1);
        List<int> parent = [], cells = [];
        List<float> floorM = [];
        int[] roots = new int[8];
        foreach (int i in order)
        {
            float depthM = grid.DepthM[i];
            int found = Roots(frame, label, parent, i, roots);
            if (found == 0)
            {
                label[i] = parent.Count;
                parent.Add(parent.Count);
                cells.Add(1);
                floorM.Add(depthM);
                continue;
            }

            int into = roots[0];
            for (int k = 1; k < found; k++)
                if (floorM[roots[k]] > floorM[into]) into = roots[k];
            for (int k = 0; k < found; k++)
            {
                int other = roots[k];
                if (other == into) continue;
                double reliefM = floorM[other] - depthM;
                if (reliefM >= Math.Max(LeastReliefM, sillShare * floorM[other]) && cells[other] >= leastCells) continue;
                parent[other] = into;
                cells[into] += cells[other];
            }

            label[i] = into;
            cells[into]++;
        }

        for (int i = 0; i < label.Length; i++) if (label[i] >= 0) label[i] = Find(parent, label[i]);
        return label;
    }

    private static int Roots(GridFrame frame, int[] label, List<int> parent, int i, int[] roots)
    {
        int cx = i % frame.Nx, cy = i / frame.Nx, found = 0;
        for (int k = 0; k < 9; k++)
        {
            int x = cx + (k % 3) - 1, y = cy + (k / 3) - 1;
            if (!frame.Contains(x, y) || label[frame.Index(x, y)] < 0) continue;
            int root = Find(parent, label[frame.Index(x, y)]);
            if (Array.IndexOf(roots, root, 0, found) < 0) roots[found++] = root;
        }

        return found;
    }

    private static int[] DeepestFirst(float[] depthM)
    {
        int count = 0;
        for (int i = 0; i < depthM.Length; i++) if (depthM[i] > 0) count++;
        float[] keys = new float[count];
        int[] order = new int[count];
        for (int i = 0, k = 0; i < depthM.Length; i++)
            if (depthM[i] > 0) (keys[k], order[k++]) = (-depthM[i], i);
        Array.Sort(keys, order);
        return order;
    }

    private static int Find(List<int> parent, int i)
    {
        while (parent[i] != i) i = parent[i] = parent[parent[i]];
        return i;
    }
}
