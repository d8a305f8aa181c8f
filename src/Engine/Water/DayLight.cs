using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Water;

/// <summary>Rise, noon and set of the sun over a place on one local date.</summary>
/// <param name="Rise">Sunrise, UTC; null on a day without one.</param>
/// <param name="Noon">Local solar noon, UTC.</param>
/// <param name="Set">Sunset, UTC; null on a day without one.</param>
/// <param name="LengthH">Time the sun stands above the limit, hours, 0 to 24.</param>
public readonly record struct DayLight(DateTimeOffset? Rise, DateTimeOffset Noon, DateTimeOffset? Set, double LengthH)
{
    /// <summary>Zenith angle of the sun's centre at sunrise and sunset, degrees (upper edge, usual refraction).</summary>
    public static readonly double SunriseZenithDeg = 90.833;

    /// <summary>Zenith angle at the ends of civil twilight: first and last light for planning, degrees.</summary>
    public static readonly double CivilTwilightZenithDeg = 96.0;

    /// <summary>Daylight over a place on a date counted in local solar time (source: Meeus1998).</summary>
    /// <param name="date">The date whose solar noon is meant.</param>
    /// <param name="place">Where.</param>
    /// <param name="zenithDeg">Zenith angle that counts as the edge; null takes <see cref="SunriseZenithDeg"/>.</param>
    public static DayLight On(DateOnly date, GeoPoint place, double? zenithDeg = null)
    {
        DateTimeOffset midnight = new(date.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero);
        DateTimeOffset noon = midnight.AddMinutes(720.0 - (4.0 * place.LonDeg));
        (double declination, double equationMinutes) = SolarPosition.Orbit(noon);
        noon = noon.AddMinutes(-equationMinutes);
        double lat = double.DegreesToRadians(place.LatDeg);
        double cosHour = (Math.Cos(double.DegreesToRadians(zenithDeg ?? SunriseZenithDeg)) / (Math.Cos(lat) * Math.Cos(declination)))
            - (Math.Tan(lat) * Math.Tan(declination));
        if (cosHour >= 1.0) return new DayLight(null, noon, null, 0);
        if (cosHour <= -1.0) return new DayLight(null, noon, null, 24);
        double halfMinutes = 4.0 * double.RadiansToDegrees(Math.Acos(cosHour));
        return new DayLight(noon.AddMinutes(-halfMinutes), noon, noon.AddMinutes(halfMinutes), halfMinutes / 30.0);
    }
}
