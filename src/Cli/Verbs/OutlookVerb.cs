using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using SecondShore.Answers.Documents;
using SecondShore.Answers.Lake;
using SecondShore.Answers.Questions;
using SecondShore.Answers.Words;
using SecondShore.Cli.Console;
using SecondShore.Engine.Season;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;

namespace SecondShore.Cli.Verbs;

/// <summary><c>outlook LAKE</c>: profile, thermocline depth with spread, oxygen floor, turnover window, by arm.</summary>
internal static class OutlookVerb
{
    public static Command Make(Surroundings surroundings)
    {
        Argument<string> lakePath = SharedOptions.Lake();
        Option<string?> at = SharedOptions.At(), unitsOption = SharedOptions.Units();
        Option<int> members = SharedOptions.Members();
        Option<ulong> seed = SharedOptions.Seed();
        Option<bool> json = SharedOptions.Json();
        Option<bool> fit = new("--fit") { Description = "First fit the lake's numbers to the casts in profiles.csv and keep them, with their spread, under 'fitted' in lake.json." };
        Command command = new("outlook", "Is the lake layered or turning, how deep is the thermocline, and when does each arm turn?")
        {
            lakePath, at, members, seed, unitsOption, fit, json,
        };
        command.SetAction((parsed, stop) =>
        {
            if (parsed.GetValue(fit)) Fit(parsed.GetRequiredValue(lakePath), surroundings, stop);
            PreparedLake lake = LakeInput.Prepare(parsed.GetRequiredValue(lakePath), surroundings, stop);
            UnitSystem units = SharedOptions.UnitsOf(parsed.GetValue(unitsOption), lake);
            DateTimeOffset instant = SharedOptions.Instant(parsed.GetValue(at), lake.Folder, surroundings.Clock);
            Outlook outlook = Compute(lake, instant, SharedOptions.Ensemble(parsed, members, seed), surroundings, stop);
            OutlookDocument document = OutlookAnswer.Document(lake, outlook, units);
            if (parsed.GetValue(json)) surroundings.Out.WriteLine(JsonSerializer.Serialize(document, AnswersJson.Default.OutlookDocument));
            else Print(document, outlook, units, surroundings.Out);
            return Task.FromResult(ExitCodes.Done);
        });
        return command;
    }

    /// <summary>Computes with progress on standard error.</summary>
    public static Outlook Compute(PreparedLake lake, DateTimeOffset at, EnsembleOptions options, Surroundings surroundings, CancellationToken stop)
    {
        using ProgressLine progress = new(surroundings, "Running the season");
        return OutlookAnswer.Compute(lake, at, options, progress, stop);
    }

    // The fit is written before the outlook is made, so that this answer and every later one rest on it.
    private static void Fit(string path, Surroundings surroundings, CancellationToken stop)
    {
        if (!Directory.Exists(path)) throw new BadUsageException($"--fit writes into lake.json, so it needs a lake folder; {path} is none. Unpack it first.");
        LakeFolder folder = LakeInput.Read(path, surroundings, stop);
        FittedLake fitted;
        using (ProgressLine progress = new(surroundings, "Fitting to the casts")) fitted = LakeFitAnswer.Compute(folder, progress, stop);
        ILakeFiles changed = LakeFolderEdits.WithFitted(folder.Files, fitted);
        string name = changed.Find("lake.json") ?? "lake.json";
        FilesWriter.WriteFile(Path.Combine(path, name), changed.Read(name));
        foreach (FittedParameter f in fitted.Parameters)
            surroundings.Err.WriteLine(string.Create(CultureInfo.InvariantCulture, $"fitted {f.Name}: {f.P50:0.###} ({f.P10:0.###} to {f.P90:0.###})"));
        if (fitted.Bias is { } bias)
            surroundings.Err.WriteLine(string.Create(CultureInfo.InvariantCulture, $"what comes back every season: {bias.OffK.Min():0.0} to {bias.OffK.Max():0.0} K are added to the column by depth and date."));
    }

    /// <summary>Prints an outlook as the verb does.</summary>
    public static void Print(OutlookDocument document, Outlook outlook, UnitSystem units, TextWriter output)
    {
        output.WriteLine($"{document.Lake}, {outlook.At.ToString("ddd d MMM yyyy, HH:mm", CultureInfo.InvariantCulture)}");
        foreach (string sentence in document.Words) output.WriteLine(sentence);
        output.WriteLine();
        foreach (string line in ProfileChart.Draw(outlook.Lake.Profile, outlook.Lake.State == LayerState.Mixed ? null : outlook.Lake.ThermoclineM?.Spread, units)) output.WriteLine(line);
        string[] season = [.. SeasonChart.Draw(outlook.Lake.Days, DateOnly.FromDateTime(outlook.At.DateTime), units)];
        if (season.Length > 0)
        {
            output.WriteLine();
            output.WriteLine("Thermocline through the season (o median, · spread)");
            foreach (string line in season) output.WriteLine(line);
        }

        if (outlook.Arms.Count > 1)
        {
            output.WriteLine();
            foreach (ArmOutlook arm in outlook.Arms) output.WriteLine($"  {arm.Name,-18} {ArmLine(arm, outlook, units)}");
        }

        Section("Readings not followed", document.Doubted);
        Section("Assumed", document.Assumed);

        void Section(string title, IReadOnlyList<string> lines)
        {
            if (lines.Count == 0) return;
            output.WriteLine();
            output.WriteLine(title);
            foreach (string line in lines) output.WriteLine($"  {line}");
        }
    }

    private static string ArmLine(ArmOutlook arm, Outlook outlook, UnitSystem units)
    {
        string depth = arm.ThermoclineM?.Spread is { } t ? $"thermocline {units.DepthNumber(t.P50)} ({units.DepthNumber(t.P10)} to {units.DepthNumber(t.P90)}) {units.DepthUnit}" : "no thermocline";
        string turn = DateSpreadDocument.From(arm.TurnoverInDays, outlook.At) is { } d
            ? string.Create(CultureInfo.InvariantCulture, $", turns {d.P10:d MMM} to {d.P90:d MMM}")
            : "";
        return $"{OutlookWords.State(arm)}, {depth}{turn}";
    }
}
