using SecondShore.Engine.Core;

namespace SecondShore.Engine.Motion;

/// <summary>Stress of the wind on open water (WuestLorke2003).</summary>
public static class WindStress
{
    /// <summary>Density of the air used for stress, kg m-3.</summary>
    public static readonly double AirDensityKgPerM3 = 1.2;

    /// <summary>
    /// Drag coefficient at 10 m, dimensionless: the larger of the capillary form 0.0044 U^-1.15 (U capped below at 1 m/s)
    /// and the Charnock form, iterated.
    /// </summary>
    /// <param name="windMps">Wind at 10 m, m s-1, 0 or more.</param>
    public static double DragIndex(double windMps)
    {
        double wind = Math.Max(1.0, windMps);
        return Math.Max(CapillaryIndex(wind), CharnockIndex(wind));
    }

    /// <summary>Stress, N m-2.</summary>
    /// <param name="windMps">Wind at 10 m, m s-1, 0 or more.</param>
    public static double StressNPerM2(double windMps)
    {
        Require.NotNegative(windMps);
        return AirDensityKgPerM3 * DragIndex(windMps) * windMps * windMps;
    }

    /// <summary>Friction velocity in the water, m s-1.</summary>
    /// <param name="windMps">Wind at 10 m, m s-1, 0 or more.</param>
    public static double WaterFrictionMps(double windMps) =>
        Math.Sqrt(StressNPerM2(windMps) / PhysicalConstants.RoundWaterDensityKgPerM3);

    /// <summary>Friction velocity in the air, m s-1.</summary>
    /// <param name="windMps">Wind at 10 m, m s-1, 0 or more.</param>
    public static double AirFrictionMps(double windMps) => Math.Sqrt(StressNPerM2(windMps) / AirDensityKgPerM3);

    internal static double CapillaryIndex(double windMps) => 0.0044 * Math.Pow(windMps, -1.15);

    internal static double CharnockIndex(double windMps)
    {
        double drag = 0.0012;
        for (int pass = 0; pass < 10; pass++)
        {
            double root = (Math.Log(10.0 * PhysicalConstants.GravityMps2 / (drag * windMps * windMps)) / 0.41) + 11.3;
            drag = 1.0 / (root * root);
        }

        return drag;
    }
}
