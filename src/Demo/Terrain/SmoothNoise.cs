namespace SecondShore.Demo.Terrain;

/// <summary>Smooth noise of the plane: random values on a lattice, joined by quintic steps, about -1 to 1. The same on every machine.</summary>
internal sealed class SmoothNoise(ulong seed)
{
    /// <summary>Noise of one wavelength.</summary>
    public double At(double xM, double yM, double waveM)
    {
        double x = xM / waveM, y = yM / waveM;
        long ix = (long)Math.Floor(x), iy = (long)Math.Floor(y);
        double tx = Step(x - ix), ty = Step(y - iy);
        double south = Lattice(ix, iy) + (tx * (Lattice(ix + 1, iy) - Lattice(ix, iy)));
        double north = Lattice(ix, iy + 1) + (tx * (Lattice(ix + 1, iy + 1) - Lattice(ix, iy + 1)));
        return south + (ty * (north - south));
    }

    /// <summary>Sum of octaves, each half as long and half as high; divided by the sum of heights.</summary>
    public double Octaves(double xM, double yM, double waveM, int count)
    {
        double sum = 0, height = 1, total = 0;
        for (int i = 0; i < count; i++)
        {
            sum += height * At(xM + (i * 1013.7), yM - (i * 877.3), waveM);
            total += height;
            height *= 0.5;
            waveM *= 0.5;
        }

        return sum / total;
    }

    private static double Step(double t) => t * t * t * ((t * ((t * 6) - 15)) + 10);

    private double Lattice(long ix, long iy)
    {
        ulong h = seed ^ ((ulong)ix * 0x9E3779B97F4A7C15UL) ^ ((ulong)iy * 0xC2B2AE3D27D4EB4FUL);
        h = (h ^ (h >> 30)) * 0xBF58476D1CE4E5B9UL;
        h = (h ^ (h >> 27)) * 0x94D049BB133111EBUL;
        h ^= h >> 31;
        return ((h >> 11) * (2.0 / (1UL << 53))) - 1.0;
    }
}
