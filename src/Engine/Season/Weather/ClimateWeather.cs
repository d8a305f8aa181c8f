using SecondShore.Engine.Basin;
using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Water;

namespace SecondShore.Engine.Season;

/// <summary>
/// A made-up but sensible climate from position, elevation and date, for lakes without weather (season.md, "Without weather"):
/// the air by <see cref="ClimateNormals"/>, wind and cloud by own round numbers.
/// </summary>
public static class ClimateWeather
{
    /// <summary>Mean wind taken where none is known, m s-1.</summary>
    public static readonly double WindMps = 3.2;

    /// <summary>Humidity where none is known, 0 to 1: the day's lowest temperature is taken for its dew point.</summary>
    internal static double RelativeHumidity(double[] airTempC, int hour)
    {
        int from = Math.Max(0, hour - (hour % 24)), to = Math.Min(airTempC.Length, from + 24);
        double low = double.MaxValue;
        for (int i = from; i < to; i++) low = Math.Min(low, airTempC[i]);
        return Math.Clamp(MoistAir.SaturationVapourPa(low - 1.0) / MoistAir.SaturationVapourPa(airTempC[hour]), 0.2, 1.0);
    }

    /// <summary>A year of made-up hourly weather with the pace of real weather: fronts every few days, gusty wind, cloud.</summary>
    /// <param name="site">Where.</param>
    /// <param name="startUtc">First hour, UTC.</param>
    /// <param name="hours">Hours, at least 24.</param>
    /// <param name="random">Chance; the same seed gives the same weather.</param>
    public static WeatherSeries Make(LakeSite site, DateTimeOffset startUtc, int hours, SeededRandom random)
    {
        Require.NotNull(site);
        Require.NotNull(random);
        Require.InRange(hours, 24, 24 * 366 * 5);
        double[] time = new double[hours], air = new double[hours], wind = new double[hours], cloud = new double[hours];
        double warmth = random.NextNormal(), overcast = random.NextNormal(), breeze = random.NextNormal();
        // First-order memories: 3 days for warmth, 1 day for cloud, 8 hours for wind.
        double a = Math.Exp(-1.0 / 72.0), b = Math.Exp(-1.0 / 24.0), c = Math.Exp(-1.0 / 8.0);
        ClimateNormals normals = ClimateNormals.At(site);
        double swing = Math.Clamp(0.08 * Math.Abs(site.Position.LatDeg), 1.0, 4.0);
        for (int i = 0; i < hours; i++)
        {
            warmth = (a * warmth) + (Math.Sqrt(1 - (a * a)) * random.NextNormal());
            overcast = (b * overcast) + (Math.Sqrt(1 - (b * b)) * random.NextNormal());
            breeze = (c * breeze) + (Math.Sqrt(1 - (c * c)) * random.NextNormal());
            DateTimeOffset at = startUtc.AddHours(i);
            double solarHour = at.UtcDateTime.TimeOfDay.TotalHours + (site.Position.LonDeg / 15.0);
            double afternoon = 1.0 + (0.35 * Math.Cos(2.0 * Math.PI * (solarHour - 15.0) / 24.0));
            air[i] = normals.AirTempC(at) + (swing * warmth);
            cloud[i] = NormalLaw.ShareBelow(overcast + 0.2);
            wind[i] = WindMps * afternoon * Math.Sqrt(-Math.Log(Math.Max(1e-9, 1.0 - NormalLaw.ShareBelow(breeze)))) / 0.886;
            time[i] = i;
        }

        RawWeather raw = new()
        {
            TimeUtc = [.. time.Select(h => startUtc.AddHours(h))],
            AirTempC = air,
            WindMps = wind,
            CloudFraction = cloud,
            WindHeightM = 10,
        };
        return WeatherPreparation.Prepare(raw, site).Latest!;
    }
}
