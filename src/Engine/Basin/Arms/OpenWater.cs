using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Arms;

/// <summary>How much open water lies around the cells of an arm, in sixteen directions.</summary>
internal static class OpenWater
{
    private const int Directions = 16;
    private const int Samples = 1500;

    /// <summary>Mean length of open water by direction over some cells of each arm, m: the whole stretch that passes through the cell.</summary>
    /// <returns>[arm][direction], directions from east counter-clockwise over half a turn.</returns>
    public static double[][] StretchesM(DepthGrid grid, short[] label, int arms)
    {
        double[][] sums = new double[arms][];
        int[] sizes = new int[arms], taken = new int[arms], seen = new int[arms];
        for (int a = 0; a < arms; a++) sums[a] = new double[Directions / 2];
        foreach (short a in label) if (a >= 0) sizes[a]++;
        for (int i = 0; i < label.Length; i++)
        {
            int a = label[i];
            if (a < 0) continue;
            // Every k-th cell in storage order: the same on every run, spread over the arm.
            if ((long)seen[a]++ * Samples / sizes[a] < taken[a]) continue;
            taken[a]++;
            for (int d = 0; d < Directions / 2; d++)
            {
                double turn = Math.PI * d / (Directions / 2), dx = Math.Cos(turn), dy = Math.Sin(turn);
                sums[a][d] += 1 + Ray(grid, i, dx, dy) + Ray(grid, i, -dx, -dy);
            }
        }

        for (int a = 0; a < arms; a++)
            for (int d = 0; d < sums[a].Length; d++) sums[a][d] *= grid.Frame.CellM / Math.Max(1, taken[a]);
        return sums;
    }

    private static int Ray(DepthGrid grid, int from, double dx, double dy)
    {
        GridFrame frame = grid.Frame;
        double x = (from % frame.Nx) + 0.5, y = (from / frame.Nx) + 0.5;
        int steps = 0;
        while (true)
        {
            x += dx;
            y += dy;
            if (x < 0 || y < 0 || x >= frame.Nx || y >= frame.Ny || !(grid.DepthM[((int)y * frame.Nx) + (int)x] > 0)) return steps;
            steps++;
        }
    }
}
