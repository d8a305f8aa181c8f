using System.Globalization;

namespace SecondShore.Weather;

/// <summary>Where hourly weather comes from: an open service, or another one that speaks the same documented form.</summary>
/// <param name="Forecast">Address of the forecast, which also gives the recent past.</param>
/// <param name="Archive">Address of the archive of past years.</param>
/// <param name="Attribution">What its licence asks to be shown.</param>
public sealed record WeatherService(Uri Forecast, Uri Archive, string Attribution)
{
    /// <summary>The open service used where no other is given: no key, data under CC BY 4.0.</summary>
    public static WeatherService Default { get; } = new(
        new Uri("https://api.open-meteo.com/v1/forecast"),
        new Uri("https://archive-api.open-meteo.com/v1/archive"),
        "Weather data by Open-Meteo.com (CC BY 4.0)");

    /// <summary>Days of the past that the forecast's address gives at most.</summary>
    public static readonly int MaxPastDays = 92;

    /// <summary>Days ahead that it gives at most.</summary>
    public static readonly int MaxForecastDays = 16;

    /// <summary>The default with other addresses.</summary>
    public static WeatherService At(Uri? forecast, Uri? archive) => forecast is null && archive is null ? Default : new WeatherService(
        forecast ?? Default.Forecast, archive ?? Default.Archive,
        string.Create(CultureInfo.InvariantCulture, $"Weather data by {(forecast ?? archive)!.Host}; its licence applies"));

    internal Uri ForecastQuery(double latDeg, double lonDeg, int pastDays, int forecastDays) => Query(Forecast, latDeg, lonDeg,
        string.Create(CultureInfo.InvariantCulture, $"past_days={pastDays}&forecast_days={forecastDays}"));

    internal Uri ArchiveQuery(double latDeg, double lonDeg, DateOnly from, DateOnly to) => Query(Archive, latDeg, lonDeg,
        string.Create(CultureInfo.InvariantCulture, $"start_date={from:yyyy-MM-dd}&end_date={to:yyyy-MM-dd}"));

    // Two decimals, about a kilometre: weather is no finer, and the service need not know the ramp.
    private static Uri Query(Uri address, double latDeg, double lonDeg, string span)
    {
        string joint = address.Query.Length > 0 ? "&" : "?", columns = string.Join(',', HourlyColumn.All.Select(c => c.Name));
        string place = string.Create(CultureInfo.InvariantCulture, $"latitude={latDeg:0.00}&longitude={lonDeg:0.00}");
        return new Uri($"{address.AbsoluteUri}{joint}{place}&hourly={columns}&{span}"
            + "&timezone=GMT&timeformat=unixtime&temperature_unit=celsius&wind_speed_unit=ms&precipitation_unit=mm");
    }
}
