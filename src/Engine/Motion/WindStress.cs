using SecondShore.Engine.Core;
using SecondShore.Engine.Water;

namespace SecondShore.Engine.Motion;

/// <summary>Stress of the wind on open water with the drag of <see cref="WindOverWater"/> and round densities.</summary>
public static class WindStress
{
    /// <summary>Density of the air used for stress, kg m-3.</summary>
    public static readonly double AirDensityKgPerM3 = 1.2;

    /// <summary>Stress, Pa (WuestLorke2003).</summary>
    /// <param name="windMps">Wind at 10 m, m s-1, 0 or more.</param>
    public static double StressPa(double windMps) => WindOverWater.StressPa(Require.NotNegative(windMps), AirDensityKgPerM3);

    /// <summary>Friction velocity in the water, m s-1.</summary>
    /// <param name="windMps">Wind at 10 m, m s-1, 0 or more.</param>
    public static double WaterFrictionMps(double windMps) =>
        WindOverWater.WaterFrictionMps(StressPa(windMps), PhysicalConstants.RoundWaterDensityKgPerM3);
}
