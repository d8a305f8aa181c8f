using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Forms;

/// <summary>Smooths a field over its finite cells only: one to three passes of a running box, close to a bell.</summary>
internal static class MaskedBlur
{
    /// <summary>A smoothed copy; NaN stays NaN.</summary>
    /// <param name="values">[Ny*Nx] with NaN outside.</param>
    /// <param name="frame">The grid.</param>
    /// <param name="sdCells">Standard deviation of the bell, cells; at least one pass over 3 by 3 cells is made.</param>
    public static float[] Of(float[] values, GridFrame frame, double sdCells)
    {
        float[] sum = (float[])values.Clone();
        // A box of half width r has variance r(r + 1)/3.
        int radius = 1;
        while (radius * (radius + 1) < sdCells * sdCells) radius++;
        int passes = Math.Clamp((int)Math.Round(3 * sdCells * sdCells / (radius * (radius + 1))), 1, 3);
        float[] weight = new float[values.Length], line = new float[Math.Max(frame.Nx, frame.Ny)];
        for (int i = 0; i < sum.Length; i++)
        {
            bool there = !float.IsNaN(sum[i]);
            weight[i] = there ? 1 : 0;
            if (!there) sum[i] = 0;
        }

        for (int pass = 0; pass < passes; pass++)
        {
            Boxes(sum, frame, radius, line);
            Boxes(weight, frame, radius, line);
        }

        for (int i = 0; i < sum.Length; i++) sum[i] = float.IsNaN(values[i]) ? float.NaN : sum[i] / weight[i];
        return sum;
    }

    private static void Boxes(float[] field, GridFrame frame, int radius, float[] line)
    {
        for (int y = 0; y < frame.Ny; y++) Run(field, y * frame.Nx, 1, frame.Nx, radius, line);
        for (int x = 0; x < frame.Nx; x++) Run(field, x, frame.Nx, frame.Ny, radius, line);
    }

    private static void Run(float[] field, int start, int stride, int count, int radius, float[] line)
    {
        for (int k = 0; k < count; k++) line[k] = field[start + (k * stride)];
        double sum = 0, share = 1.0 / ((2 * radius) + 1);
        for (int k = 0; k < Math.Min(radius, count); k++) sum += line[k];
        for (int k = 0; k < count; k++)
        {
            if (k + radius < count) sum += line[k + radius];
            if (k - radius - 1 >= 0) sum -= line[k - radius - 1];
            field[start + (k * stride)] = (float)(sum * share);
        }
    }
}
