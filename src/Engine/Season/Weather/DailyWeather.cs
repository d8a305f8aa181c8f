using SecondShore.Engine.Basin;
using SecondShore.Engine.Water;

namespace SecondShore.Engine.Season;

/// <summary>
/// Spreads daily means over their hours as hourly records of the same kind run: sun by its course, air by a daily swing, wind by its
/// afternoon and by the weather of the hours (season.md, "Daily weather"). Every day keeps its means.
/// </summary>
internal static class DailyWeather
{
    // Over hourly records of eleven places (May to October, by solar time): wind of a grid cell stands at noon 1.2 times its day, and the
    // day's mean cube is 1.23 times the cube of its mean; a station's wind falls at night to 0.65, and its cube is 1.4 to 2.0 times, 1.8 in the middle.
    private const double GridAfternoon = 0.17, GridUnrest = 0.20, StationAfternoon = 0.42, StationUnrest = 0.32;
    private const double WindiestSolarH = 13.5, WarmestSolarH = 15.0, LeastWindShare = 0.05;

    /// <summary>Rewrites air temperature, humidity, shortwave and wind of a table whose hours hold daily means.</summary>
    public static void Spread(HourlyTable table, LakeSite site, WeatherSource source)
    {
        double pressurePa = MoistAir.PressureAtElevationPa(Math.Clamp(site.ElevationM, -450, 6000));
        double[] meanAirC = [.. table.AirTempC], meanWind = [.. table.WindMps];
        double[] clear = new double[24], air = new double[24], wind = new double[24];
        for (int day = 0; day + 24 <= table.Count; day += 24)
        {
            double mean = ClearSky(table, day, site, pressurePa, clear), shortwave = table.ShortwaveWPerM2[day];
            double clearness = double.IsNaN(shortwave) || mean < 1 ? 0.5 : Math.Clamp(shortwave / mean, 0, 1.1);
            double vapour = table.RelativeHumidity[day] * MoistAir.SaturationVapourPa(meanAirC[day]);
            DayOfAir(table, day, site, meanAirC, mean < 1 ? 0 : SwingK(clearness), air);
            DayOfWind(table, day, site, meanWind, source, wind);
            for (int h = 0; h < 24; h++)
            {
                table.AirTempC[day + h] = air[h];
                table.RelativeHumidity[day + h] = Math.Clamp(vapour / MoistAir.SaturationVapourPa(air[h]), 0.05, 1.0);
                if (!double.IsNaN(shortwave)) table.ShortwaveWPerM2[day + h] = mean < 1 ? shortwave : shortwave * clear[h] / mean;
                table.WindMps[day + h] = wind[h];
            }
        }
    }

    /// <summary>Half the daily range of the air, K: a degree under cloud to over five in full sun, by hourly records of ten places.</summary>
    internal static double SwingK(double clearness) => 1.0 + (6.2 * Math.Max(0, clearness - 0.25));

    private static double ClearSky(HourlyTable table, int day, LakeSite site, double pressurePa, double[] clear)
    {
        double sum = 0;
        for (int h = 0; h < 24; h++)
        {
            DateTimeOffset middle = table.TimeAt(day + h).AddMinutes(30);
            double cosZenith = SolarPosition.At(middle, site.Position).CosZenith;
            clear[h] = Sunlight.ClearSkyWPerM2(cosZenith, pressurePa, 1000, Sunlight.SolarConstantWPerM2 * Sunlight.DistanceFactor(middle.DayOfYear));
            sum += clear[h];
        }

        return sum / 24.0;
    }

    // From the middle of one day to that of the next the means run straight; what that moves the day's mean by is given back.
    private static void DayOfAir(HourlyTable table, int day, LakeSite site, double[] meanC, double swingK, double[] airC)
    {
        double sum = 0;
        for (int h = 0; h < 24; h++)
        {
            airC[h] = Between(meanC, day, h) + (swingK * Math.Cos(DayAngle(table, day + h, site, WarmestSolarH)));
            sum += airC[h];
        }

        double off = meanC[day] - (sum / 24.0);
        for (int h = 0; h < 24; h++) airC[h] += off;
    }

    private static void DayOfWind(HourlyTable table, int day, LakeSite site, double[] meanMps, WeatherSource source, double[] windMps)
    {
        (double afternoon, double unrest) = source == WeatherSource.Station ? (StationAfternoon, StationUnrest) : (GridAfternoon, GridUnrest);
        // Two and three waves a day, whose phases turn from day to day without coming back: no day is like another, each run the same.
        double number = Math.Floor((table.TimeAt(day) - DateTimeOffset.UnixEpoch).TotalDays);
        double two = Turns(number * 0.6180339887498949), three = Turns(number * 0.7548776662466927), sum = 0;
        for (int h = 0; h < 24; h++)
        {
            double hour = Turns((h + 0.5) / 24.0);
            double share = 1.0 + (afternoon * Math.Cos(DayAngle(table, day + h, site, WindiestSolarH)))
                + (unrest * (Math.Cos((2 * hour) + two) + Math.Cos((3 * hour) + three)));
            windMps[h] = Between(meanMps, day, h) * Math.Max(LeastWindShare, share);
            sum += windMps[h];
        }

        double factor = sum > 0 ? 24.0 * meanMps[day] / sum : 0;
        for (int h = 0; h < 24; h++) windMps[h] *= factor;
    }

    private static double Turns(double turns) => 2.0 * Math.PI * (turns - Math.Floor(turns));

    private static double DayAngle(HourlyTable table, int hour, LakeSite site, double topSolarH) =>
        2.0 * Math.PI * (table.TimeAt(hour).Hour + 0.5 + (site.Position.LonDeg / 15.0) - topSolarH) / 24.0;

    // Daily means by hour, straight from noon to noon; a missing neighbour leaves the day as it is.
    private static double Between(double[] means, int day, int hour)
    {
        double away = (hour + 0.5 - 12.0) / 24.0;
        int other = away < 0 ? day - 24 : day + 24;
        if (other < 0 || other + 24 > means.Length || double.IsNaN(means[other])) return means[day];
        return means[day] + (Math.Abs(away) * (means[other] - means[day]));
    }
}
