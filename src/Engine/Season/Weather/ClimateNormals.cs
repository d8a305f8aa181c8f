using SecondShore.Engine.Basin;
using SecondShore.Engine.Core;

namespace SecondShore.Engine.Season;

/// <summary>
/// Air temperature of a place by the calendar, made up of what is normal around it: a course by latitude, moved by how far the
/// stations near it stand off that course, less 5 K for each km of height (season.md, "Without weather"). Immutable.
/// </summary>
/// <param name="MeanC">Annual mean, degC.</param>
/// <param name="SwingK">Half the swing of the year, K.</param>
/// <param name="WarmestAtDays">When the mean is highest, days from the start of the year.</param>
/// <param name="LonDeg">Longitude, for the hour of the sun, degrees.</param>
public readonly record struct ClimateNormals(double MeanC, double SwingK, double WarmestAtDays, double LonDeg)
{
    private const double LapseKPerM = 0.005, EarthKm = 6371;

    // How far a station tells of its surroundings, km, and how much the course by latitude counts beside it (choices: the least error of stations left out).
    private const double ReachKm = 300, CourseWeight = 0.003;

    private const double DailyHalfRangeK = 4.5;

    /// <summary>The normals of a place.</summary>
    /// <param name="site">Where.</param>
    public static ClimateNormals At(LakeSite site)
    {
        Require.NotNull(site);
        (double lat, double lon) = (site.Position.LatDeg, site.Position.LonDeg);
        double mean = 0, swing = 0, sum = CourseWeight;
        foreach (ClimateStation s in ClimateStations.All)
        {
            double weight = Math.Exp(-DistanceKm(lat, lon, s) / ReachKm);
            mean += weight * (s.MeanC + (LapseKPerM * s.ElevationM) - SeaLevelMeanC(s.LatDeg));
            swing += weight * (s.SwingK - CourseSwingK(s.LatDeg));
            sum += weight;
        }

        return new ClimateNormals(
            SeaLevelMeanC(lat) + (mean / sum) - (LapseKPerM * Math.Max(0, site.ElevationM)),
            Math.Max(0.5, CourseSwingK(lat) + (swing / sum)), lat >= 0 ? 203 : 20, lon);
    }

    /// <summary>Mean air temperature at an instant, degC, with its daily course.</summary>
    public double AirTempC(DateTimeOffset instant)
    {
        double solarHour = instant.UtcDateTime.TimeOfDay.TotalHours + (LonDeg / 15.0);
        return DailyMeanC(instant.DayOfYear) + (DailyHalfRangeK * Math.Cos(2.0 * Math.PI * (solarHour - 15.0) / 24.0));
    }

    /// <summary>Mean air temperature of a day of the year, degC.</summary>
    public double DailyMeanC(int dayOfYear) => MeanC + (SwingK * Math.Cos(2.0 * Math.PI * (dayOfYear - WarmestAtDays) / 365.25));

    // Least squares over the stations.
    private static double SeaLevelMeanC(double latDeg)
    {
        double tens = Math.Abs(latDeg) / 10;
        return 30.326 - (1.318 * tens * tens) + (0.08 * tens * tens * tens);
    }

    private static double CourseSwingK(double latDeg)
    {
        double tens = Math.Abs(latDeg) / 10;
        return -2.345 + (4.13 * tens) - (0.195 * tens * tens);
    }

    private static double DistanceKm(double latDeg, double lonDeg, ClimateStation s)
    {
        (double a, double b) = (double.DegreesToRadians(latDeg), double.DegreesToRadians(s.LatDeg));
        double cos = (Math.Sin(a) * Math.Sin(b)) + (Math.Cos(a) * Math.Cos(b) * Math.Cos(double.DegreesToRadians(lonDeg - s.LonDeg)));
        return EarthKm * Math.Acos(Math.Clamp(cos, -1, 1));
    }
}
