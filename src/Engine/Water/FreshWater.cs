using System.Runtime.CompilerServices;
using SecondShore.Engine.Core;

namespace SecondShore.Engine.Water;

/// <summary>Properties of fresh water at atmospheric pressure as functions of temperature, 0 to 40 degC.</summary>
/// <remarks>Outside the range the formulas stay smooth and finite from -5 to 60 degC, without a stated accuracy.</remarks>
public static class FreshWater
{
    private const double A1 = -3.983035, A2 = 301.797, A3 = 522528.9, A4 = 69.34881, A5 = 999.974950;

    /// <summary>Heat a cubic metre takes up per kelvin, J m-3 K-1, as the lake column counts it (15 degC; within 0.8 % of any).</summary>
    public static readonly double HeatCapacityJPerM3K = 999.1 * 4185.5;

    /// <summary>Molecular diffusivity of heat, m2 s-1.</summary>
    public static readonly double HeatDiffusivityM2PerS = 1.4e-7;

    /// <summary>Temperature of greatest density, degC.</summary>
    public static readonly double DensestC = 3.983035;

    /// <summary>Density of air-free fresh water, kg m-3, within 0.001 (source: Tanaka2001).</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double DensityKgPerM3(double tempC)
    {
        double x = tempC + A1;
        return A5 * (1.0 - (x * x * (tempC + A2) / (A3 * (tempC + A4))));
    }

    /// <summary>Thermal expansion coefficient -(1/rho) d rho/dt, K-1; below 0 under 3.98 degC (source: Tanaka2001).</summary>
    public static double ExpansionPerK(double tempC)
    {
        double x = tempC + A1, y = tempC + A2, w = tempC + A4;
        double slope = -(A5 / A3) * ((((2.0 * x * y) + (x * x)) / w) - (x * x * y / (w * w)));
        return -slope / DensityKgPerM3(tempC);
    }

    /// <summary>Dynamic viscosity, Pa s, 1 % (source: Patek2009).</summary>
    public static double DynamicViscosityPaS(double tempC)
    {
        double q = (tempC + PhysicalConstants.ZeroCelsiusK) / 300.0;
        return 1e-6 * ((280.68 * Math.Pow(q, -1.9)) + (511.45 * Math.Pow(q, -7.7)) + (61.131 * Math.Pow(q, -19.6))
            + (0.45903 * Math.Pow(q, -40.0)));
    }

    /// <summary>Kinematic viscosity, m2 s-1 (source: Patek2009 over Tanaka2001).</summary>
    public static double KinematicViscosityM2PerS(double tempC) => DynamicViscosityPaS(tempC) / DensityKgPerM3(tempC);

    /// <summary>Specific heat, J kg-1 K-1 (source: Millero1973).</summary>
    public static double SpecificHeatJPerKgK(double tempC) =>
        4217.4 + (tempC * (-3.720283 + (tempC * (0.1412855 + (tempC * (-2.654387e-3 + (tempC * 2.093236e-5)))))));

    /// <summary>Temperature on the warm side of 3.98 degC that has a density, degC; 3.98 for any density above the greatest.</summary>
    /// <param name="densityKgPerM3">Density, kg m-3, above 990.</param>
    public static double WarmTempOfDensityC(double densityKgPerM3)
    {
        Require.InRange(densityKgPerM3, 990.0, 1010.0);
        if (densityKgPerM3 >= A5) return DensestC;
        double low = DensestC, high = 50.0;
        for (int pass = 0; pass < 50; pass++)
        {
            double middle = 0.5 * (low + high);
            if (DensityKgPerM3(middle) > densityKgPerM3) low = middle; else high = middle;
        }

        return 0.5 * (low + high);
    }

    /// <summary>Absolute pressure at a depth, Pa.</summary>
    /// <param name="surfacePressurePa">Air pressure at the surface, Pa.</param>
    /// <param name="depthM">Depth, m, 0 or more.</param>
    /// <param name="tempC">Mean temperature of the water above, degC.</param>
    public static double PressureAtDepthPa(double surfacePressurePa, double depthM, double tempC) =>
        surfacePressurePa + (DensityKgPerM3(tempC) * PhysicalConstants.GravityMps2 * depthM);
}
