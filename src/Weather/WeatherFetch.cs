using System.Globalization;
using SecondShore.Formats.Lake;

namespace SecondShore.Weather;

/// <summary>Weather as fetched.</summary>
/// <param name="Season">This season up to now and the forecast after it.</param>
/// <param name="MeasuredUntil">End of what is past; later hours are forecast.</param>
/// <param name="Climate">Past years that came, by year.</param>
/// <param name="Attribution">What the source's licence asks to be shown.</param>
/// <param name="Notes">Everything that was filled, left out or did not come.</param>
public sealed record FetchedWeather(WeatherTable Season, DateTimeOffset MeasuredUntil, IReadOnlyDictionary<int, WeatherTable> Climate, string Attribution, IReadOnlyList<Finding> Notes)
{
    /// <summary>Winds at places of the lake, each with its table of wind alone.</summary>
    public IReadOnlyList<(WindStation At, WeatherTable Wind)> Winds { get; init; } = [];
}

/// <summary>What to fetch.</summary>
/// <param name="LatDeg">Latitude, degrees.</param>
/// <param name="LonDeg">Longitude, degrees.</param>
/// <param name="Years">Past years wanted.</param>
/// <param name="YearsHeld">Years that are there already and are not asked for.</param>
public sealed record WeatherWish(double LatDeg, double LonDeg, int Years, IReadOnlySet<int> YearsHeld)
{
    /// <summary>Places of the lake whose own wind is wanted besides: the days ahead and the few before.</summary>
    public IReadOnlyList<WindStation> Winds { get; init; } = [];
}

/// <summary>Fetches a lake's weather: this year up to now, the days ahead, and past years.</summary>
public sealed class WeatherFetch
{
    // The archive lags behind by some days; the forecast's own past covers them.
    private static readonly int ArchiveLagDays = 7;

    // The water remembers five days of wind.
    private static readonly int WindPastDays = 8;
    private static readonly TimeSpan KeepForecast = TimeSpan.FromMinutes(50);
    private static readonly TimeSpan KeepSeason = TimeSpan.FromHours(20);
    private static readonly TimeSpan KeepYears = TimeSpan.FromDays(365);

    private readonly WeatherService _service;
    private readonly WeatherClient _client;
    private readonly TimeProvider _clock;

    /// <summary>Makes a fetcher.</summary>
    /// <param name="http">The client to ask with; its own time limit should be longer than the patience's.</param>
    /// <param name="service">Whom to ask.</param>
    /// <param name="cache">Where answers are kept.</param>
    /// <param name="clock">The present.</param>
    /// <param name="patience">How patient and polite.</param>
    public WeatherFetch(HttpClient http, WeatherService service, IWeatherCache cache, TimeProvider clock, WeatherPatience? patience = null) =>
        (_service, _client, _clock) = (service, new WeatherClient(http, cache, clock, patience ?? WeatherPatience.Default), clock);

    /// <summary>Fetches.</summary>
    /// <param name="wish">What is wanted.</param>
    /// <param name="progress">Share done, 0 to 1.</param>
    /// <param name="cancel">Stops it; nothing was changed.</param>
    /// <exception cref="WeatherException">The season does not come. Past years that do not come are named in the notes instead.</exception>
    public async Task<FetchedWeather> RunAsync(WeatherWish wish, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(wish);
        List<Finding> notes = [];
        DateTimeOffset now = _clock.GetUtcNow();
        (HourlyBlock season, DateTimeOffset until) = await SeasonAsync(wish, now, notes, cancel).ConfigureAwait(false);
        List<(WindStation, WeatherTable)> winds = await WindsAsync(wish, notes, cancel).ConfigureAwait(false);
        int[] years = [.. Enumerable.Range(now.Year - wish.Years, wish.Years).Where(y => !wish.YearsHeld.Contains(y))];
        Dictionary<int, WeatherTable> climate = [];
        for (int i = 0; i < years.Length; i++)
        {
            progress?.Report((i + 1.0) / (years.Length + 1));
            if (await YearAsync(wish, years[i], notes, cancel).ConfigureAwait(false) is { } year) climate.Add(years[i], year);
        }

        progress?.Report(1);
        WeatherTable all = Tables.Of("weather.csv", season);
        return new FetchedWeather(all, until, climate, _service.Attribution, [.. notes.Distinct()]) { Winds = winds };
    }

    // One place after the other, no faster than the client is polite; two that the service cannot tell apart are asked for once.
    private async Task<List<(WindStation, WeatherTable)>> WindsAsync(WeatherWish wish, List<Finding> notes, CancellationToken cancel)
    {
        List<(WindStation, WeatherTable)> winds = [];
        HashSet<Uri> asked = [];
        foreach (WindStation at in wish.Winds)
        {
            Uri query = _service.ForecastQuery(at.Place.LatDeg, at.Place.LonDeg, WindPastDays, WeatherService.MaxForecastDays);
            if (!asked.Add(query)) continue;
            try
            {
                List<Finding> said = [];
                byte[] answer = await _client.AskAsync(query, KeepForecast, cancel).ConfigureAwait(false);
                WeatherTable all = Tables.Of($"wind/{at.Name}.csv", ReplyReader.Read(answer, said).WithoutEmptyEnd());
                WeatherTable wind = new() { File = all.File, TimesUtc = all.TimesUtc, WindMps = all.WindMps, WindFromDeg = all.WindFromDeg };
                winds.Add((at, wind));
                notes.AddRange(said.Select(s => Finding.Of($"{at.Name}: {s}")));
            }
            catch (WeatherException e)
            {
                notes.Add($"The wind of {at.Name} did not come and is left out: {e.Finding}");
            }
        }

        // One place alone would drive the whole lake.
        return winds.Count > 1 ? winds : [];
    }

    private async Task<(HourlyBlock Block, DateTimeOffset Until)> SeasonAsync(WeatherWish wish, DateTimeOffset now, List<Finding> notes, CancellationToken cancel)
    {
        DateOnly today = DateOnly.FromDateTime(now.UtcDateTime), first = new(today.Year, 1, 1), last = today.AddDays(-ArchiveLagDays);
        // A winter's start says little: early in the year the season of the year before is still wanted.
        if (today.DayOfYear < 60) first = first.AddMonths(-6);
        HourlyBlock? past = null;
        int pastDays = ArchiveLagDays + 5;
        if (last > first)
        {
            try
            {
                past = ReplyReader.Read(await _client.AskAsync(_service.ArchiveQuery(wish.LatDeg, wish.LonDeg, first, last), KeepSeason, cancel).ConfigureAwait(false), notes);
            }
            catch (WeatherException e)
            {
                pastDays = WeatherService.MaxPastDays;
                notes.Add($"The season before the last {pastDays} days did not come: {e.Finding}");
            }
        }

        HourlyBlock ahead = ReplyReader.Read(await _client.AskAsync(_service.ForecastQuery(wish.LatDeg, wish.LonDeg, pastDays, WeatherService.MaxForecastDays), KeepForecast, cancel).ConfigureAwait(false), notes);
        HourlyBlock all = GapFilling.Fill((past is null ? ahead : HourlyBlock.Join(past, ahead)).WithoutEmptyEnd(), notes);
        DateTimeOffset hour = new(now.Year, now.Month, now.Day, now.Hour, 0, 0, TimeSpan.Zero);
        return (all, hour < all.End ? hour : all.End);
    }

    private async Task<WeatherTable?> YearAsync(WeatherWish wish, int year, List<Finding> notes, CancellationToken cancel)
    {
        try
        {
            byte[] answer = await _client.AskAsync(_service.ArchiveQuery(wish.LatDeg, wish.LonDeg, new DateOnly(year, 1, 1), new DateOnly(year, 12, 31)), KeepYears, cancel).ConfigureAwait(false);
            List<Finding> said = [];
            HourlyBlock block = GapFilling.Fill(ReplyReader.Read(answer, said).WithoutEmptyEnd(), said);
            notes.AddRange(said.Select(s => Finding.Of($"{year}: {s}")));
            return Tables.Of(string.Create(CultureInfo.InvariantCulture, $"climate/{year}.csv"), block);
        }
        catch (WeatherException e)
        {
            notes.Add($"The year {year} did not come and is left out: {e.Finding}");
            return null;
        }
    }
}
