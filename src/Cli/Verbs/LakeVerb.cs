using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using SecondShore.Answers.Documents;
using SecondShore.Answers.Lake;
using SecondShore.Answers.Questions;
using SecondShore.Engine.Season;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.Open.Lakes;
using SecondShore.Weather;

namespace SecondShore.Cli.Verbs;

/// <summary><c>lake NAME|LAT,LON DIR</c>: a lake folder from a name or a place, with outline, what its angler knows and weather; then its
/// outlook.</summary>
internal static class LakeVerb
{
    public static Command Make(Surroundings surroundings)
    {
        Argument<string> place =
            new("NAME|LAT,LON") { Description = "The lake's name, a region after a comma; or a place on it, as 45.123,-84.567." };
        Argument<string> folder = new("DIR") { Description = "Folder to write; it is made, and must not hold anything yet." };
        LakeOptions options = new();
        Option<bool> json = SharedOptions.Json();
        Command command =
            new("lake", "A lake of your own from its name alone: finds it and its outline, asks what you know, fetches weather, gives the outlook.") { place, folder, json };
        foreach (Option option in options.All) command.Options.Add(option);
        command.SetAction(async (parsed, stop) =>
        {
            string path = parsed.GetRequiredValue(folder);
            if (File.Exists(path) || (Directory.Exists(path) && Directory.EnumerateFileSystemEntries(path).Any()))
                throw new BadUsageException($"{path} holds something already; name a folder that is new or empty.");
            LakeWish wish = options.Read(parsed);
            LakeDraft draft = await new LakeFinding(wish, surroundings).DraftAsync(parsed.GetRequiredValue(place), stop)
                .ConfigureAwait(false);
            ILakeFiles files = LakeDraftFiles.Of(draft, surroundings.Clock.GetUtcNow());
            files = await WithWeatherAsync(files, path, wish, surroundings, stop).ConfigureAwait(false);
            // An empty folder gives way, so that the whole lake comes into its place in one step.
            if (Directory.Exists(path)) Directory.Delete(path);
            FilesWriter.WriteFolder(files, path, cancellation: stop);
            IEnumerable<string> names = files.Entries.Select(e => e.Name).Where(n => !n.StartsWith("climate/", StringComparison.Ordinal));
            surroundings.Err.WriteLine($"Wrote {path}: {string.Join(", ", names)}.");
            Show(path, draft, wish.Units, parsed.GetValue(json), surroundings, stop);
            return ExitCodes.Done;
        });
        return command;
    }

    // A lake without weather is still a lake: the outlook then says how rough it is, and weather comes with its own verb later.
    private static async Task<ILakeFiles> WithWeatherAsync(ILakeFiles files, string path, LakeWish wish, Surroundings surroundings,
        CancellationToken stop)
    {
        if (wish.IsOffline) return files;
        LakeFolder folder = LakeFolderReader.Read(files, null, stop);
        string host = (wish.Forecast ?? WeatherService.Default.Forecast).Host;
        surroundings.Err.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"To {host} goes: the place {folder.Site.Position.LatDeg:0.00}, {folder.Site.Position.LonDeg:0.00} (two decimals), for its weather."));
        try
        {
            (ILakeFiles filled, IReadOnlyList<string> notes, string source) =
                await WeatherVerb.FetchAsync(folder, wish.Years, wish.Forecast, wish.Archive, surroundings, stop).ConfigureAwait(false);
            foreach (string note in notes) surroundings.Err.WriteLine(note);
            surroundings.Err.WriteLine(source);
            return filled;
        }
        catch (WeatherException e)
        {
            surroundings.Err.WriteLine(
                $"{e.Finding.Say(wish.Units)} The lake goes on without weather; 'secondshore weather {path}' fetches it later.");
            return files;
        }
    }

    private static void Show(string path, LakeDraft draft, UnitSystem units, bool json, Surroundings surroundings, CancellationToken stop)
    {
        IReadOnlyList<string> guesses = LakeDraftFiles.Guesses(draft).Say(units);
        PreparedLake lake = LakeInput.Prepare(path, surroundings, stop);
        Outlook outlook =
            OutlookVerb.Compute(lake, AnswerTime.Default(lake.Folder, surroundings.Clock),
            new EnsembleOptions(EnsembleOptions.UsualMembers, 1), surroundings, stop);
        OutlookDocument document = OutlookAnswer.Document(lake, outlook, units);
        if (json)
        {
            foreach (string guess in guesses) surroundings.Err.WriteLine(guess);
            surroundings.Out.WriteLine(JsonSerializer.Serialize(document, AnswersJson.Default.OutlookDocument));
            return;
        }

        OutlookVerb.Print(document, outlook, units, surroundings.Out);
        surroundings.Out.WriteLine();
        surroundings.Out.WriteLine("Taken for this lake");
        foreach (string guess in guesses) surroundings.Out.WriteLine($"  {guess}");
        if (draft.Outline is { Attribution.Length: > 0 } outline) surroundings.Out.WriteLine($"  {outline.Attribution}");
    }
}
