using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Shore;

/// <summary>Depths ready to be contoured: one ring of cells wider than the grid, with a value on the land that borders water.</summary>
/// <remarks>
/// Land beside water gets the depth to which the bed would run on, from each water neighbour and the cell behind it, which
/// puts the shoreline between the cells where it belongs. A bed that would still be deep there ends in a wall: its depth is
/// mirrored, so that all lines gather about halfway. Land elsewhere is NaN.
/// </remarks>
internal sealed class ContourField
{
    private readonly float[] _values;

    private ContourField(GridFrame frame, int width, int height, float[] values) =>
        (Frame, Width, Height, _values) = (frame, width, height, values);

    /// <summary>The grid's frame; node (1, 1) of the field is its cell (0, 0).</summary>
    public GridFrame Frame { get; }

    /// <summary>Nodes across.</summary>
    public int Width { get; }

    /// <summary>Nodes up.</summary>
    public int Height { get; }

    /// <summary>[Height*Width] values.</summary>
    public ReadOnlySpan<float> Values => _values;

    /// <summary>The field of a grid's depths.</summary>
    /// <param name="grid">Depths.</param>
    public static ContourField Of(DepthGrid grid)
    {
        GridFrame frame = grid.Frame;
        int width = frame.Nx + 2, height = frame.Ny + 2;
        float[] values = new float[width * height];
        Array.Fill(values, float.NaN);
        for (int iy = 0; iy < frame.Ny; iy++)
        {
            for (int ix = 0; ix < frame.Nx; ix++)
            {
                float depthM = grid.DepthM[frame.Index(ix, iy)];
                if (depthM > 0) values[((iy + 1) * width) + ix + 1] = depthM;
            }
        }

        if (grid.EdgeIsShore)
        {
            for (int y = 0; y < height; y++)
                for (int x = 0; x < width; x++)
                    if (!grid.IsWater(x - 1, y - 1)) values[(y * width) + x] = LandValue(grid, x - 1, y - 1);
        }

        return new ContourField(frame, width, height, values);
    }

    /// <summary>The field less a level that differs by cell; land takes the mean level of the water beside it.</summary>
    /// <param name="levelM">[Ny*Nx] level by cell.</param>
    public ContourField Minus(ReadOnlySpan<float> levelM)
    {
        float[] values = [.. _values];
        for (int y = 0; y < Height; y++)
        {
            for (int x = 0; x < Width; x++)
            {
                if (!float.IsNaN(values[(y * Width) + x])) values[(y * Width) + x] -= LevelNear(levelM, x - 1, y - 1);
            }
        }

        return new ContourField(Frame, Width, Height, values);
    }

    private float LevelNear(ReadOnlySpan<float> levelM, int ix, int iy)
    {
        if (Frame.Contains(ix, iy) && float.IsFinite(levelM[Frame.Index(ix, iy)])) return levelM[Frame.Index(ix, iy)];
        double sum = 0;
        int count = 0;
        for (int k = 0; k < 9; k++)
        {
            int x = ix + (k % 3) - 1, y = iy + (k / 3) - 1;
            if (!Frame.Contains(x, y) || !float.IsFinite(levelM[Frame.Index(x, y)])) continue;
            sum += levelM[Frame.Index(x, y)];
            count++;
        }

        return count > 0 ? (float)(sum / count) : float.NaN;
    }

    private static float LandValue(DepthGrid grid, int ix, int iy)
    {
        double sum = 0;
        int count = 0;
        for (int k = 0; k < 9; k++)
        {
            int dx = (k % 3) - 1, dy = (k / 3) - 1;
            if (!grid.IsWater(ix + dx, iy + dy)) continue;
            double near = grid.DepthM[grid.Frame.Index(ix + dx, iy + dy)];
            double beyond = grid.IsWater(ix + (2 * dx), iy + (2 * dy))
                ? (2 * near) - grid.DepthM[grid.Frame.Index(ix + (2 * dx), iy + (2 * dy))]
                : -near;
            sum += beyond < 0 ? Math.Max(beyond, -4 * near) : -Math.Min(beyond, near);
            count++;
        }

        return count > 0 ? (float)Math.Min(sum / count, -1e-3) : float.NaN;
    }
}
