using System.CommandLine;
using System.Text.Json;
using SecondShore.Answers.Documents;
using SecondShore.Answers.Lake;
using SecondShore.Answers.Questions;
using SecondShore.Cli.Console;
using SecondShore.Formats.Files;
using SecondShore.Sheets;

namespace SecondShore.Cli.Verbs;

/// <summary><c>day LAKE</c>: the main job, everything in one plan: stops, passes, rigs, cautions, and files with <c>--out</c>.</summary>
internal static class DayVerb
{
    public static Command Make(Surroundings surroundings)
    {
        Argument<string> lakePath = SharedOptions.Lake();
        DayOptions o = new();
        Option<int> days = new("--days") { Description = "Days in a row from the first: all but the last practise (many short stops over kinds of bottom and depths), the last fishes the best.", DefaultValueFactory = _ => 1 };
        Option<bool> practice = new("--practice") { Description = "Make the last day practice too; alone, one day of practice." };
        Option<string?> folder = new("--out") { Description = "Folder for day.pdf and day.html (one page to print), day.gpx, day.geojson, day.kml and day.ics; left out, the folder 'plan' in LAKE. With several days, one folder a day." };
        Option<string?> units = SharedOptions.Units();
        Option<bool> json = SharedOptions.Json();
        Command command = new("day", "In which order do I fish it, with what tied on, and home before dark and before the wind?") { lakePath };
        o.AddTo(command);
        foreach (Option option in (Option[])[days, practice, folder, units, json]) command.Options.Add(option);
        command.SetAction((parsed, stop) =>
        {
            o.Check(parsed);
            int count = parsed.GetValue(days);
            if (count is < 1 or > 7) throw new BadUsageException($"--days {count} is out of range; use 1 to 7.");
            string path = parsed.GetRequiredValue(lakePath);
            PreparedLake lake = LakeInput.Prepare(path, surroundings, stop);
            UnitSystem shown = SharedOptions.UnitsOf(parsed.GetValue(units), lake);
            DayWish wish = o.Wish(parsed, lake, surroundings.Clock);
            if (wish.Here is not null && (count > 1 || parsed.GetValue(practice))) throw new BadUsageException("--from plans the rest of one day; it does not go with --days or --practice.");
            string? target = parsed.GetValue(folder) ?? (Directory.Exists(path) ? Path.Combine(path, "plan") : null);
            IReadOnlyList<DayResult> results = Compute(lake, wish, count, parsed.GetValue(practice), shown, surroundings, stop);
            List<(DayResult Day, string[] Written)> done = [];
            for (int d = 0; d < results.Count; d++)
                done.Add((results[d], Write(results[d], shown, target is null || results.Count == 1 ? target : Path.Combine(target, $"day{d + 1}"), surroundings, stop)));
            if (parsed.GetValue(json)) surroundings.Out.WriteLine(Json(done, shown));
            else PrintAll(done, shown, surroundings.Out);
            return Task.FromResult(ExitCodes.Done);
        });
        return command;
    }

    private static IReadOnlyList<DayResult> Compute(PreparedLake lake, DayWish wish, int days, bool practice, UnitSystem units, Surroundings surroundings, CancellationToken stop)
    {
        using ProgressLine progress = new(surroundings, days == 1 ? "Planning the day" : $"Planning {days} days");
        return days == 1 && !practice
            ? [DayAnswer.Compute(lake, wish, units, progress, cancel: stop)]
            : PracticeDays.Compute(lake, wish, days, lastCounts: !practice, units, progress, stop);
    }

    /// <summary>Plans one ordinary day, writes its files into the lake's folder and prints it: what the demo ends with.</summary>
    public static void PlanUsual(string path, Surroundings surroundings, CancellationToken stop)
    {
        PreparedLake lake = LakeInput.Prepare(path, surroundings, stop);
        DayWish day = new() { Date = SharedOptions.Day(null, lake.Folder, surroundings.Clock), StandsAt = AnswerTime.Default(lake.Folder, surroundings.Clock) };
        DayResult result = Compute(lake, day, 1, false, lake.Units, surroundings, stop)[0];
        DayPrint.Print(result, lake.Units, Write(result, lake.Units, Path.Combine(path, "plan"), surroundings, stop), surroundings.Out);
    }

    private static string[] Write(DayResult result, UnitSystem units, string? folder, Surroundings surroundings, CancellationToken stop)
    {
        if (folder is null) return [];
        ILakeFiles files = DayBundle.Of(result, units, surroundings.Clock.GetUtcNow());
        OutFolder.Write(files, folder, surroundings, stop);
        return [.. files.Entries.Select(e => Path.Combine(folder, e.Name))];
    }

    private static string Json(List<(DayResult Day, string[] Written)> days, UnitSystem units) => days.Count == 1
        ? JsonSerializer.Serialize(DayDocuments.Of(days[0].Day, units, days[0].Written), AnswersJson.Default.DayDocument)
        : JsonSerializer.Serialize(new DaysDocument([.. days.Select(d => DayDocuments.Of(d.Day, units, d.Written))]), AnswersJson.Default.DaysDocument);

    private static void PrintAll(List<(DayResult Day, string[] Written)> days, UnitSystem units, TextWriter output)
    {
        for (int d = 0; d < days.Count; d++)
        {
            if (d > 0) output.WriteLine($"{Environment.NewLine}----{Environment.NewLine}");
            DayPrint.Print(days[d].Day, units, days[d].Written, output);
        }

        if (days.Count > 1 && days[^1].Day.Wish.Practice is null)
            output.WriteLine($"{Environment.NewLine}The last day is planned on what is believed now. Log the practice and plan it again: what it shows moves the worth of places.");
    }
}
