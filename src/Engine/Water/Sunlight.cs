
namespace SecondShore.Engine.Water;

/// <summary>Shortwave radiation above the water: at the top of the air, under a clear sky, under cloud.</summary>
public static class Sunlight
{
    /// <summary>Solar constant, W m-2 (source: KoppLean2011).</summary>
    public static readonly double SolarConstantWPerM2 = 1361.0;

    private static readonly double SlantLimitCos = Math.Cos(double.DegreesToRadians(85.0));

    /// <summary>Factor of the sun's distance, dimensionless.</summary>
    /// <param name="dayOfYear">1 to 366.</param>
    public static double DistanceFactor(int dayOfYear) => 1.0 + (0.033 * Math.Cos(2.0 * Math.PI * dayOfYear / 365.0));

    /// <summary>Radiation on a horizontal surface at the top of the air, daily mean, W m-2 (source: Allen1998).</summary>
    public static double DailyTopOfAirWPerM2(double latDeg, int dayOfYear)
    {
        double lat = double.DegreesToRadians(latDeg), declination = 0.409 * Math.Sin((2.0 * Math.PI * dayOfYear / 365.0) - 1.39);
        double sunset = Math.Acos(Math.Clamp(-Math.Tan(lat) * Math.Tan(declination), -1.0, 1.0));
        double sum = (sunset * Math.Sin(lat) * Math.Sin(declination)) + (Math.Cos(lat) * Math.Cos(declination) * Math.Sin(sunset));
        return Math.Max(0, SolarConstantWPerM2 / Math.PI * DistanceFactor(dayOfYear) * sum);
    }

    /// <summary>Shortwave under a clear sky, W m-2, 3 to 5 % (sources: Asce2005, Allen1996); tapers to 0 from 85 to 90 degrees.</summary>
    /// <param name="cosZenith">Cosine of the sun's zenith angle.</param>
    /// <param name="pressurePa">Air pressure, Pa.</param>
    /// <param name="vapourPa">Vapour pressure, Pa.</param>
    /// <param name="normalWPerM2">Radiation at the top of the air across the beam, W m-2.</param>
    /// <param name="clearnessShare">1 for clean air, 0.5 for very dusty or smoky air.</param>
    public static double ClearSkyWPerM2(double cosZenith, double pressurePa, double vapourPa, double normalWPerM2, double clearnessShare = 1.0) =>
        ClearSky(cosZenith, pressurePa, vapourPa, normalWPerM2, clearnessShare).Sum;

    /// <summary>Beam and diffuse shortwave under a clear sky, W m-2.</summary>
    public static (double Beam, double Diffuse, double Sum) ClearSky(double cosZenith, double pressurePa, double vapourPa, double normalWPerM2, double clearnessShare)
    {
        if (cosZenith <= 0) return (0, 0, 0);
        double m = Math.Max(cosZenith, SlantLimitCos);
        double pressureKPa = pressurePa / 1000.0, waterMm = (0.14 * vapourPa / 1000.0 * pressureKPa) + 2.1;
        double beam = 0.98 * Math.Exp((-0.00146 * pressureKPa / (clearnessShare * m)) - (0.075 * Math.Pow(waterMm / m, 0.4)));
        double diffuse = beam >= 0.15 ? 0.35 - (0.36 * beam) : 0.18 + (0.82 * beam);
        double top = normalWPerM2 * cosZenith;
        return (beam * top, diffuse * top, (beam + diffuse) * top);
    }

    /// <summary>Share of clear-sky shortwave that reaches the ground under cloud, 0.25 to 1 (source: KastenCzeplak1980).</summary>
    /// <param name="cloudShare">Cloud fraction, 0 to 1.</param>
    public static double CloudTransmissionShare(double cloudShare) => 1.0 - (0.75 * Math.Pow(Math.Clamp(cloudShare, 0.0, 1.0), 3.4));

    /// <summary>Cloud fraction, 0 to 1, from the ratio of measured to clear-sky shortwave: the inverse of <see cref="CloudTransmissionShare"/>.</summary>
    public static double CloudFromRatioShare(double ratio) => Math.Clamp(Math.Pow(Math.Max(0.0, 1.0 - ratio) / 0.75, 1.0 / 3.4), 0.0, 1.0);

    /// <summary>Daily mean shortwave from the day's temperature range, W m-2, 15 to 20 % (source: HargreavesSamani1982).</summary>
    /// <param name="minC">Lowest air temperature of the day, degC.</param>
    /// <param name="maxC">Highest, degC, not below the lowest.</param>
    /// <param name="topOfAirWPerM2">Daily mean at the top of the air, W m-2.</param>
    /// <param name="coefficient">0.16 inland, 0.19 at a coast, K^-0.5.</param>
    public static double FromTemperatureRangeWPerM2(double minC, double maxC, double topOfAirWPerM2, double coefficient = 0.16) =>
        coefficient * Math.Sqrt(Math.Max(0, maxC - minC)) * topOfAirWPerM2;
}
