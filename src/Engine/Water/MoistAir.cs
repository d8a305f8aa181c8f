using System.Runtime.CompilerServices;
using SecondShore.Engine.Core;

namespace SecondShore.Engine.Water;

/// <summary>Properties of air with vapour.</summary>
public static class MoistAir
{
    /// <summary>Pressure of the standard atmosphere at sea level, Pa.</summary>
    public static readonly double SeaLevelPressurePa = 101325.0;

    /// <summary>Saturation vapour pressure over fresh water, Pa, 0 to 100 degC within 0.005 % (source: Huang2018).</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double SaturationVapourPa(double tempC)
    {
        double x = tempC + 105.0;
        // x^1.57 by exponential and logarithm together: one exp, one log.
        return Math.Exp(34.494 - (4924.99 / (tempC + 237.1)) - (1.57 * Math.Log(x)));
    }

    /// <summary>Dew point, degC: the temperature whose saturation pressure is the given one (WMO2008 start, Newton on Huang2018).</summary>
    /// <param name="vapourPa">Vapour pressure, Pa, above 0.</param>
    public static double DewPointC(double vapourPa)
    {
        double logarithm = Math.Log(Math.Max(vapourPa, 1.0) / 611.2);
        double tempC = 243.12 * logarithm / (17.62 - logarithm);
        for (int pass = 0; pass < 3; pass++)
        {
            double e = SaturationVapourPa(tempC);
            double slope = e * ((4924.99 / ((tempC + 237.1) * (tempC + 237.1))) - (1.57 / (tempC + 105.0)));
            tempC -= (e - vapourPa) / slope;
        }

        return tempC;
    }

    /// <summary>Pressure of the standard atmosphere at an elevation, Pa (0 to 11 km).</summary>
    public static double PressureAtElevationPa(double elevationM) =>
        SeaLevelPressurePa * Math.Pow(1.0 - (2.25577e-5 * elevationM), 5.25588);

    /// <summary>Density of moist air, kg m-3.</summary>
    public static double DensityKgPerM3(double tempC, double vapourPa, double pressurePa) =>
        pressurePa / (287.05 * (tempC + PhysicalConstants.ZeroCelsiusK)) * (1.0 - (0.378 * vapourPa / pressurePa));

    /// <summary>Specific humidity, kg of vapour per kg of air (source: Brutsaert1982).</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double SpecificHumidityShare(double vapourPa, double pressurePa) =>
        0.622 * vapourPa / (pressurePa - (0.378 * vapourPa));

    /// <summary>Specific heat of moist air at constant pressure, J kg-1 K-1.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double SpecificHeatJPerKgK(double specificHumidityShare) => 1005.0 * (1.0 + (0.84 * specificHumidityShare));

    /// <summary>Latent heat of vaporisation, J kg-1.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double LatentHeatJPerKg(double tempC) => 2.501e6 - (2361.0 * tempC);

    /// <summary>Kinematic viscosity of air, m2 s-1 (source: Andreas1989).</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double KinematicViscosityM2PerS(double tempC) =>
        1.326e-5 * (1.0 + (tempC * (6.542e-3 + (tempC * (8.301e-6 - (4.84e-9 * tempC))))));
}
