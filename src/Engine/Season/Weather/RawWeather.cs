namespace SecondShore.Engine.Season;

/// <summary>
/// Weather as a file or a service gives it: any step, gaps as NaN. Columns are parallel to <see cref="TimeUtc"/>; a
/// column that was never measured is null.
/// </summary>
public sealed record RawWeather
{
    /// <summary>Stamps, UTC, increasing; a value holds from its stamp to the next.</summary>
    public required IReadOnlyList<DateTimeOffset> TimeUtc { get; init; }

    /// <summary>Air temperature, degC.</summary>
    public double[]? AirTempC { get; init; }

    /// <summary>Relative humidity, 0 to 1.</summary>
    public double[]? RelativeHumidity { get; init; }

    /// <summary>Wind, m s-1, at <see cref="WindHeightM"/>.</summary>
    public double[]? WindMps { get; init; }

    /// <summary>Where the wind comes from, degrees.</summary>
    public double[]? WindFromDeg { get; init; }

    /// <summary>Downward shortwave, W m-2.</summary>
    public double[]? ShortwaveWPerM2 { get; init; }

    /// <summary>Downward longwave, W m-2.</summary>
    public double[]? LongwaveWPerM2 { get; init; }

    /// <summary>Cloud fraction, 0 to 1.</summary>
    public double[]? CloudFraction { get; init; }

    /// <summary>Rain, mm per hour.</summary>
    public double[]? PrecipitationMmPerH { get; init; }

    /// <summary>Gusts, m s-1.</summary>
    public double[]? GustMps { get; init; }

    /// <summary>Height of the wind over ground, m; null when not said.</summary>
    public double? WindHeightM { get; init; }
}

/// <summary>Weather made ready, and what had to be done to it.</summary>
/// <param name="Segments">Gap-free hourly series in time order; more than one where a gap was too long to fill.</param>
/// <param name="Notes">What was filled, converted or guessed, in sentences.</param>
/// <param name="Source">What kind of weather it looks like.</param>
public sealed record PreparedWeather(IReadOnlyList<WeatherSeries> Segments, IReadOnlyList<string> Notes, WeatherSource Source)
{
    /// <summary>The newest segment; null without any weather.</summary>
    public WeatherSeries? Latest => Segments.Count > 0 ? Segments[^1] : null;
}

/// <summary>Kinds of weather record, as far as the record itself tells; its step in time is no part of it.</summary>
public enum WeatherSource
{
    /// <summary>A station on land.</summary>
    Station,

    /// <summary>A cell of a weather model or reanalysis: complete, with longwave.</summary>
    Grid,

    /// <summary>No weather: a climate made from latitude and date.</summary>
    Climate,
}
