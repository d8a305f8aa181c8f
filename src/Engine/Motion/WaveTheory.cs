using SecondShore.Engine.Core;

namespace SecondShore.Engine.Motion;

/// <summary>Linear waves at a depth: length, speed at the bottom, breaking, drift.</summary>
public static class WaveTheory
{
    /// <summary>Largest significant height the depth carries, as a share of it (choice).</summary>
    public static readonly double SignificantDepthShare = 0.55;

    /// <summary>Wave number, m-1: the root of w2 = g k tanh(k d), by Newton's method from deep water.</summary>
    /// <param name="periodS">Period, s, above 0.</param>
    /// <param name="depthM">Depth, m, above 0.</param>
    public static double WaveNumberPerM(double periodS, double depthM)
    {
        double frequency = 2.0 * Math.PI / Require.Positive(periodS);
        Require.Positive(depthM);
        double target = frequency * frequency / PhysicalConstants.GravityMps2;
        double k = target / Math.Sqrt(Math.Tanh(target * depthM));
        for (int pass = 0; pass < 20; pass++)
        {
            double tanh = Math.Tanh(k * depthM);
            double step = ((k * tanh) - target) / (tanh + (k * depthM * (1.0 - (tanh * tanh))));
            k -= step;
            if (Math.Abs(step) < 1e-13 * k) break;
        }

        return k;
    }

    /// <summary>Wavelength, m.</summary>
    public static double LengthM(double periodS, double depthM) => 2.0 * Math.PI / WaveNumberPerM(periodS, depthM);

    /// <summary>Greatest speed of the water at the bottom, m s-1.</summary>
    public static double BedSpeedMps(double heightM, double periodS, double depthM)
    {
        double kd = WaveNumberPerM(periodS, depthM) * depthM;
        return kd > 300 ? 0.0 : Math.PI * heightM / (periodS * Math.Sinh(kd));
    }

    /// <summary>Expected highest of many waves, m (LonguetHiggins1952).</summary>
    /// <param name="significantM">Significant height, m.</param>
    /// <param name="count">Waves, at least 2.</param>
    public static double HighestOfM(double significantM, int count) =>
        significantM * Math.Sqrt(Math.Log(Require.InRange(count, 2, int.MaxValue)) / 2.0);

    /// <summary>Stokes drift at a depth, m s-1, deep water: w k a2 exp(-2 k z).</summary>
    /// <param name="heightM">Height of a single wave, m; for a sea take significant height / sqrt 2.</param>
    /// <param name="periodS">Period, s; 0 or less gives 0.</param>
    /// <param name="depthM">Depth below the surface, m.</param>
    public static double StokesDriftMps(double heightM, double periodS, double depthM)
    {
        if (!(periodS > 0)) return 0.0;
        double frequency = 2.0 * Math.PI / periodS, k = frequency * frequency / PhysicalConstants.GravityMps2;
        return frequency * k * 0.25 * heightM * heightM * Math.Exp(-2.0 * k * depthM);
    }
}
