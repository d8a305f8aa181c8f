using SecondShore.Engine.Season;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Lake;

/// <summary>Hands weather as filed to the engine's preparation.</summary>
public static class WeatherInput
{
    /// <summary>One record of several tables in order of time, so that a year filed by itself joins the next at New Year.</summary>
    public static RawWeather Join(IEnumerable<WeatherTable> tables)
    {
        ArgumentNullException.ThrowIfNull(tables);
        WeatherTable[] parts = [.. tables.Where(t => t.Count > 0).OrderBy(t => t.TimesUtc[0])];
        return new RawWeather
        {
            TimeUtc = [.. parts.SelectMany(t => t.TimesUtc)],
            AirTempC = Column(t => t.AirTempC),
            RelativeHumidity = Column(t => t.RelativeHumidity),
            WindMps = Column(t => t.WindMps),
            WindFromDeg = Column(t => t.WindFromDeg),
            ShortwaveWPerM2 = Column(t => t.ShortwaveWPerM2),
            LongwaveWPerM2 = Column(t => t.LongwaveWPerM2),
            CloudFraction = Column(t => t.CloudFraction),
            PrecipitationMmPerH = Column(t => t.PrecipitationMmPerH),
            GustMps = Column(t => t.GustMps),
        };

        double[]? Column(Func<WeatherTable, double[]?> of) => parts.Any(t => of(t) is not null)
            ? [.. parts.SelectMany(t => of(t) ?? Enumerable.Repeat(double.NaN, t.Count))]
            : null;
    }

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
