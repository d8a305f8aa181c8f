using System.Text.Json;
using System.Text.Json.Nodes;
using SecondShore.Formats.Files;

namespace SecondShore.Desk.Graph;

/// <summary>A lake's files with the ids of what bears on which answer. A file's id is worked out once.</summary>
internal sealed class FiledLake
{
    /// <summary>Keys of lake.json that speak of the weather alone.</summary>
    public static readonly IReadOnlyList<string> WeatherKeys = ["measured_until", "weather_source"];

    /// <summary>The key of lake.json that says where the winds of the folder <c>wind/</c> were taken.</summary>
    public const string WindKey = "wind_stations";

    // What tells of water, weather and fishing says nothing of where the bottom is. Whatever else lies in the folder may be a survey.
    private static readonly string[] NoBottom =
    [
        "tackle.json", "log.csv", "readings.csv", "secchi.csv", "profiles.csv", "weather.csv",
        "level.csv", "flows.csv", "cover.csv", "cover.gpx", "overturn.csv",
    ];

    private static readonly string[] NoBottomIn = ["climate/", "wind/"];
    private readonly Dictionary<string, ContentId> _ids;

    private ContentId? _tackle, _allButTackle, _season, _bottom, _weather;

    public FiledLake(ILakeFiles files)
    {
        Files = files;
        _ids = files.Entries.ToDictionary(e => e.Name, e => ContentId.Of(files.Read(e.Name)), StringComparer.Ordinal);
    }

    private FiledLake(ChangedFiles files, Dictionary<string, ContentId> before)
    {
        Files = files;
        _ids = files.Entries.ToDictionary(e => e.Name, IdOf, StringComparer.Ordinal);

        ContentId IdOf(LakeFileEntry e) =>
            !files.ChangedNames.Contains(e.Name) && before.TryGetValue(e.Name, out ContentId id) ? id : ContentId.Of(files.Read(e.Name));
    }

    /// <summary>The files.</summary>
    public ILakeFiles Files { get; }

    /// <summary>The tackle box.</summary>
    public ContentId Tackle => _tackle ??= IdOf(name => Is(name, "tackle.json"));

    /// <summary>All but the tackle box, which alone changes as often as a jig is tied on.</summary>
    public ContentId AllButTackle => _allButTackle ??= IdOf(name => !Is(name, "tackle.json"));

    /// <summary>What the season's course rests on: all but the tackle box and the log.</summary>
    public ContentId Season => _season ??= IdOf(name => !Is(name, "tackle.json") && !Is(name, "log.csv"));

    /// <summary>What the weather rests on: its own files and where the lake lies.</summary>
    public ContentId Weather => _weather ??= ContentId.Of([Bottom.Hex, .. Words(IsOfWeather)]);

    /// <summary>What the bottom rests on: surveys and the keys of lake.json that do not speak of weather or wind.</summary>
    public ContentId Bottom => _bottom ??= ContentId.Of([.. Words(name => IsOfBottom(name) && !Is(name, "lake.json")), LakeButWeather()]);

    /// <summary>The same files with some of them changed.</summary>
    public FiledLake With(ILakeFiles changed) =>
        changed is ChangedFiles few && ReferenceEquals(few.Origin, (Files as ChangedFiles)?.Origin ?? Files) ? new FiledLake(few, _ids) : new FiledLake(changed);

    private ContentId IdOf(Func<string, bool> counts) => ContentId.Of(Words(counts));

    private IEnumerable<string> Words(Func<string, bool> counts) =>
        Files.Entries.Where(e => counts(e.Name)).SelectMany(e => (string[])[e.Name, _ids[e.Name].Hex]);

    private static bool Is(string name, string file) => string.Equals(name, file, StringComparison.OrdinalIgnoreCase);

    private static bool IsOfWeather(string name) => Is(name, "weather.csv") || name.StartsWith("climate/", StringComparison.OrdinalIgnoreCase);

    private static bool IsOfBottom(string name) =>
        !NoBottom.Any(file => Is(name, file)) && !NoBottomIn.Any(folder => name.StartsWith(folder, StringComparison.OrdinalIgnoreCase));

    private string LakeButWeather()
    {
        if (Files.Find("lake.json") is not { } name) return "";
        try
        {
            if (JsonNode.Parse(Files.Read(name)) is not JsonObject lake) return _ids[name].Hex;
            foreach (string key in WeatherKeys.Append(WindKey)) lake.Remove(key);
            return lake.ToJsonString();
        }
        catch (Exception e) when (e is JsonException or ArgumentException)
        {
            // What cannot be read so is what it is, byte for byte; a key written twice is an argument's fault to the reader of nodes.
            return _ids[name].Hex;
        }
    }
}
