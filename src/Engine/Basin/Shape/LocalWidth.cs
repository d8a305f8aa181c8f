using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Shape;

/// <summary>The radius of the largest circle inside the water that holds a cell: half the width of the water there.</summary>
internal static class LocalWidth
{
    /// <summary>Half widths, cells; 0 on land.</summary>
    /// <param name="toShore">[Ny*Nx] distance to the shore, cells; 0 on land.</param>
    /// <param name="frame">Frame.</param>
    /// <param name="cancel">Stops the work.</param>
    public static float[] Of(float[] toShore, GridFrame frame, CancellationToken cancel)
    {
        float[] width = (float[])toShore.Clone();
        int[] ridge = [.. Enumerable.Range(0, toShore.Length).Where(i => toShore[i] > 0 && IsRidge(toShore, frame, i))];
        Array.Sort([.. ridge.Select(i => -toShore[i])], ridge);
        foreach (int c in ridge)
        {
            cancel.ThrowIfCancellationRequested();
            Paint(width, frame, c, toShore[c]);
        }

        return width;
    }

    // A circle that lies within its neighbour's tells nothing.
    private static bool IsRidge(float[] toShore, GridFrame frame, int i)
    {
        int x = i % frame.Nx, y = i / frame.Nx;
        for (int k = 0; k < 9; k++)
        {
            int dx = (k % 3) - 1, dy = (k / 3) - 1;
            if (k == 4 || !frame.Contains(x + dx, y + dy)) continue;
            float apart = dx != 0 && dy != 0 ? 1.41421356f : 1f;
            if (toShore[frame.Index(x + dx, y + dy)] >= toShore[i] + (0.995f * apart)) return false;
        }

        return true;
    }

    private static void Paint(float[] width, GridFrame frame, int centre, float radius)
    {
        int x = centre % frame.Nx, y = centre / frame.Nx, reach = (int)radius;
        for (int dy = -reach; dy <= reach; dy++)
        {
            if ((uint)(y + dy) >= (uint)frame.Ny) continue;
            int half = (int)MathF.Sqrt((radius * radius) - (dy * dy));
            int from = Math.Max(0, x - half), to = Math.Min(frame.Nx - 1, x + half);
            Span<float> row = width.AsSpan(((y + dy) * frame.Nx) + from, to - from + 1);
            for (int k = 0; k < row.Length; k++) if (row[k] > 0 && row[k] < radius) row[k] = radius;
        }
    }
}
