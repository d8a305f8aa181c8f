using SecondShore.Engine.Basin;
using SecondShore.Engine.Water;

namespace SecondShore.Engine.Season;

/// <summary>Spreads daily means over their hours: sun by its course, air by a daily swing, wind by a Weibull spread.</summary>
internal static class DailyWeather
{
    // Quantiles of a Weibull law of shape 2, scaled to mean 1, dealt over the day in a fixed shuffled order.
    private static readonly double[] Gustiness = MakeGustiness();

    /// <summary>Rewrites air temperature, shortwave and wind of a table whose hours hold daily means; the means stay.</summary>
    public static void Spread(HourlyTable table, LakeSite site)
    {
        double pressurePa = MoistAir.PressureAtElevationPa(Math.Clamp(site.ElevationM, -450, 6000));
        double[] clear = new double[24];
        for (int day = 0; day + 24 <= table.Count; day += 24)
        {
            double sum = 0;
            for (int h = 0; h < 24; h++)
            {
                DateTimeOffset middle = table.TimeAt(day + h).AddMinutes(30);
                double cosZenith = SolarPosition.At(middle, site.Position).CosZenith;
                clear[h] = Sunlight.ClearSkyWPerM2(cosZenith, pressurePa, 1000, Sunlight.SolarConstantWPerM2 * Sunlight.DistanceFactor(middle.DayOfYear));
                sum += clear[h];
            }

            double shortwave = table.ShortwaveWPerM2[day], mean = sum / 24.0;
            double clearness = double.IsNaN(shortwave) || mean < 1 ? 0.5 : Math.Clamp(shortwave / mean, 0, 1.1);
            // Half the daily range of the air: from a degree under cloud to five in full sun.
            double swing = mean < 1 ? 0 : 1.0 + (4.0 * Math.Max(0, clearness - 0.25) / 0.75);
            double noon = 12.0 - (site.Position.LonDeg / 15.0), vapour = table.RelativeHumidity[day] * MoistAir.SaturationVapourPa(table.AirTempC[day]);
            for (int h = 0; h < 24; h++)
            {
                double phase = 2.0 * Math.PI * ((table.TimeAt(day).Hour + h + 0.5) - noon - 3.0) / 24.0;
                double air = table.AirTempC[day + h] + (swing * Math.Cos(phase));
                table.AirTempC[day + h] = air;
                table.RelativeHumidity[day + h] = Math.Clamp(vapour / MoistAir.SaturationVapourPa(air), 0.05, 1.0);
                if (!double.IsNaN(shortwave)) table.ShortwaveWPerM2[day + h] = mean < 1 ? shortwave : shortwave * clear[h] / mean;
                table.WindMps[day + h] *= Gustiness[h];
            }
        }
    }

    private static double[] MakeGustiness()
    {
        double[] values = new double[24];
        double sum = 0;
        for (int i = 0; i < 24; i++)
        {
            // 7 and 24 share no factor: neighbours in rank are hours apart, and every rank is dealt once.
            values[i * 7 % 24] = Math.Sqrt(-Math.Log(1.0 - ((i + 0.5) / 24.0)));
            sum += values[i * 7 % 24];
        }

        for (int i = 0; i < 24; i++) values[i] *= 24.0 / sum;
        return values;
    }
}
