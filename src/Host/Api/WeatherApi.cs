using System.Globalization;
using System.Text;
using Microsoft.AspNetCore.Http.Timeouts;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.Host.Security;
using SecondShore.Host.Watch;
using SecondShore.Weather;

namespace SecondShore.Host.Api;

/// <summary>What fetching weather did, for the app.</summary>
/// <param name="Attribution">Shown beside the weather.</param>
/// <param name="MeasuredUntil">End of the past part, ISO-8601.</param>
/// <param name="Notes">What was filled, left out or did not come.</param>
/// <param name="Files">Names of files that are new.</param>
internal sealed record WeatherAnswer(string Attribution, string MeasuredUntil, IReadOnlyList<string> Notes, IReadOnlyList<string> Files);

/// <summary>
/// Weather through the host. <c>POST /api/lakes/ID/weather</c> fetches it for a lake the host has and keeps it as new versions of
/// files; <c>GET /api/weather</c> hands it to an app as a packed folder, for a lake only the device has.
/// </summary>
internal static class WeatherApi
{
    private static readonly int MostYears = 40;

    // Whoever asks is waiting: a service that is out is told of soon. Past years are asked for a second apart and take longer.
    private static readonly WeatherPatience Patience = new(1, TimeSpan.FromSeconds(1), TimeSpan.FromSeconds(15), TimeSpan.FromSeconds(1));

    private static TimeSpan LongestFor(WeatherWish wish) => TimeSpan.FromSeconds(20 + (3 * (wish.Years + wish.Winds.Count)));

    public static void AddHostWeather(this IServiceCollection services, HostSettings settings)
    {
        services.AddHttpClient("weather", client =>
        {
            client.Timeout = Timeout.InfiniteTimeSpan;
            client.DefaultRequestHeaders.UserAgent.ParseAdd("second-shore/" + ProgramVersion.Text.Split('+')[0]);
        })
        // The service is the one that was named: it may not send the host elsewhere, into its own network least of all.
        .ConfigurePrimaryHttpMessageHandler(() => new SocketsHttpHandler { AllowAutoRedirect = false, ConnectTimeout = TimeSpan.FromSeconds(10) });
        services.AddSingleton(provider => new WeatherFetch(provider.GetRequiredService<IHttpClientFactory>().CreateClient("weather"),
            WeatherService.At(settings.WeatherForecast, settings.WeatherArchive), new FolderWeatherCache(Path.Combine(settings.DataFolder, "weather")),
            provider.GetRequiredService<TimeProvider>(), Patience));
        services.AddSingleton<LakeFilesAtHost>();
    }

    public static void MapWeather(this RouteGroupBuilder api, Turns turns)
    {
        api.MapPost("/lakes/{lake}/weather", ForLakeAsync).RequireAuthorization().AddEndpointFilter(new LakeRight(write: true)).AddEndpointFilter(turns.Weather).WithMetadata(new DisableRequestTimeoutAttribute());
        api.MapGet("/weather", ForPlaceAsync).RequireAuthorization().AddEndpointFilter(turns.Weather).WithMetadata(new DisableRequestTimeoutAttribute());
    }

    private static async Task<IResult> ForLakeAsync(string lake, int? years, HttpContext context, WeatherFetch fetch, LakeFilesAtHost lakes, Meters meters, TimeProvider clock)
    {
        MemoryFiles files = await lakes.SmallAsync(lake, context.RequestAborted).ConfigureAwait(false);
        LakeFolder folder = LakeFolderReader.Read(files, cancellation: context.RequestAborted);
        if (!folder.HasSite) return Replies.No(StatusCodes.Status422UnprocessableEntity, "The host does not know where this lake lies: its lake.json gives no position. Put latitude_deg and longitude_deg into it and sync.");
        WeatherWish wish = new(folder.Site.Position.LatDeg, folder.Site.Position.LonDeg, Math.Clamp(years ?? 15, 0, MostYears), await lakes.YearsAsync(lake, context.RequestAborted).ConfigureAwait(false));
        if (await TryAsync(fetch, wish, meters, context).ConfigureAwait(false) is not { } weather) return NotCome(context);
        ChangedFiles changed = (ChangedFiles)WeatherFiles.Into(files, weather, clock.GetUtcNow());
        await lakes.KeepAsync(lake, context.Writer(), changed.ChangedNames.Select(n => (n, changed.Read(n))), context.RequestAborted).ConfigureAwait(false);
        return Results.Json(new WeatherAnswer(weather.Attribution, weather.MeasuredUntil.UtcDateTime.ToString("O"), weather.Notes.Say(UnitSystem.Metric), [.. changed.ChangedNames.Order(StringComparer.Ordinal)]), ApiJson.Default.WeatherAnswer);
    }

    private static async Task<IResult> ForPlaceAsync(double latitude, double longitude, int? years, string? winds, HttpContext context,
        WeatherFetch fetch, Meters meters, TimeProvider clock)
    {
        if (ForecastPlaces.Parse(winds) is not { } places)
        {
            return Replies.No(StatusCodes.Status400BadRequest,
                $"The places of winds must be latitude,longitude;latitude,longitude, at most {ForecastPlaces.Most} of them.");
        }

        if (!(Math.Abs(latitude) <= 90 && Math.Abs(longitude) <= 180)) return Replies.No(StatusCodes.Status400BadRequest, "The latitude must lie within 90 and the longitude within 180 degrees.");
        WeatherWish wish = new(latitude, longitude, Math.Clamp(years ?? 15, 0, MostYears), new HashSet<int>()) { Winds = places };
        if (await TryAsync(fetch, wish, meters, context).ConfigureAwait(false) is not { } weather) return NotCome(context);
        ILakeFiles files = WeatherFiles.Into(new MemoryFiles("weather"), weather, clock.GetUtcNow());
        files = ChangedFiles.Of(files, "notes.txt", Encoding.UTF8.GetBytes(string.Join('\n', weather.Notes.Say(UnitSystem.Metric.In(Sentences.SpeechFor(Language(context)))))));
        return Results.Bytes(TripFile.ToBytes(files), "application/zip");
    }

    private static async Task<FetchedWeather?> TryAsync(WeatherFetch fetch, WeatherWish wish, Meters meters, HttpContext context)
    {
        using CancellationTokenSource limit = CancellationTokenSource.CreateLinkedTokenSource(context.RequestAborted);
        limit.CancelAfter(LongestFor(wish));
        try
        {
            FetchedWeather weather = await fetch.RunAsync(wish, null, limit.Token).ConfigureAwait(false);
            meters.Weather(came: true);
            return weather;
        }
        catch (OperationCanceledException) when (!context.RequestAborted.IsCancellationRequested)
        {
            meters.Weather(came: false);
            context.Items["weather"] = string.Create(CultureInfo.InvariantCulture, $"The weather service did not give everything within {LongestFor(wish).TotalSeconds:0} s. Try again later, or ask for fewer past years.");
            return null;
        }
        catch (WeatherException e)
        {
            meters.Weather(came: false);
            context.Items["weather"] = e.Finding.Say(UnitSystem.Metric.In(Sentences.SpeechFor(Language(context))));
            return null;
        }
    }

    // The app's own language, asked for with the weather; English where none is named.
    private static string Language(HttpContext context) => context.Request.Query["language"].ToString();

    private static IResult NotCome(HttpContext context) => Replies.No(StatusCodes.Status502BadGateway, context.Items["weather"] as string ?? "The weather did not come.");
}
