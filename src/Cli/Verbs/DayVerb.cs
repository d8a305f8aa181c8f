using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using SecondShore.Answers.Documents;
using SecondShore.Answers.Files;
using SecondShore.Answers.Lake;
using SecondShore.Answers.Questions;
using SecondShore.Answers.Rig;
using SecondShore.Answers.Words;
using SecondShore.Cli.Console;
using SecondShore.Engine.Basin.Spots;
using SecondShore.Engine.Day;
using SecondShore.Formats.Files;

namespace SecondShore.Cli.Verbs;

/// <summary><c>day LAKE</c>: the main job, everything in one plan: stops, passes, rigs, cautions, and files with <c>--out</c>.</summary>
internal static class DayVerb
{
    /// <summary>What one run of the verb asks.</summary>
    internal sealed record Wish(string Lake)
    {
        public string? Date { get; init; }

        public string? Out { get; init; }

        public string? Ramp { get; init; }

        public string? Launch { get; init; }

        public string? Home { get; init; }

        public string? Units { get; init; }

        public bool Json { get; init; }

        public EnsembleOptions Ensemble { get; init; } = new();
    }

    public static Command Make(Surroundings surroundings)
    {
        Argument<string> lake = SharedOptions.Lake();
        Option<string?> date = SharedOptions.Date(), units = SharedOptions.Units();
        Option<string?> folder = new("--out") { Description = "Folder for day.html, day.gpx, day.geojson and day.ics; left out, the folder 'plan' in LAKE." };
        Option<string?> ramp = new("--ramp") { Description = "Ramp by its name in lake.json; left out, the first that reaches the water." };
        Option<string?> launch = new("--launch") { Description = "Local time from which the boat may leave, such as 06:30; left out, sunrise." };
        Option<string?> home = new("--home") { Description = "Local time to be back by; left out, 15:00, or dark if that is earlier." };
        Option<int> members = SharedOptions.Members();
        Option<ulong> seed = SharedOptions.Seed();
        Option<bool> json = SharedOptions.Json();
        Command command = new("day", "In which order do I fish it, with what tied on, and home before dark and before the wind?")
        {
            lake, date, folder, ramp, launch, home, members, seed, units, json,
        };
        command.SetAction((parsed, stop) => Plan(
            new Wish(parsed.GetRequiredValue(lake))
            {
                Date = parsed.GetValue(date),
                Out = parsed.GetValue(folder),
                Ramp = parsed.GetValue(ramp),
                Launch = parsed.GetValue(launch),
                Home = parsed.GetValue(home),
                Units = parsed.GetValue(units),
                Json = parsed.GetValue(json),
                Ensemble = SharedOptions.Ensemble(parsed, members, seed),
            },
            surroundings,
            stop));
        return command;
    }

    /// <summary>Plans and prints a day.</summary>
    public static Task<int> Plan(Wish wish, Surroundings surroundings, CancellationToken stop)
    {
        TimeOnly? launch = Time("--launch", wish.Launch), home = Time("--home", wish.Home);
        PreparedLake lake = LakeInput.Prepare(wish.Lake, surroundings, stop);
        if (wish.Ramp is { } ramp && !lake.Folder.Ramps.Any(r => string.Equals(r.Name, ramp, StringComparison.OrdinalIgnoreCase)))
            throw new BadUsageException($"--ramp '{ramp}' is not in lake.json; it knows {(lake.Folder.Ramps.Count == 0 ? "none" : string.Join(", ", lake.Folder.Ramps.Select(r => r.Name)))}.");
        UnitSystem units = SharedOptions.UnitsOf(wish.Units, lake);
        DayWish day = new()
        {
            Date = SharedOptions.Day(wish.Date, lake.Folder, surroundings.Clock),
            Ramp = wish.Ramp,
            Launch = launch,
            HomeBy = home,
            Ensemble = wish.Ensemble,
        };
        DayResult result;
        using (ProgressLine progress = new(surroundings, "Planning the day")) result = DayAnswer.Compute(lake, day, units, progress, stop);
        ILakeFiles files = DayFiles.Of(result, units, surroundings.Clock.GetUtcNow());
        string? folder = wish.Out ?? (Directory.Exists(wish.Lake) ? Path.Combine(wish.Lake, "plan") : null);
        if (folder is not null) FilesWriter.WriteFolder(files, folder, cancellation: stop);
        string[] written = folder is null ? [] : [.. files.Entries.Select(e => Path.Combine(folder, e.Name))];
        if (wish.Json) surroundings.Out.WriteLine(JsonSerializer.Serialize(DayDocuments.Of(result, units, written), AnswersJson.Default.DayDocument));
        else Print(result, units, written, surroundings.Out);
        return Task.FromResult(ExitCodes.Done);
    }

    private static TimeOnly? Time(string option, string? text)
    {
        if (text is null) return null;
        if (TimeOnly.TryParseExact(text, ["H:mm", "HH:mm"], CultureInfo.InvariantCulture, DateTimeStyles.None, out TimeOnly time)) return time;
        throw new BadUsageException($"{option} {text} is not a time of day; write it like 06:30.");
    }

    // A place without a name of its own is called by its form: once is enough.
    private static string Title(StopCandidate stop) =>
        string.Equals(stop.Name, stop.Form, StringComparison.OrdinalIgnoreCase) ? stop.Name : $"{stop.Name}, {stop.Form}";

    private static void Print(DayResult result, UnitSystem units, IReadOnlyList<string> written, TextWriter output)
    {
        string title = result.Shore.Lake.Folder.Document.IsInvented ? $"{result.Shore.Lake.Site.Name} (invented)" : result.Shore.Lake.Site.Name;
        output.WriteLine($"{title}, {result.Wish.Date.ToString("dddd d MMMM yyyy", CultureInfo.InvariantCulture)}");
        output.WriteLine(OutlookWords.Say(result.Shore.Outlook, !units.IsMetric));
        output.WriteLine(result.Plan.Title);
        if (result.Plan.Why.Length > 0) output.WriteLine($"Because {result.Plan.Why}");
        output.WriteLine();
        output.WriteLine($"  {result.Plan.Launch:HH:mm}  {result.RampName}");
        foreach (PlannedStop stop in result.Plan.Stops)
        {
            output.WriteLine($"  {stop.Arrive:HH:mm}  {stop.Candidate.Letter,-2} {Title(stop.Candidate)} at {units.Depth(stop.Candidate.DepthM)}, until {stop.Leave:HH:mm}");
            output.WriteLine($"             {RigWords.Short(result.Rigs[stop.Candidate.Id])}");
            if (stop.Candidate.How.Length > 0) output.WriteLine($"             {stop.Candidate.How}");
            output.WriteLine($"             because {stop.Candidate.Why}");
        }

        output.WriteLine($"  {result.Plan.Home:HH:mm}  {result.RampName}; {units.Distance(result.Plan.RouteLengthM)} on the water");
        output.WriteLine();
        output.WriteLine("All places, best first");
        foreach (Spot spot in result.Shore.Spots)
        {
            string chance = spot.Kind == SpotKind.Belt
                ? string.Create(CultureInfo.InvariantCulture, $", {spot.ChanceInReach * 100:0} % in reach")
                : "";
            output.WriteLine($"  {spot.Letter,-2} {(spot.Name.Length > 0 ? spot.Name + ", " : "")}{Engine.Basin.Forms.FormWords.Of(spot.Form)} at {units.Depth(spot.DepthM)}{chance}");
            output.WriteLine($"       because {string.Join("; ", spot.Reasons.Take(4).Select(r => ReasonText.Of(r, !units.IsMetric)))}");
        }

        if (result.Plan.Alternatives.Count > 0) output.WriteLine();
        foreach (DayAlternative other in result.Plan.Alternatives)
            output.WriteLine($"Or: {other.Words} {string.Join(" ", other.Plan.Stops.Select(s => s.Candidate.Letter))}");
        Section("Cautions", [.. result.Cautions.Select(c => c.Words)]);
        Section("Assumed", result.Assumed);
        Section("Written", written);

        void Section(string heading, IReadOnlyList<string> lines)
        {
            if (lines.Count == 0) return;
            output.WriteLine();
            output.WriteLine(heading);
            foreach (string line in lines) output.WriteLine($"  {line}");
        }
    }
}
