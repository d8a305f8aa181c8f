using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Gridding;

/// <summary>Waters of a grid that do not touch, even by a corner.</summary>
internal sealed class WaterPieces
{
    private WaterPieces(int[] label, List<int> cells)
    {
        (Label, Cells) = (label, cells);
        for (int k = 1; k < cells.Count; k++)
            if (cells[k] > cells[Largest]) Largest = k;
    }

    /// <summary>[Ny*Nx] piece by cell, -1 on land.</summary>
    public int[] Label { get; }

    /// <summary>Number of cells by piece.</summary>
    public IReadOnlyList<int> Cells { get; }

    /// <summary>Number of pieces.</summary>
    public int Count => Cells.Count;

    /// <summary>The piece with most cells.</summary>
    public int Largest { get; }

    /// <summary>Finds the pieces of a grid of depths, where above 0 is water.</summary>
    public static WaterPieces Of(ReadOnlySpan<float> depthM, GridFrame frame)
    {
        int[] label = new int[depthM.Length], queue = new int[depthM.Length];
        Array.Fill(label, -1);
        List<int> cells = [];
        for (int seed = 0; seed < depthM.Length; seed++)
        {
            if (label[seed] >= 0 || !(depthM[seed] > 0)) continue;
            int head = 0, tail = 0;
            queue[tail++] = seed;
            label[seed] = cells.Count;
            while (head < tail)
            {
                int i = queue[head++], cx = i % frame.Nx, cy = i / frame.Nx;
                for (int dy = -1; dy <= 1; dy++)
                {
                    for (int dx = -1; dx <= 1; dx++)
                    {
                        if (!frame.Contains(cx + dx, cy + dy)) continue;
                        int j = i + (dy * frame.Nx) + dx;
                        if (label[j] >= 0 || !(depthM[j] > 0)) continue;
                        label[j] = cells.Count;
                        queue[tail++] = j;
                    }
                }
            }

            cells.Add(tail);
        }

        return new WaterPieces(label, cells);
    }
}
