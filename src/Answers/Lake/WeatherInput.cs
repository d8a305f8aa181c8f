using SecondShore.Engine.Season;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Lake;

/// <summary>Hands weather as filed to the engine's preparation.</summary>
public static class WeatherInput
{
    /// <summary>The engine's raw record of a table; columns the file lacks stay absent.</summary>
    public static RawWeather ToRaw(WeatherTable table)
    {
        ArgumentNullException.ThrowIfNull(table);
        return new RawWeather
        {
            TimeUtc = table.TimesUtc,
            AirTempC = table.AirTempC,
            RelativeHumidity = table.RelativeHumidity,
            WindMps = table.WindMps,
            WindFromDeg = table.WindFromDeg,
            ShortwaveWPerM2 = table.ShortwaveWPerM2,
            LongwaveWPerM2 = table.LongwaveWPerM2,
            CloudFraction = table.CloudFraction,
            PrecipitationMmPerH = table.PrecipitationMmPerH,
            GustMps = table.GustMps,
        };
    }
}
