using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using SecondShore.Answers;
using SecondShore.Answers.Wind;
using SecondShore.Desk.Graph;
using SecondShore.Desk.Questions;
using SecondShore.Desk.Views;
using SecondShore.Formats;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.Weather;

namespace SecondShore.Desk;

/// <summary>Weather put among the open lake's files: packed by a host, or asked of the open service from here.</summary>
public sealed partial class LakeDesk
{
    /// <summary>Asks the open service, or another of the same form, for the open lake's weather; the changed files go by the tray.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="http">The client to ask with.</param>
    /// <returns>What came.</returns>
    /// <exception cref="SaidException">The weather does not come; it says why.</exception>
    public async Task<WeatherView> FetchWeatherAsync(FetchWeather question, HttpClient http)
    {
        ArgumentNullException.ThrowIfNull(question);
        try
        {
            WeatherAsk ask = question.Ask;
            LakeFolder folder = _graph.Filed();
            WeatherService service = WeatherService.At(Address(ask.Forecast), Address(ask.Archive));
            WeatherWish wish = new(folder.Site.Position.LatDeg, folder.Site.Position.LonDeg, ask.Years, WeatherFiles.YearsOf(folder.Files))
            {
                Winds = WindPoints.Of(_graph.Bottom()),
            };
            FetchedWeather weather = await new WeatherFetch(http, service, new NoWeatherCache(), _clock).RunAsync(wish, Share(Steps.Weather, 0, 1)).ConfigureAwait(false);
            return Handed(WeatherFiles.Into(folder.Files, weather, _clock.GetUtcNow()), weather.Attribution, weather.Notes.Say(_units));
        }
        catch (RefusedException refused)
        {
            throw new SaidException(refused.Finding.Say(_units), refused);
        }
    }

    // Years that the lake has stay as they are; lake.json takes the keys that speak of the weather.
    internal WeatherView TakeWeather(TakeWeather _)
    {
        LakeFolder folder = _graph.Filed();
        ProblemLog log = new();
        (string name, byte[] bytes) = OneBeside();
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
        result = LakeFolderEdits.WithLakeKeys(result, [.. FiledLake.WeatherKeys.Select(key => (key, said[key]))]);
        if (winds.Length > 0) result = LakeFolderEdits.WithLakeKeys(result, (FiledLake.WindKey, said[FiledLake.WindKey]));
        string[] notes = packed.Find("notes.txt") is { } kept ? Encoding.UTF8.GetString(packed.Read(kept)).Split('\n', StringSplitOptions.RemoveEmptyEntries) : [];
        return Handed(result, said["weather_source"]?.GetValue<string>() ?? "", notes);
    }

    // The page keeps them among the lake's files and opens it anew.
    private WeatherView Handed(ILakeFiles files, string source, IReadOnlyList<string> notes)
    {
        Hand(files, ((ChangedFiles)files).ChangedNames);
        return new WeatherView(source, notes);
    }

    private static Uri? Address(string? text) => string.IsNullOrWhiteSpace(text) ? null
        : Uri.TryCreate(text.Trim(), UriKind.Absolute, out Uri? address) && address.Scheme is "http" or "https" ? address
        : throw new CouldNotComputeException(DeskFindings.NoAddress.Of(text));

    // What the weather's licence asks to be shown, as lake.json tells it.
    private static string? WeatherSource(LakeFolder folder) => LakeKey(folder.Files, "weather_source");

    private static string? LakeKey(ILakeFiles files, string key)
    {
        if (files.Find("lake.json") is not { } name) return null;
        try
        {
            using JsonDocument document = JsonDocument.Parse(files.Read(name));
            return document.RootElement.ValueKind == JsonValueKind.Object && document.RootElement.TryGetProperty(key, out JsonElement value)
                && value.ValueKind == JsonValueKind.String ? value.GetString() : null;
        }
        catch (JsonException)
        {
            // The reader has told of it among the problems.
            return null;
        }
    }
}
