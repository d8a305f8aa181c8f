using System.Runtime.CompilerServices;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Terrain;

/// <summary>Reads the bed as elevation (minus depth) in windows of 3 by 3 cells.</summary>
internal static class BedWindow
{
    /// <summary>Elevations row by row from the north-west, as the formulas number them: z1 is index 0, z5 the middle.</summary>
    /// <remarks>A neighbour on land continues the slope from the opposite neighbour; where that is land too, it is level.</remarks>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Read(float[] depthM, GridFrame frame, int ix, int iy, Span<double> z)
    {
        int i = frame.Index(ix, iy);
        double middle = -depthM[i];
        if (ix > 0 && iy > 0 && ix < frame.Nx - 1 && iy < frame.Ny - 1)
        {
            int north = i + frame.Nx, south = i - frame.Nx;
            (z[0], z[1], z[2]) = (-depthM[north - 1], -depthM[north], -depthM[north + 1]);
            (z[3], z[4], z[5]) = (-depthM[i - 1], middle, -depthM[i + 1]);
            (z[6], z[7], z[8]) = (-depthM[south - 1], -depthM[south], -depthM[south + 1]);
        }
        else
        {
            for (int k = 0; k < 9; k++)
            {
                int x = ix + (k % 3) - 1, y = iy + 1 - (k / 3);
                z[k] = frame.Contains(x, y) ? -depthM[frame.Index(x, y)] : double.NaN;
            }
        }

        for (int k = 0; k < 4; k++)
        {
            double a = z[k], b = z[8 - k];
            bool missingA = !(a < 0), missingB = !(b < 0);
            if (missingA) z[k] = missingB ? middle : (2 * middle) - b;
            if (missingB) z[8 - k] = missingA ? middle : (2 * middle) - a;
        }
    }
}
