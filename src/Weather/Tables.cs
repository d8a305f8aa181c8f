using SecondShore.Formats.Lake;

namespace SecondShore.Weather;

/// <summary>Hours as the lake folder's table.</summary>
internal static class Tables
{
    public static WeatherTable Of(string file, HourlyBlock block)
    {
        DateTimeOffset[] times = new DateTimeOffset[block.Hours];
        for (int i = 0; i < times.Length; i++) times[i] = block.Start.AddHours(i);
        return new WeatherTable
        {
            File = file,
            TimesUtc = times,
            AirTempC = Column(HourlyColumn.AirTemp),
            RelativeHumidity = Column(HourlyColumn.Humidity),
            WindMps = Column(HourlyColumn.Wind),
            WindFromDeg = Column(HourlyColumn.WindFrom),
            GustMps = Column(HourlyColumn.Gust),
            ShortwaveWPerM2 = Column(HourlyColumn.Shortwave),
            CloudFraction = Column(HourlyColumn.Cloud),
            PrecipitationMmPerH = Column(HourlyColumn.Rain),
        };

        double[]? Column(HourlyColumn column)
        {
            for (int c = 0; c < HourlyColumn.All.Count; c++)
                if (HourlyColumn.All[c] == column) return block.Values[c];
            return null;
        }
    }
}
