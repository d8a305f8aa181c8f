using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.Formats.Writers;

namespace SecondShore.Weather;

/// <summary>Weather as files of a lake folder, with its source written on top.</summary>
public static class WeatherFiles
{
    /// <summary>The lake's files with the weather in them; climate files that are there stay as they are.</summary>
    /// <param name="files">The lake's files.</param>
    /// <param name="weather">What was fetched.</param>
    /// <param name="now">When.</param>
    /// <exception cref="InvalidDataException">lake.json is no JSON object.</exception>
    public static ILakeFiles Into(ILakeFiles files, FetchedWeather weather, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(weather);
        string head = string.Create(CultureInfo.InvariantCulture, $"# {weather.Attribution}; fetched {now.UtcDateTime:yyyy-MM-dd HH:mm} UTC\n");
        ILakeFiles result = ChangedFiles.Of(files, files.Find("weather.csv") ?? "weather.csv", Bytes(head, weather.Season));
        foreach ((int year, WeatherTable table) in weather.Climate.OrderBy(y => y.Key))
            result = ChangedFiles.Of(result, string.Create(CultureInfo.InvariantCulture, $"climate/{year}.csv"), Bytes(head, table));
        foreach ((WindStation at, WeatherTable wind) in weather.Winds)
            result = ChangedFiles.Of(result, $"wind/{at.Name}.csv", Bytes(head, wind));
        if (weather.Winds.Count > 0) result = LakeFolderEdits.WithWindStations(result, [.. weather.Winds.Select(w => w.At)]);
        return LakeFolderEdits.WithLakeKeys(result,
            ("measured_until", JsonValue.Create(weather.MeasuredUntil.UtcDateTime.ToString("yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture))),
            ("weather_source", JsonValue.Create(weather.Attribution)));
    }

    /// <summary>Years of past weather that a lake has.</summary>
    public static IReadOnlySet<int> YearsOf(ILakeFiles files)
    {
        ArgumentNullException.ThrowIfNull(files);
        HashSet<int> years = [];
        foreach (LakeFileEntry file in files.Entries)
            if (file.Name.StartsWith("climate/", StringComparison.OrdinalIgnoreCase) && int.TryParse(FileNames.Stem(FileNames.Leaf(file.Name)), NumberStyles.None, CultureInfo.InvariantCulture, out int year)) years.Add(year);
        return years;
    }

    private static byte[] Bytes(string head, WeatherTable table) => Encoding.UTF8.GetBytes(head + LakeCsv.Weather(Rounded(table)));

    // The service gives tenths; unit factors must not make digits that nobody measured.
    private static WeatherTable Rounded(WeatherTable t) => t with
    {
        AirTempC = Round(t.AirTempC, 2),
        RelativeHumidity = Round(t.RelativeHumidity, 4),
        WindMps = Round(t.WindMps, 2),
        WindFromDeg = Round(t.WindFromDeg, 0),
        GustMps = Round(t.GustMps, 2),
        ShortwaveWPerM2 = Round(t.ShortwaveWPerM2, 1),
        CloudFraction = Round(t.CloudFraction, 3),
        PrecipitationMmPerH = Round(t.PrecipitationMmPerH, 2),
    };

    private static double[]? Round(double[]? values, int digits) => values is null ? null : [.. values.Select(v => Math.Round(v, digits))];
}
