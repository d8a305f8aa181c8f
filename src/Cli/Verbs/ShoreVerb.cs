using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using SecondShore.Answers.Documents;
using SecondShore.Answers.Files;
using SecondShore.Answers.Lake;
using SecondShore.Answers.Questions;
using SecondShore.Answers.Wind;
using SecondShore.Answers.Words;
using SecondShore.Cli.Console;
using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Basin.Spots;
using SecondShore.Engine.Season;

namespace SecondShore.Cli.Verbs;

/// <summary><c>shore LAKE</c>: second shore, belt and ranked spots with reasons; GeoJSON and GPX with <c>--out</c>.</summary>
internal static class ShoreVerb
{
    public static Command Make(Surroundings surroundings)
    {
        Argument<string> lakePath = SharedOptions.Lake();
        Option<string?> at = SharedOptions.At(), unitsOption = SharedOptions.Units();
        Option<string?> folder = new("--out") { Description = "Folder for shore.geojson and spots.gpx." };
        Option<int> spots = new("--spots") { Description = "Most spots wanted.", DefaultValueFactory = _ => 16 };
        Option<bool> level = new("--level") { Description = "Take the thermocline as level; left out, it lies as the wind holds it at that hour." };
        Option<int> members = SharedOptions.Members();
        Option<ulong> seed = SharedOptions.Seed();
        Option<bool> json = SharedOptions.Json();
        Command command = new("shore", "Where does the thermocline meet good bottom, and which places first?")
        {
            lakePath, at, folder, spots, level, members, seed, unitsOption, json,
        };
        command.SetAction((parsed, stop) =>
        {
            if (parsed.GetValue(spots) is < 1 or > 200) throw new BadUsageException($"--spots {parsed.GetValue(spots)} is out of range; use 1 to 200.");
            PreparedLake lake = LakeInput.Prepare(parsed.GetRequiredValue(lakePath), surroundings, stop);
            lake.RequireGrid();
            UnitSystem units = SharedOptions.UnitsOf(parsed.GetValue(unitsOption), lake);
            DateTimeOffset instant = SharedOptions.Instant(parsed.GetValue(at), lake.Folder, surroundings.Clock);
            Outlook outlook = OutlookVerb.Compute(lake, instant, SharedOptions.Ensemble(parsed, members, seed), surroundings, stop);
            FormMap forms;
            using (ProgressLine progress = new(surroundings, "Reading the bottom's forms")) forms = ShoreAnswer.Forms(lake, progress, stop);
            float[]? tilt = null;
            if (!parsed.GetValue(level))
                using (ProgressLine progress = new(surroundings, "Moving the water")) tilt = WindAnswer.OffsetsAt(lake, outlook, progress, stop);
            ShoreResult result = ShoreAnswer.Compute(lake, forms, outlook, tilt, maxSpots: parsed.GetValue(spots), cancel: stop);
            if (parsed.GetValue(folder) is { } path) OutFolder.Write(ShoreFiles.Of(result, units), path, surroundings, stop);
            if (parsed.GetValue(json)) surroundings.Out.WriteLine(JsonSerializer.Serialize(ShoreAnswer.Document(result, units), AnswersJson.Default.ShoreDocument));
            else Print(result, units, surroundings.Out);
            return Task.FromResult(ExitCodes.Done);
        });
        return command;
    }

    private static void Print(ShoreResult result, UnitSystem units, TextWriter output)
    {
        output.WriteLine($"{result.Lake.Site.Name}, {result.Outlook.At.ToString("ddd d MMM yyyy, HH:mm", CultureInfo.InvariantCulture)}");
        output.WriteLine(OutlookWords.Say(result.Outlook, !units.IsMetric));
        if (result.Line is { } line)
            output.WriteLine($"Second shore {units.Distance(line.LengthM)} long.");
        output.WriteLine();
        foreach (Spot spot in result.Spots) PrintSpot(spot, units, output);
    }

    private static void PrintSpot(Spot spot, UnitSystem units, TextWriter output)
    {
        string name = spot.Name.Length > 0 ? $"{spot.Name}, {FormWords.Of(spot.Form)}" : FormWords.Of(spot.Form);
        string chance = spot.Kind == SpotKind.Belt
            ? string.Create(CultureInfo.InvariantCulture, $", {spot.ChanceInReach * 100:0} % in reach")
            : "";
        output.WriteLine($"  {spot.Letter,-2} {name} at {units.Depth(spot.DepthM)}{chance}");
        foreach (Reason reason in spot.Reasons) output.WriteLine($"       {ReasonText.Of(reason, !units.IsMetric)}");
        if (spot.Passes.Count > 0) output.WriteLine($"       {StopValues.How(spot.Passes[0], units)}");
    }
}
