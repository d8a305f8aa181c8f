using System.Runtime.CompilerServices;
using SecondShore.Engine.Core;

namespace SecondShore.Engine.Water;

/// <summary>Thermal radiation of the sky and of the water.</summary>
public static class Longwave
{
    /// <summary>Emissivity and absorptivity of water, dimensionless.</summary>
    public static readonly double WaterEmissivityShare = 0.97;

    /// <summary>Clear-sky downward longwave, W m-2: the recommended form (source: DilleyOBrien1998).</summary>
    public static double ClearSkyWPerM2(double airTempC, double vapourPa)
    {
        double kelvin = airTempC + PhysicalConstants.ZeroCelsiusK, water = 4650.0 * vapourPa / 1000.0 / kelvin, ratio = kelvin / 273.16;
        return 59.38 + (113.7 * Math.Pow(ratio, 6)) + (96.96 * Math.Sqrt(water / 25.0));
    }

    /// <summary>Clear-sky downward longwave, W m-2 (source: Prata1996).</summary>
    public static double ClearSkyPrataWPerM2(double airTempC, double vapourPa)
    {
        double kelvin = airTempC + PhysicalConstants.ZeroCelsiusK, x = 46.5 * vapourPa / 100.0 / kelvin;
        return (1.0 - ((1.0 + x) * Math.Exp(-Math.Sqrt(1.2 + (3.0 * x))))) * BlackBodyWPerM2(airTempC);
    }

    /// <summary>Clear-sky downward longwave, W m-2 (source: Brutsaert1975).</summary>
    public static double ClearSkyBrutsaertWPerM2(double airTempC, double vapourPa) =>
        1.24 * Math.Pow(vapourPa / 100.0 / (airTempC + PhysicalConstants.ZeroCelsiusK), 1.0 / 7.0) * BlackBodyWPerM2(airTempC);

    /// <summary>Downward longwave under cloud, W m-2 (source: UnsworthMonteith1975).</summary>
    /// <param name="clearSkyWPerM2">Clear-sky value, W m-2.</param>
    /// <param name="airTempC">Air temperature, degC.</param>
    /// <param name="cloudShare">Cloud fraction, 0 to 1.</param>
    public static double AllSkyWPerM2(double clearSkyWPerM2, double airTempC, double cloudShare) =>
        ((1.0 - (0.84 * cloudShare)) * clearSkyWPerM2) + (0.84 * cloudShare * BlackBodyWPerM2(airTempC));

    /// <summary>Downward longwave from the share of shortwave lost to cloud, W m-2 (source: CrawfordDuchon1999).</summary>
    /// <param name="clearSkyWPerM2">Clear-sky value, W m-2.</param>
    /// <param name="airTempC">Air temperature, degC.</param>
    /// <param name="lostShare">1 - measured over clear-sky shortwave, 0 to 1.</param>
    public static double FromShortwaveLossWPerM2(double clearSkyWPerM2, double airTempC, double lostShare) =>
        (lostShare * BlackBodyWPerM2(airTempC)) + ((1.0 - lostShare) * clearSkyWPerM2);

    /// <summary>Emission of the water surface, W m-2.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double EmittedWPerM2(double waterC) => WaterEmissivityShare * BlackBodyWPerM2(waterC);

    /// <summary>Emission of a black body, W m-2.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double BlackBodyWPerM2(double tempC)
    {
        double kelvin = tempC + PhysicalConstants.ZeroCelsiusK, square = kelvin * kelvin;
        return PhysicalConstants.StefanBoltzmannWPerM2K4 * square * square;
    }
}
