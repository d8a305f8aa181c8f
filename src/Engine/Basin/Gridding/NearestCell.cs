namespace SecondShore.Engine.Basin.Gridding;

/// <summary>For every cell the nearest marked cell, exact in straight distance (Felzenszwalb2012, two passes of parabolas).</summary>
internal static class NearestCell
{
    /// <summary>Nearest marked cell and the distance to it.</summary>
    /// <param name="marked">[ny*nx] whether a cell is a source.</param>
    /// <param name="nx">Columns.</param>
    /// <param name="ny">Rows.</param>
    /// <returns>Index of the nearest source by cell, -1 when there is none; squared distance, cells squared.</returns>
    public static (int[] Nearest, float[] SquaredCells) Of(ReadOnlySpan<bool> marked, int nx, int ny)
    {
        int[] nearest = new int[marked.Length];
        float[] squared = new float[marked.Length];
        Columns(marked, nx, ny, nearest, squared);
        int longest = Math.Max(nx, ny);
        int[] seat = new int[longest];
        double[] edge = new double[longest + 1];
        int[] rowNearest = new int[nx];
        float[] rowSquared = new float[nx];
        for (int iy = 0; iy < ny; iy++)
        {
            nearest.AsSpan(iy * nx, nx).CopyTo(rowNearest);
            squared.AsSpan(iy * nx, nx).CopyTo(rowSquared);
            Row(rowNearest, rowSquared, nearest.AsSpan(iy * nx, nx), squared.AsSpan(iy * nx, nx), seat, edge);
        }

        return (nearest, squared);
    }

    // Along a column only the nearest source above and below matter. Rows stand in for indices until the second pass.
    private static void Columns(ReadOnlySpan<bool> marked, int nx, int ny, int[] nearest, float[] squared)
    {
        int[] last = new int[nx];
        Array.Fill(last, -1);
        for (int iy = 0; iy < ny; iy++)
        {
            for (int ix = 0, i = iy * nx; ix < nx; ix++, i++)
            {
                if (marked[i]) last[ix] = iy;
                nearest[i] = last[ix];
            }
        }

        Array.Fill(last, -1);
        for (int iy = ny - 1; iy >= 0; iy--)
        {
            for (int ix = 0, i = iy * nx; ix < nx; ix++, i++)
            {
                int row = nearest[i], above = last[ix];
                if (above >= 0 && (row < 0 || above - iy < iy - row)) row = above;
                last[ix] = row;
                if (row < 0) { squared[i] = float.PositiveInfinity; continue; }
                float rows = row - iy;
                nearest[i] = (row * nx) + ix;
                squared[i] = rows * rows;
            }
        }
    }

    // Lower envelope of parabolas over one row.
    private static void Row(int[] source, float[] height, Span<int> nearest, Span<float> squared, int[] seat, double[] edge)
    {
        int last = -1;
        for (int q = 0; q < nearest.Length; q++)
        {
            if (source[q] < 0) continue;
            double cut = double.NegativeInfinity;
            while (last >= 0)
            {
                int v = seat[last];
                cut = (height[q] + ((double)q * q) - height[v] - ((double)v * v)) / (2.0 * (q - v));
                if (cut > edge[last]) break;
                last--;
            }

            last++;
            seat[last] = q;
            edge[last] = last == 0 ? double.NegativeInfinity : cut;
            edge[last + 1] = double.PositiveInfinity;
        }

        if (last < 0) return;
        for (int q = 0, k = 0; q < nearest.Length; q++)
        {
            while (edge[k + 1] < q) k++;
            int v = seat[k];
            nearest[q] = source[v];
            squared[q] = height[v] + ((float)(q - v) * (q - v));
        }
    }
}
