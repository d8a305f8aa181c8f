using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using SecondShore.Answers.Documents;
using SecondShore.Answers.Lake;
using SecondShore.Answers.Learn;
using SecondShore.Answers.Questions;
using SecondShore.Engine.Learn;
using SecondShore.Engine.Season;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;

namespace SecondShore.Cli.Verbs;

/// <summary><c>learn LAKE</c>: what the log says: rates by choice, what to tie on, what to try next, when to leave, what was learned.</summary>
internal static class LearnVerb
{
    public static Command Make(Surroundings surroundings)
    {
        Argument<string> lakePath = SharedOptions.Lake();
        Option<string?> at = SharedOptions.At(), units = SharedOptions.Units();
        Option<string[]> eats = Eats();
        Option<string?> light = new("--light") { Description = "Light ahead: low (dawn, dusk, heavy cloud) or bright." };
        Option<double> hours = new("--hours") { Description = "Hours of fishing ahead: with few, less is tried and more is harvested.", DefaultValueFactory = _ => 6 };
        Option<double?> travel = new("--travel") { Description = "Minutes from one stop to the next; left out, the log's own gaps." };
        Option<string?> priors = new("--priors") { Description = "Beliefs before the log, a changed copy of catch-priors.json that --out writes." };
        Option<string?> folder = new("--out") { Description = "Folder for learned.html (after the trip, to print), learned.json and catch-priors.json." };
        Option<int> members = SharedOptions.Members();
        Option<ulong> seed = SharedOptions.Seed();
        Option<bool> quick = new("--log-only") { Description = "Read the log alone: no outlook, so no word on which reading would teach most." };
        Option<bool> json = SharedOptions.Json();
        Command command = new("learn", "What do the bites say: what to tie on, what to try next, when to leave a stop, what did the trip teach?")
        {
            lakePath, at, eats, light, hours, travel, priors, folder, quick, members, seed, units, json,
        };
        command.SetAction((parsed, stop) =>
        {
            LearnWish wish = new()
            {
                Eats = [.. (parsed.GetValue(eats) ?? []).Select(Food)],
                LowLight = Light(parsed.GetValue(light)),
                HoursAheadH = Between("--hours", parsed.GetValue(hours), LearnWish.LeastHoursAheadH, LearnWish.MostHoursAheadH),
                TravelH = parsed.GetValue(travel) is { } minutes ? Between("--travel", minutes, LearnWish.LeastTravelMin, LearnWish.MostTravelMin) / 60 : null,
                Priors = Priors(parsed.GetValue(priors)),
                Seed = parsed.GetValue(seed),
            };
            EnsembleOptions ensemble = SharedOptions.Ensemble(parsed, members, seed);
            string path = parsed.GetRequiredValue(lakePath);
            (LakeFolder lake, Outlook? outlook) = parsed.GetValue(quick)
                ? (LakeInput.Read(path, surroundings, stop), null)
                : WithOutlook(path, parsed.GetValue(at), ensemble, surroundings, stop);
            UnitSystem shown = SharedOptions.UnitsOf(parsed.GetValue(units), lake);
            LearnResult result = LearnAnswer.Of(lake, outlook, wish, shown, stop);
            string[] written = parsed.GetValue(folder) is { } target ? Write(LearnFiles.Of(result, shown), target, stop) : [];
            if (parsed.GetValue(json)) surroundings.Out.WriteLine(JsonSerializer.Serialize(LearnDocument.Of(result, written), AnswersJson.Default.LearnDocument));
            else LearnPrint.Print(result, shown, written, surroundings.Out);
            return Task.FromResult(ExitCodes.Done);
        });
        return command;
    }

    private static Option<string[]> Eats() => new("--eats")
    {
        Description = "What the fish eat there: crayfish, baitfish or sunfish; may be given more than once. Left out, what log.csv says was eaten.",
        AllowMultipleArgumentsPerToken = true,
    };

    private static (LakeFolder Lake, Outlook? Outlook) WithOutlook(string path, string? at, EnsembleOptions ensemble,
        Surroundings surroundings, CancellationToken stop)
    {
        PreparedLake lake = LakeInput.Prepare(path, surroundings, stop);
        DateTimeOffset instant = SharedOptions.Instant(at, lake.Folder, surroundings.Clock);
        return (lake.Folder, OutlookVerb.Compute(lake, instant, ensemble, surroundings, stop));
    }

    private static string[] Write(ILakeFiles files, string folder, CancellationToken stop)
    {
        FilesWriter.WriteFolder(files, folder, cancellation: stop);
        return [.. files.Entries.Select(e => Path.Combine(folder, e.Name))];
    }

    private static string Food(string word) => word.ToLowerInvariant() switch
    {
        "crayfish" or "craws" or "craw" => "crayfish",
        "baitfish" or "bait" => "baitfish",
        "sunfish" => "sunfish",
        _ => throw new BadUsageException($"--eats {word} is not known; use crayfish, baitfish or sunfish."),
    };

    private static bool? Light(string? word) => word switch
    {
        null => null,
        "low" => true,
        "bright" => false,
        _ => throw new BadUsageException($"--light {word} is not known; use low or bright."),
    };

    private static double Between(string option, double value, double low, double high) => value >= low && value <= high
        ? value
        : throw new BadUsageException(string.Create(CultureInfo.InvariantCulture, $"{option} {value} is out of range; use {low} to {high}."));

    private static CatchPriors Priors(string? path)
    {
        if (path is null) return CatchPriors.Default;
        if (!File.Exists(path)) throw new BadInputException($"{path} is not there: --priors names a changed copy of the catch-priors.json that --out writes.");
        return CatchPriors.TryParse(File.ReadAllText(path), out CatchPriors? priors, out string problem) ? priors! : throw new BadInputException($"{path}: {problem}");
    }
}
