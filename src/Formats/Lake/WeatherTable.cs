namespace SecondShore.Formats.Lake;

/// <summary>
/// Weather as filed: strictly increasing times, even or not, gaps left open. Arrays are parallel to
/// <see cref="TimesUtc"/>; NaN marks a missing value, null a column that the file lacks. Arrays are kept, not copied.
/// </summary>
public sealed record WeatherTable
{
    /// <summary>The file's name, for messages.</summary>
    public required string File { get; init; }

    /// <summary>Stamps, UTC, strictly increasing. A value holds for the step that starts at its stamp.</summary>
    public required DateTimeOffset[] TimesUtc { get; init; }

    /// <summary>Air temperature, degC.</summary>
    public double[]? AirTempC { get; init; }

    /// <summary>Relative humidity, 0 to 1.</summary>
    public double[]? RelativeHumidity { get; init; }

    /// <summary>Mean wind at the height of measurement, m s-1.</summary>
    public double[]? WindMps { get; init; }

    /// <summary>Where the wind comes from, degrees clockwise from north.</summary>
    public double[]? WindFromDeg { get; init; }

    /// <summary>Gusts, m s-1.</summary>
    public double[]? GustMps { get; init; }

    /// <summary>Downward shortwave, W m-2.</summary>
    public double[]? ShortwaveWPerM2 { get; init; }

    /// <summary>Downward longwave, W m-2.</summary>
    public double[]? LongwaveWPerM2 { get; init; }

    /// <summary>Cloud fraction, 0 to 1.</summary>
    public double[]? CloudFraction { get; init; }

    /// <summary>Rain, mm per hour.</summary>
    public double[]? PrecipitationMmPerH { get; init; }

    /// <summary>Number of rows.</summary>
    public int Count => TimesUtc.Length;

    /// <summary>The usual step between stamps, s (the median); 3600 with fewer than two rows.</summary>
    public double StepS
    {
        get
        {
            if (TimesUtc.Length < 2) return 3600;
            long[] ticks = new long[TimesUtc.Length - 1];
            for (int i = 0; i < ticks.Length; i++) ticks[i] = (TimesUtc[i + 1] - TimesUtc[i]).Ticks;
            Array.Sort(ticks);
            return TimeSpan.FromTicks(ticks[ticks.Length / 2]).TotalSeconds;
        }
    }
}

/// <summary>The wind of a place of its own.</summary>
/// <param name="Station">The place.</param>
/// <param name="Table">Its rows; only wind and direction are used.</param>
public sealed record PlacedWeather(WindStation Station, WeatherTable Table);

/// <summary>A year's measured overturn, to score against.</summary>
/// <param name="Year">The year.</param>
/// <param name="LastStratified">Last day seen stratified; null when none was.</param>
/// <param name="FirstMixed">First day after which every day seen was mixed; null when the record ended before.</param>
/// <param name="FirstMixedWeek">First day of a week in which every day seen was mixed; null when not known.</param>
public sealed record OverturnRow(int Year, DateOnly? LastStratified, DateOnly? FirstMixed, DateOnly? FirstMixedWeek);
