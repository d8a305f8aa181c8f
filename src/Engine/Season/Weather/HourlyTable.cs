using SecondShore.Engine.Core;

namespace SecondShore.Engine.Season;

/// <summary>Weather binned into hours, NaN where nothing fell: the work sheet of <see cref="WeatherPreparation"/>.</summary>
internal sealed class HourlyTable
{
    private HourlyTable(DateTimeOffset startUtc, int count)
    {
        StartUtc = startUtc;
        AirTempC = Empty(count);
        RelativeHumidity = Empty(count);
        WindMps = Empty(count);
        WindFromDeg = Empty(count);
        ShortwaveWPerM2 = Empty(count);
        LongwaveWPerM2 = Empty(count);
        CloudFraction = Empty(count);
        PrecipitationMmPerH = Empty(count);
        GustMps = Empty(count);
    }

    public DateTimeOffset StartUtc { get; }

    public int Count => AirTempC.Length;

    public double[] AirTempC { get; }

    public double[] RelativeHumidity { get; }

    public double[] WindMps { get; }

    public double[] WindFromDeg { get; }

    public double[] ShortwaveWPerM2 { get; }

    public double[] LongwaveWPerM2 { get; }

    public double[] CloudFraction { get; }

    public double[] PrecipitationMmPerH { get; }

    public double[] GustMps { get; }

    public DateTimeOffset TimeAt(int hour) => StartUtc.AddHours(hour);

    public WeatherSeries ToSeries() => new(StartUtc, PhysicalConstants.HourS, AirTempC, RelativeHumidity, WindMps, WindFromDeg,
        ShortwaveWPerM2, LongwaveWPerM2, CloudFraction, PrecipitationMmPerH, GustMps);

    /// <summary>Bins records; a value of a longer step holds for all its hours.</summary>
    public static HourlyTable Bin(RawWeather raw, ReadOnlySpan<int> rows, double stepS, double windFactor)
    {
        DateTimeOffset first = Floor(raw.TimeUtc[rows[0]]);
        int hold = (int)Math.Clamp(Math.Round(stepS / 3600.0), 1, 24);
        int count = (int)Math.Floor((raw.TimeUtc[rows[^1]] - first).TotalHours) + hold;
        HourlyTable table = new(first, count);
        (double[]? From, double[] To, double Factor)[] columns =
        [
            (raw.AirTempC, table.AirTempC, 1), (raw.RelativeHumidity, table.RelativeHumidity, 1), (raw.WindMps, table.WindMps, windFactor),
            (raw.WindFromDeg, table.WindFromDeg, 1), (raw.ShortwaveWPerM2, table.ShortwaveWPerM2, 1), (raw.LongwaveWPerM2, table.LongwaveWPerM2, 1),
            (raw.CloudFraction, table.CloudFraction, 1), (raw.PrecipitationMmPerH, table.PrecipitationMmPerH, 1), (raw.GustMps, table.GustMps, windFactor),
        ];
        int[] hits = new int[count];
        foreach ((double[]? from, double[] to, double factor) in columns)
        {
            if (from is null) continue;
            Array.Clear(hits);
            foreach (int row in rows)
            {
                if (row >= from.Length || !double.IsFinite(from[row])) continue;
                int hour = (int)Math.Floor((raw.TimeUtc[row] - first).TotalHours);
                for (int h = hour; h < Math.Min(hour + hold, count); h++)
                {
                    double value = from[row] * factor;
                    to[h] = hits[h] == 0 ? value : to[h] + ((value - to[h]) / (hits[h] + 1));
                    hits[h]++;
                }
            }
        }

        return table;
    }

    private static double[] Empty(int count)
    {
        double[] values = new double[count];
        Array.Fill(values, double.NaN);
        return values;
    }

    private static DateTimeOffset Floor(DateTimeOffset time)
    {
        DateTimeOffset utc = time.ToUniversalTime();
        return new DateTimeOffset(utc.Year, utc.Month, utc.Day, utc.Hour, 0, 0, TimeSpan.Zero);
    }
}
