using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using SecondShore.Answers.Lake;
using SecondShore.Answers.Wind;
using SecondShore.Cli.Console;
using SecondShore.Formats;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.Formats.Writers;
using SecondShore.Weather;

namespace SecondShore.Cli.Verbs;

/// <summary><c>weather LAKE</c>: fetches this season, the days ahead and past years into the lake's files, or takes them from an EPW file.</summary>
internal static class WeatherVerb
{
    public static Command Make(Surroundings surroundings)
    {
        Argument<string> lake = SharedOptions.Lake();
        Option<int> years = new("--years") { Description = "Past years wanted; those that are there already are not fetched again.", DefaultValueFactory = _ => 15 };
        Option<string?> epw = new("--epw") { Description = "Take past years from this EPW weather file instead; nothing is fetched." };
        Option<string?> forecast = new("--service") { Description = "Address of another forecast that speaks the same form." };
        Option<string?> archive = new("--archive") { Description = "Address of its archive." };
        Option<bool> json = SharedOptions.Json();
        Command command = new("weather", "Fetches weather into the lake's files: this season, the days ahead, past years.") { lake, years, epw, forecast, archive, json };
        command.SetAction(async (parsed, stop) =>
        {
            string path = parsed.GetRequiredValue(lake);
            int wanted = parsed.GetValue(years);
            if (wanted is < 0 or > 40) throw new BadUsageException($"--years {wanted} is out of range; use 0 to 40.");
            LakeFolder folder = LakeInput.Read(path, surroundings, stop);
            (ILakeFiles files, IReadOnlyList<string> notes, string source) = parsed.GetValue(epw) is { } file
                ? FromEpw(folder.Files, file)
                : await FetchAsync(folder, wanted, OpenHttp.Address(parsed.GetValue(forecast), "--service"), OpenHttp.Address(parsed.GetValue(archive), "--archive"), surroundings, stop).ConfigureAwait(false);
            Write(path, files);
            Say(surroundings, parsed.GetValue(json), ((ChangedFiles)files).ChangedNames, notes, source);
            return ExitCodes.Done;
        });
        return command;
    }

    /// <summary>Fetches a lake's weather into its files.</summary>
    /// <exception cref="WeatherException">The season does not come.</exception>
    public static async Task<(ILakeFiles Files, IReadOnlyList<string> Notes, string Source)> FetchAsync(
        LakeFolder folder, int years, Uri? forecast, Uri? archive, Surroundings surroundings, CancellationToken stop)
    {
        using HttpClient http = OpenHttp.Client();
        WeatherFetch fetch = new(http, WeatherService.At(forecast, archive), new FolderWeatherCache(OpenHttp.CacheFolder("weather")), surroundings.Clock);
        using ProgressLine progress = new(surroundings, "Fetching weather");
        WeatherWish wish = new(folder.Site.Position.LatDeg, folder.Site.Position.LonDeg, years, WeatherFiles.YearsOf(folder.Files))
        {
            Winds = folder.IsUsable ? WindPoints.Of(PreparedLake.From(folder, null, stop)) : [],
        };
        FetchedWeather weather = await fetch.RunAsync(wish, progress, stop).ConfigureAwait(false);
        return (WeatherFiles.Into(folder.Files, weather, surroundings.Clock.GetUtcNow()), weather.Notes.Say(UnitSystem.Metric), weather.Attribution);
    }

    private static (ILakeFiles Files, IReadOnlyList<string> Notes, string Source) FromEpw(ILakeFiles files, string path)
    {
        if (!File.Exists(path)) throw new BadInputException($"{path}: there is no such file; give an EPW weather file.");
        ProblemLog problems = new();
        IReadOnlyDictionary<int, WeatherTable> years = EpwReader.Read(Path.GetFileName(path), File.ReadAllBytes(path), problems);
        if (years.Count == 0) throw new BadInputException(string.Join(Environment.NewLine, problems.ToList().Select(p => p.Say(UnitSystem.Metric))));
        foreach ((int year, WeatherTable table) in years.OrderBy(y => y.Key))
            files = ChangedFiles.Of(files, string.Create(CultureInfo.InvariantCulture, $"climate/{year}.csv"), System.Text.Encoding.UTF8.GetBytes(LakeCsv.Weather(table)));
        return (files, [.. problems.ToList().Select(p => p.Say(UnitSystem.Metric))], Path.GetFileName(path));
    }

    private static void Write(string path, ILakeFiles files)
    {
        if (!Directory.Exists(path))
        {
            if (files.Find("lake.json") is null) throw new BadInputException($"{path} is neither a lake folder nor a trip file; weather has no place in it. Make a folder with lake.json and the survey first.");
            FilesWriter.WriteFile(path, TripFile.ToBytes(files));
            return;
        }

        foreach (string name in ((ChangedFiles)files).ChangedNames) FilesWriter.WriteFile(Path.Combine(path, name), files.Read(name));
    }

    private static void Say(Surroundings surroundings, bool json, IReadOnlyCollection<string> names, IReadOnlyList<string> notes, string source)
    {
        string[] files = [.. names.Order(StringComparer.Ordinal)];
        if (json)
        {
            JsonObject document = new() { ["source"] = source, ["files"] = new JsonArray([.. files.Select(f => JsonValue.Create(f))]), ["notes"] = new JsonArray([.. notes.Select(n => JsonValue.Create(n))]) };
            surroundings.Out.WriteLine(document.ToJsonString());
            return;
        }

        surroundings.Out.WriteLine($"{source}: {string.Join(", ", files)}");
        foreach (string note in notes) surroundings.Out.WriteLine("  " + note);
    }
}
