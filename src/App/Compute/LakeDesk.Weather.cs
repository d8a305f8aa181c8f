using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using SecondShore.Answers;
using SecondShore.Answers.Wind;
using SecondShore.App.Compute.Views;
using SecondShore.Formats;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.Weather;

namespace SecondShore.App.Compute;

/// <summary>Weather put among the open lake's files: packed by a host, or asked of the open service from here.</summary>
internal sealed partial class LakeDesk
{
    private static readonly string[] WeatherKeys = ["measured_until", "weather_source"];

    /// <summary>Asks the open service, or another of the same form, for the open lake's weather.</summary>
    /// <param name="json">An <see cref="AskAbout"/>.</param>
    /// <param name="http">The client to ask with.</param>
    /// <param name="clock">The present.</param>
    /// <returns>A <see cref="WeatherView"/> as JSON; the changed files go by the tray.</returns>
    /// <exception cref="SaidException">The weather does not come; it says why.</exception>
    public async Task<string> AskWeatherAsync(string json, HttpClient http, TimeProvider clock)
    {
        AskAbout about = JsonSerializer.Deserialize(json, ViewsJson.Default.AskAbout) ?? new AskAbout();
        try
        {
            return await FetchAsync(about, http, clock).ConfigureAwait(false);
        }
        catch (RefusedException refused)
        {
            throw new SaidException(refused.Finding.Say(about.Units), refused);
        }
    }

    private async Task<string> FetchAsync(AskAbout about, HttpClient http, TimeProvider clock)
    {
        WeatherAsk ask = about.Weather ?? new WeatherAsk();
        LakeFolder folder = _filed ?? throw new CouldNotComputeException(DeskFindings.NoLakeOpen.Of());
        WeatherService service = WeatherService.At(Address(ask.Forecast), Address(ask.Archive));
        WeatherWish wish = new(folder.Site.Position.LatDeg, folder.Site.Position.LonDeg, ask.Years, WeatherFiles.YearsOf(folder.Files))
        {
            Winds = _lake is { } prepared ? WindPoints.Of(prepared) : [],
        };
        FetchedWeather weather = await new WeatherFetch(http, service, new NoWeatherCache(), clock).RunAsync(wish, Share(Steps.Weather, 0, 1)).ConfigureAwait(false);
        return Handed(WeatherFiles.Into(folder.Files, weather, clock.GetUtcNow()), weather.Attribution, weather.Notes.Say(about.Units));
    }

    // Years that the lake has stay as they are; lake.json takes the keys that speak of the weather.
    private string TakeWeather(IReadOnlyDictionary<string, byte[]> files)
    {
        LakeFolder folder = _filed ?? throw new CouldNotComputeException(DeskFindings.NoLakeOpen.Of());
        ProblemLog log = new();
        (string name, byte[] bytes) = files.First();
        MemoryFiles packed = TripFile.Read(name, bytes, log) ?? throw Refused(log);
        IReadOnlySet<int> held = WeatherFiles.YearsOf(folder.Files);
        ILakeFiles result = ChangedFiles.Of(folder.Files, folder.Files.Find("weather.csv") ?? "weather.csv", packed.Read(packed.Find("weather.csv")
            ?? throw new CouldNotComputeException(DeskFindings.NoWeatherInAnswer.Of())));
        foreach (int year in WeatherFiles.YearsOf(packed).Where(y => !held.Contains(y)).Order())
        {
            string file = string.Create(CultureInfo.InvariantCulture, $"climate/{year}.csv");
            if (packed.Find(file) is { } found) result = ChangedFiles.Of(result, file, packed.Read(found));
        }

        string[] winds = [.. packed.Entries.Select(e => e.Name).Where(n => n.StartsWith("wind/", StringComparison.Ordinal))];
        foreach (string wind in winds) result = ChangedFiles.Of(result, wind, packed.Read(wind));
        JsonObject said = packed.Find("lake.json") is { } document && JsonNode.Parse(packed.Read(document)) is JsonObject root ? root : [];
        result = LakeFolderEdits.WithLakeKeys(result, [.. WeatherKeys.Select(key => (key, said[key]))]);
        if (winds.Length > 0) result = LakeFolderEdits.WithLakeKeys(result, ("wind_stations", said["wind_stations"]));
        string[] notes = packed.Find("notes.txt") is { } kept ? Encoding.UTF8.GetString(packed.Read(kept)).Split('\n', StringSplitOptions.RemoveEmptyEntries) : [];
        return Handed(result, said["weather_source"]?.GetValue<string>() ?? "", notes);
    }

    private string Handed(ILakeFiles files, string source, IReadOnlyList<string> notes)
    {
        Hand(files, ((ChangedFiles)files).ChangedNames);
        return JsonSerializer.Serialize(new WeatherView(source, notes), ViewsJson.Default.WeatherView);
    }

    private static Uri? Address(string? text) => string.IsNullOrWhiteSpace(text) ? null
        : Uri.TryCreate(text.Trim(), UriKind.Absolute, out Uri? address) && address.Scheme is "http" or "https" ? address
        : throw new CouldNotComputeException(DeskFindings.NoAddress.Of(text));

    // What the weather's licence asks to be shown, as lake.json tells it.
    private static string? WeatherSource(LakeFolder folder)
    {
        if (folder.Files.Find("lake.json") is not { } name) return null;
        try
        {
            using JsonDocument document = JsonDocument.Parse(folder.Files.Read(name));
            return document.RootElement.ValueKind == JsonValueKind.Object && document.RootElement.TryGetProperty("weather_source", out JsonElement source)
                && source.ValueKind == JsonValueKind.String ? source.GetString() : null;
        }
        catch (JsonException)
        {
            // The reader has told of it among the problems.
            return null;
        }
    }
}
