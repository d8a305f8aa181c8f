using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using SecondShore.Answers.Documents;
using SecondShore.Answers.Files;
using SecondShore.Answers.Lake;
using SecondShore.Answers.Rig;
using SecondShore.Answers.Wind;
using SecondShore.Cli.Console;
using SecondShore.Engine.Season;
using SecondShore.Formats.Files;

namespace SecondShore.Cli.Verbs;

/// <summary><c>wind LAKE</c>: thermocline depth by place and hour, drift, current at depth, waves; files with <c>--out</c>.</summary>
internal static class WindVerb
{
    public static Command Make(Surroundings surroundings)
    {
        Argument<string> lakePath = SharedOptions.Lake();
        Option<string?> at = SharedOptions.At(), unitsOption = SharedOptions.Units();
        Option<int> hours = Count("--hours", "Hours after it, 0 to 240; fewer are computed where the weather ends.", 24);
        Option<string?> depth = new("--depth") { Description = "Depth whose current is told, such as 27ft; left out, the thermocline's." };
        Option<int> places = Count("--places", "Most places that --json and --out list, 1 to 20000.", 400);
        Option<string?> folder = Folder();
        Option<string[]> point = new("--point") { Description = "A place as LAT,LON, told hour by hour in place of the whole lake; may be given again." };
        Option<int> members = SharedOptions.Members();
        Option<ulong> seed = SharedOptions.Seed();
        Option<bool> json = SharedOptions.Json();
        Command command = new("wind", "What will the wind do to the thermocline, the current and the waves, by place and hour?\n"
            + "Wind piles warm water up downwind: there the thermocline lies deeper, at the other end shallower, and when the wind drops it rocks back.\n"
            + "It wants hourly wind in weather.csv, the forecast too, and a survey.")
        {
            lakePath, at, hours, depth, places, point, folder, members, seed, unitsOption, json,
        };
        command.SetAction((parsed, stop) =>
        {
            int count = parsed.GetValue(hours), most = parsed.GetValue(places);
            if (count is < 0 or > 240) throw new BadUsageException($"--hours {count} is out of range; use 0 to 240.");
            if (most is < 1 or > 20000) throw new BadUsageException($"--places {most} is out of range; use 1 to 20000.");
            PreparedLake lake = LakeInput.Prepare(parsed.GetRequiredValue(lakePath), surroundings, stop);
            lake.RequireGrid();
            UnitSystem units = SharedOptions.UnitsOf(parsed.GetValue(unitsOption), lake);
            double? currentDepthM = parsed.GetValue(depth) is { } text ? DepthM(text, units) : null;
            DateTimeOffset instant = SharedOptions.Instant(parsed.GetValue(at), lake.Folder, surroundings.Clock);
            Outlook outlook = OutlookVerb.Compute(lake, instant, SharedOptions.Ensemble(parsed, members, seed), surroundings, stop);
            WindResult result;
            using (ProgressLine progress = new(surroundings, "Moving the water"))
                result = WindAnswer.Compute(lake, outlook, new WindQuestion { At = instant, Hours = count, CurrentDepthM = currentDepthM, MaxPlaces = most }, progress, stop);
            if (parsed.GetValue(point) is { Length: > 0 } asked)
            {
                IReadOnlyList<PointSeries> points = PointSeries.Of(lake, result, [.. asked.Select(SharedOptions.Point)]);
                if (parsed.GetValue(folder) is { } into) OutFolder.Write(PointFiles.Of(points), into, surroundings, stop);
                PointPrint.Write(lake.Site.Name, result, points, units, parsed.GetValue(json), surroundings);
                return Task.FromResult(ExitCodes.Done);
            }

            WindDocument document = WindDocuments.Of(lake.Site.Name, result, lake.RequireGrid().Projection, units);
            string[] written = parsed.GetValue(folder) is { } path ? Write(WindFiles.Of(result, document, lake.GridAt(instant)), path, stop) : [];
            if (parsed.GetValue(json)) surroundings.Out.WriteLine(JsonSerializer.Serialize(document, AnswersJson.Default.WindDocument));
            else Print(result, document, units, written, surroundings.Out);
            return Task.FromResult(ExitCodes.Done);
        });
        return command;
    }

    private static Option<string?> Folder() => new("--out")
    {
        Description = "Folder for wind.geojson (lines of equal thermocline depth, hour by hour) and wind.csv (every place and hour).",
    };

    private static Option<int> Count(string name, string description, int usual) =>
        new(name) { Description = description, DefaultValueFactory = _ => usual };

    private static double DepthM(string text, UnitSystem units) =>
        QuantityText.TryLengthM(text, units, out double m) && m is >= 0 and <= 300 ? m
            : throw new BadUsageException($"--depth {text} is no depth; write it like 27ft or 8.2m.");

    private static string[] Write(ILakeFiles files, string folder, CancellationToken stop)
    {
        FilesWriter.WriteFolder(files, folder, cancellation: stop);
        return [.. files.Entries.Select(e => Path.Combine(folder, e.Name))];
    }

    private static void Print(WindResult result, WindDocument document, UnitSystem units, IReadOnlyList<string> written, TextWriter output)
    {
        output.WriteLine($"{document.Lake}, {document.At.ToString("ddd d MMM yyyy, HH:mm", CultureInfo.InvariantCulture)}");
        foreach (string sentence in document.Words) output.WriteLine(sentence);
        output.WriteLine();
        output.WriteLine($"{"",12}{"wind",18}{"gusts",9}{"layer tips",12}{"waves to",10}   comfort");
        foreach (HourSummary hour in result.Hours)
        {
            string tilt = result.Field.IsLayered ? units.Depth(hour.TiltM) : "-";
            output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{hour.At,12:ddd HH:mm}{$"{units.Wind(hour.WindMps)} {WindWords.ShortPoint(hour.WindFromDeg)}",18}{units.Wind(hour.GustMps),9}{tilt,12}{WindWords.Height(hour.Waves.HeightM, units),10}   {WindWords.Class(hour.Comfort)}"));
        }

        Section("Cautions", document.Cautions);
        Section("Assumed", document.Assumed);
        Section("Written", written);

        void Section(string title, IReadOnlyList<string> lines)
        {
            if (lines.Count == 0) return;
            output.WriteLine();
            output.WriteLine(title);
            foreach (string line in lines) output.WriteLine($"  {line}");
        }
    }
}
