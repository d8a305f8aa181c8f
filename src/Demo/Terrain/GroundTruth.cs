namespace SecondShore.Demo.Terrain;

/// <summary>Tells level and sloping bottom apart on the clean height field, before unevenness is added.</summary>
internal static class GroundTruth
{
    public static GroundKind[] Of(Canvas canvas, float[] channelM, LakeRecipe recipe, bool[] lake)
    {
        int nx = canvas.Frame.Nx, ny = canvas.Frame.Ny;
        GroundKind[] ground = new GroundKind[canvas.Frame.Count];
        double bankM = recipe.ChannelCutM / Valley.BankTan;
        for (int iy = 0; iy < ny; iy++)
        {
            for (int ix = 0; ix < nx; ix++)
            {
                int i = (iy * nx) + ix;
                if (!lake[i] || canvas.ElevationM[i] > -0.3) continue;
                double tan = canvas.SlopeAt(ix, iy);
                ground[i] = channelM[i] <= bankM || canvas.Taken[i] ? GroundKind.Either
                    : tan < 0.055 ? GroundKind.Flat : tan is > 0.1 and < 0.5 ? GroundKind.Slope : GroundKind.Either;
            }
        }

        DropSmall(ground, nx, ny, GroundKind.Flat, (int)(4 * recipe.FormM * recipe.FormM / canvas.Frame.CellAreaM2));
        DropSmall(ground, nx, ny, GroundKind.Slope, (int)(4 * recipe.FormM * recipe.FormM / canvas.Frame.CellAreaM2));
        return ground;
    }

    /// <summary>Connected groups of cells of a kind, by the indices of their cells.</summary>
    public static List<List<int>> Groups(GroundKind[] ground, int nx, int ny, GroundKind kind)
    {
        bool[] seen = new bool[ground.Length];
        List<List<int>> groups = [];
        Stack<int> stack = new();
        for (int start = 0; start < ground.Length; start++)
        {
            if (seen[start] || ground[start] != kind) continue;
            List<int> group = [];
            stack.Push(start);
            seen[start] = true;
            while (stack.TryPop(out int i))
            {
                group.Add(i);
                int x = i % nx, y = i / nx;
                Visit(x - 1, y);
                Visit(x + 1, y);
                Visit(x, y - 1);
                Visit(x, y + 1);
            }

            groups.Add(group);
        }

        return groups;

        void Visit(int x, int y)
        {
            if ((uint)x >= (uint)nx || (uint)y >= (uint)ny) return;
            int j = (y * nx) + x;
            if (seen[j] || ground[j] != kind) return;
            seen[j] = true;
            stack.Push(j);
        }
    }

    private static void DropSmall(GroundKind[] ground, int nx, int ny, GroundKind kind, int least)
    {
        foreach (List<int> group in Groups(ground, nx, ny, kind))
        {
            if (group.Count >= least) continue;
            foreach (int i in group) ground[i] = GroundKind.Either;
        }
    }
}
