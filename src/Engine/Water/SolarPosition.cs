using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Water;

/// <summary>Where the sun stands: within 0.02 degrees from 1950 to 2100 (source: Meeus1998).</summary>
/// <param name="ZenithDeg">Angle from straight up, degrees, without refraction.</param>
/// <param name="AzimuthDeg">Bearing of the sun, degrees clockwise from true north.</param>
/// <param name="DeclinationDeg">Declination, degrees.</param>
/// <param name="EquationOfTimeMinutes">Sundial minus clock, minutes.</param>
public readonly record struct SolarPosition(double ZenithDeg, double AzimuthDeg, double DeclinationDeg, double EquationOfTimeMinutes)
{
    private const double Degree = Math.PI / 180.0;

    /// <summary>Cosine of the zenith angle; below 0 at night.</summary>
    public double CosZenith => Math.Cos(ZenithDeg * Degree);

    /// <summary>Position of the sun over a place at an instant.</summary>
    public static SolarPosition At(DateTimeOffset instant, GeoPoint place)
    {
        (double declination, double equationMinutes) = Orbit(instant);
        double utcMinutes = instant.UtcDateTime.TimeOfDay.TotalMinutes;
        double hourAngle = (((utcMinutes + equationMinutes + (4.0 * place.LonDeg)) / 4.0) - 180.0) * Degree;
        double lat = place.LatDeg * Degree;
        double cosZenith = (Math.Sin(lat) * Math.Sin(declination)) + (Math.Cos(lat) * Math.Cos(declination) * Math.Cos(hourAngle));
        double azimuth = 180.0 + (Math.Atan2(Math.Sin(hourAngle),
            (Math.Cos(hourAngle) * Math.Sin(lat)) - (Math.Tan(declination) * Math.Cos(lat))) / Degree);
        double zenithDeg = Math.Acos(Math.Clamp(cosZenith, -1.0, 1.0)) / Degree;
        return new SolarPosition(zenithDeg, ((azimuth % 360.0) + 360.0) % 360.0, declination / Degree, equationMinutes);
    }

    /// <summary>Declination in radians and equation of time in minutes at an instant.</summary>
    internal static (double DeclinationRad, double EquationMinutes) Orbit(DateTimeOffset instant)
    {
        double century = (instant - new DateTimeOffset(2000, 1, 1, 12, 0, 0, TimeSpan.Zero)).TotalDays / 36525.0, c = century;
        double meanLongitude = (280.46646 + (c * (36000.76983 + (0.0003032 * c)))) * Degree;
        double anomaly = (357.52911 + (c * (35999.05029 - (0.0001537 * c)))) * Degree;
        double eccentricity = 0.016708634 - (c * (4.2037e-5 + (1.267e-7 * c)));
        double centre = (Math.Sin(anomaly) * (1.914602 - (c * (0.004817 + (1.4e-5 * c)))))
            + (Math.Sin(2.0 * anomaly) * (0.019993 - (1.01e-4 * c))) + (2.89e-4 * Math.Sin(3.0 * anomaly));
        double node = (125.04 - (1934.136 * c)) * Degree;
        double longitude = meanLongitude + ((centre - 0.00569 - (0.00478 * Math.Sin(node))) * Degree);
        double obliquity = (23.0 + ((26.0 + ((21.448 - (c * (46.815 + (c * (0.00059 - (0.001813 * c)))))) / 60.0)) / 60.0)
            + (0.00256 * Math.Cos(node))) * Degree;
        double declination = Math.Asin(Math.Sin(obliquity) * Math.Sin(longitude));
        double y = Math.Tan(obliquity / 2.0) * Math.Tan(obliquity / 2.0);
        double equation = 4.0 / Degree * ((y * Math.Sin(2.0 * meanLongitude)) - (2.0 * eccentricity * Math.Sin(anomaly))
            + (4.0 * eccentricity * y * Math.Sin(anomaly) * Math.Cos(2.0 * meanLongitude))
            - (0.5 * y * y * Math.Sin(4.0 * meanLongitude)) - (1.25 * eccentricity * eccentricity * Math.Sin(2.0 * anomaly)));
        return (declination, equation);
    }
}
