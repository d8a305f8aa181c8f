namespace SecondShore.Engine.Basin.Shape;

/// <summary>Sag of a sheet held at the shore and loaded evenly: smooth, and deepest where the water is wide in every direction.</summary>
internal static class Membrane
{
    private const int MostSweeps = 3000;
    private const float Settled = 1e-4f;

    /// <summary>Sag by water cell, 1 where it is largest. Successive over-relaxation (Young1954) of Poisson's equation.</summary>
    /// <param name="shape">The outline with its distances.</param>
    /// <param name="cancel">Stops the work.</param>
    public static float[] Of(ShapeFields shape, CancellationToken cancel)
    {
        int[] cells = shape.Cells;
        int n = cells.Length, nx = shape.Frame.Nx;
        int[] next = new int[4 * n];
        for (int k = 0; k < n; k++)
        {
            int x = cells[k] % nx, y = cells[k] / nx;
            for (int side = 0; side < 4; side++)
            {
                int sx = x + ((side & 1) == 0 ? 0 : side - 2), sy = y + ((side & 1) == 0 ? side - 1 : 0);
                next[(4 * k) + side] = shape.Frame.Contains(sx, sy) ? shape.IndexOf[shape.Frame.Index(sx, sy)] : -1;
            }
        }

        double across = 2 * shape.WidestM / shape.Frame.CellM;
        float over = (float)(2 / (1 + Math.Sin(Math.PI / Math.Max(3, 1.6 * across)))), load = (float)(8 / (across * across));
        // Begun as each place would sag between its own shores.
        float[] sag = new float[n];
        for (int k = 0; k < n; k++)
            sag[k] = shape.ShoreM[k] * ((2 * shape.WidthM[k]) - shape.ShoreM[k]) / (float)(shape.WidestM * shape.WidestM);
        for (int sweep = 0; sweep < MostSweeps; sweep++)
        {
            if (sweep % 32 == 0) cancel.ThrowIfCancellationRequested();
            if (Sweep(sag, next, over, load) < Settled) break;
        }

        float most = 0;
        foreach (float s in sag) most = Math.Max(most, s);
        for (int k = 0; k < n; k++) sag[k] = most > 0 ? Math.Clamp(sag[k] / most, 0, 1) : 1;
        return sag;
    }

    // The shore lies half a cell from the centre of a cell beside it: beyond it the sheet is as high as it is low here.
    private static float Sweep(float[] sag, int[] next, float over, float load)
    {
        float largest = 0, moved = 0;
        for (int k = 0; k < sag.Length; k++)
        {
            float sum = load, weight = 4;
            for (int side = 0; side < 4; side++)
            {
                int j = next[(4 * k) + side];
                if (j >= 0) sum += sag[j]; else weight += 1;
            }

            float move = over * ((sum / weight) - sag[k]);
            sag[k] += move;
            moved = Math.Max(moved, Math.Abs(move));
            largest = Math.Max(largest, sag[k]);
        }

        return moved / Math.Max(largest, 1e-6f);
    }
}
