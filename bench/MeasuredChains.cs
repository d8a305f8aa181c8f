using System.Globalization;
using System.Text;
using System.Text.Json;
using SecondShore.Answers.Lake;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.Formats.Writers;

namespace SecondShore.Bench;

/// <summary>A lake with measured chains of thermometers and wind, as a user would file it.</summary>
/// <param name="Name">Folder name.</param>
/// <param name="Lake">The lake, its winds by place.</param>
/// <param name="OneWind">The same lake with the mean of its winds alone.</param>
/// <param name="Chains">Its chains.</param>
/// <param name="From">Start of the stratified time.</param>
/// <param name="To">Its end.</param>
internal sealed record MeasuredChainLake(string Name, PreparedLake Lake, PreparedLake OneWind, IReadOnlyList<MeasuredChain> Chains, DateTimeOffset From, DateTimeOffset To);

/// <summary>The measured chains beside the repository, or in the folder SECONDSHORE_SHARED names.</summary>
internal static class MeasuredChains
{
    /// <summary>All of them; none, with a sentence why, where there are none.</summary>
    public static IEnumerable<MeasuredChainLake> Read()
    {
        string shared = Environment.GetEnvironmentVariable("SECONDSHORE_SHARED") ?? Path.GetFullPath(Path.Combine("..", "shared"));
        string folder = Path.Combine(shared, "motion");
        if (!Directory.Exists(folder)) Console.Error.WriteLine($"There are no measured chains at {folder}; set SECONDSHORE_SHARED.");
        else
        {
            yield return Lake(Path.Combine(folder, "lake-mendota-2009"), new Source("EPSG:3071", 0, 3, false, At(2009, 7, 23, 6), At(2009, 7, 30, 6)));
            // The shore stations' height is not stated; instruments of their kind stand 2 to 3 m high. The grid lies 1.1 m above that spring's level.
            yield return Lake(Path.Combine(folder, "clear-lake-2019"), new Source("EPSG:32610", 1.1, 2.5, true, At(2019, 4, 24, 0), At(2019, 5, 16, 12)));
        }
    }

    private static DateTimeOffset At(int year, int month, int day, int hour) => new(year, month, day, hour, 0, 0, TimeSpan.Zero);

    private static MeasuredChainLake Lake(string folder, Source source)
    {
        using JsonDocument json = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(folder, "lake.json")));
        JsonElement root = json.RootElement;
        string[] rows = File.ReadAllLines(Path.Combine(folder, "wind.csv"));
        bool hasStations = root.TryGetProperty("wind_stations", out JsonElement places);
        Dictionary<string, List<string>> byStation = [];
        int speed = Array.IndexOf(rows[0].Split(','), "wind_speed_m_s");
        foreach (string row in rows.Skip(1))
        {
            string[] cells = row.Split(',');
            string station = hasStations ? cells[1] : "BUOY";
            if (!byStation.TryGetValue(station, out List<string>? kept)) byStation[station] = kept = ["time,wind_speed_m_s,wind_dir_deg,air_temp_c"];
            kept.Add($"{cells[0]},{cells[speed]},{cells[speed + 1]},{cells[speed + 2]}");
        }

        GeoPoint Place(JsonElement at) => new(at.GetProperty("latitude_deg").GetDouble(), at.GetProperty("longitude_deg").GetDouble());
        LakeDocument document = new()
        {
            Name = root.GetProperty("name").GetString(),
            Position = Place(root),
            ElevationM = root.GetProperty("elevation_m").GetDouble(),
            TimeZoneId = "UTC",
            WindHeightM = source.HeightM,
            SurveyOptions = new Dictionary<string, Formats.Surveys.SurveyOptions> { [""] = new() { Crs = source.Crs, Unit = Formats.Surveys.DepthUnit.Metres, Sense = Formats.Surveys.DepthSense.Depth } },
            SurveyBelowFullPoolM = source.BelowM,
            WindStations = [.. byStation.Keys.Select(s => new WindStation(s, Place(hasStations ? places.GetProperty(s) : root.GetProperty("chain")), source.HeightM, source.OnLand))],
            Moorings = hasStations
                ? [.. root.GetProperty("moorings").EnumerateObject().Select(m => new Mooring(m.Name, Place(m.Value)))]
                : [new Mooring("BUOY", Place(root.GetProperty("chain")))],
        };
        MemoryFiles one = new MemoryFiles(Path.GetFileName(folder))
            .With("survey.asc", File.ReadAllBytes(Directory.GetFiles(folder, "bathymetry*.asc")[0]))
            .With("weather.csv", MeanWind(byStation.Values))
            .With("lake.json", LakeJson.Lake(document with { WindStations = [] }));
        MemoryFiles all = one.With("lake.json", LakeJson.Lake(document));
        foreach ((string station, List<string> kept) in byStation) all = all.With($"wind/{station}.csv", string.Join('\n', kept) + "\n");
        string chainFile = Path.Combine(folder, "chain.csv");
        IReadOnlyList<MeasuredChain> chains = ChainReader.Read(Path.GetFileName(chainFile), File.ReadAllBytes(chainFile), TimeZoneInfo.Utc, out _);
        return new MeasuredChainLake(one.Name, Prepared(all), Prepared(one), chains, source.From, source.To);
    }

    private static PreparedLake Prepared(MemoryFiles files)
    {
        LakeFolder folder = LakeFolderReader.Read(files);
        if (!folder.IsUsable) throw new InvalidOperationException(string.Join("; ", folder.Problems.Select(p => p.Message)));
        return PreparedLake.From(folder);
    }

    // Mean of the components at each stamp.
    private static string MeanWind(IEnumerable<List<string>> stations)
    {
        SortedDictionary<string, (double East, double North, double Air, int Count)> sums = new(StringComparer.Ordinal);
        foreach (string row in stations.SelectMany(s => s.Skip(1)))
        {
            string[] cells = row.Split(',');
            if (!double.TryParse(cells[1], CultureInfo.InvariantCulture, out double mps) || !double.TryParse(cells[3], CultureInfo.InvariantCulture, out double air)) continue;
            double rad = double.DegreesToRadians(double.TryParse(cells[2], CultureInfo.InvariantCulture, out double deg) ? deg : 0);
            (double e, double n, double a, int count) = sums.GetValueOrDefault(cells[0]);
            sums[cells[0]] = (e + (mps * Math.Sin(rad)), n + (mps * Math.Cos(rad)), a + air, count + 1);
        }

        StringBuilder text = new("time,wind_speed_m_s,wind_dir_deg,air_temp_c\n");
        foreach ((string time, (double e, double n, double air, int count)) in sums)
            text.Append(CultureInfo.InvariantCulture, $"{time},{Math.Sqrt((e * e) + (n * n)) / count:0.###},{(double.RadiansToDegrees(Math.Atan2(e, n)) + 360) % 360:0.#},{air / count:0.##}\n");
        return text.ToString();
    }

    private sealed record Source(string Crs, double BelowM, double HeightM, bool OnLand, DateTimeOffset From, DateTimeOffset To);
}
