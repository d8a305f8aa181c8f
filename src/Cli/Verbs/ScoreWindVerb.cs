using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using SecondShore.Answers.Documents;
using SecondShore.Answers.Lake;
using SecondShore.Answers.Scoring.Chains;
using SecondShore.Cli.Console;
using SecondShore.Formats;
using SecondShore.Formats.Lake;

namespace SecondShore.Cli.Verbs;

/// <summary><c>score-wind LAKE --chain FILE</c>: the interface model against measured chains of thermometers.</summary>
internal static class ScoreWindVerb
{
    public static Command Make(Surroundings surroundings)
    {
        Argument<string> lakePath = SharedOptions.Lake();
        Option<string> chain = new("--chain") { Description = "CSV with time, depth_m, temp_c, and site where it holds several chains.", Required = true };
        Option<string?> point = new("--point") { Description = "Where the chain hangs, as LAT,LON; left out, lake.json says it under moorings." };
        Option<string?> from = new("--from") { Description = "Start, such as 2025-07-23T06:00; left out, the first profile." };
        Option<string?> to = new("--to") { Description = "End; left out, the last profile." };
        Option<double> days = new("--window-days") { Description = "Length of a window, 1 to 60: each has its own layers at rest and its own trend.", DefaultValueFactory = _ => new WindScoreQuestion().WindowDays };
        Option<bool> json = SharedOptions.Json();
        Command command = new("score-wind", "How well does the wind's tilt of the thermocline follow a measured chain of thermometers?\n"
            + "The layers at rest are the chain's own mean profile of each window; what is judged is what the wind does to them.")
        {
            lakePath, chain, point, from, to, days, json,
        };
        command.SetAction((parsed, stop) =>
        {
            double windowDays = parsed.GetValue(days);
            if (windowDays is not (>= 1 and <= 60)) throw new BadUsageException(string.Create(CultureInfo.InvariantCulture, $"--window-days {windowDays} is out of range; use 1 to 60."));
            PreparedLake lake = LakeInput.Prepare(parsed.GetRequiredValue(lakePath), surroundings, stop);
            WindScoreQuestion question = new()
            {
                From = parsed.GetValue(from) is { } start ? SharedOptions.Instant(start, lake.Folder, surroundings.Clock) : null,
                To = parsed.GetValue(to) is { } end ? SharedOptions.Instant(end, lake.Folder, surroundings.Clock) : null,
                WindowDays = windowDays,
                Place = parsed.GetValue(point) is { } text ? SharedOptions.Point(text) : null,
            };
            IReadOnlyList<MeasuredChain> chains = Read(parsed.GetRequiredValue(chain), lake.Folder.TimeZone, surroundings);
            WindScore score;
            using (ProgressLine progress = new(surroundings, "Moving the water")) score = WindScorer.Run(lake, chains, question, UnitSystem.Metric, progress, stop);
            if (parsed.GetValue(json)) surroundings.Out.WriteLine(JsonSerializer.Serialize(score, AnswersJson.Default.WindScore));
            else Print(score, surroundings.Out);
            return Task.FromResult(ExitCodes.Done);
        });
        return command;
    }

    private static IReadOnlyList<MeasuredChain> Read(string path, TimeZoneInfo zone, Surroundings surroundings)
    {
        if (!File.Exists(path)) throw new BadInputException($"There is no file {path}; --chain names a CSV with time, depth_m and temp_c.");
        IReadOnlyList<MeasuredChain> chains = ChainReader.Read(Path.GetFileName(path), File.ReadAllBytes(path), zone, out IReadOnlyList<Problem> problems);
        if (chains.Count == 0) throw new BadInputException(string.Join(Environment.NewLine, problems.Where(p => p.Severity == ProblemSeverity.Error).Select(p => p.Say(UnitSystem.Metric))));
        foreach (Problem problem in problems) surroundings.Err.WriteLine(problem.Say(UnitSystem.Metric));
        return chains;
    }

    private static void Print(WindScore score, TextWriter output)
    {
        output.WriteLine($"{score.Lake}, {(score.Winds == 1 ? "one wind" : $"{score.Winds} winds by place")}: displacement of the thermocline, computed against measured");
        output.WriteLine($"{"from",-12}{"site",-8}{"upper m",8}{"degC",6}{"period h",9}{"r",6}{"ampl",6}{"lag h",6}{"rmse m",7}{"none m",7}{"in 80 %",8}   5 to 60 h: r, ampl, rmse, none");
        foreach (WindScoreWindow window in score.Windows)
        {
            foreach (WindScoreSite site in window.Sites)
            {
                string start = string.Create(CultureInfo.InvariantCulture, $"{window.From:MM-dd HH:mm} {site.Site,-8}{site.UpperM,8:0.0}{site.IsothermC,6:0.0}{window.PeriodH,9:0.0}");
                output.WriteLine(site.Whole is { } f && site.Band is { } b
                    ? start + string.Create(CultureInfo.InvariantCulture, $"{f.R,6:0.00}{f.AmplitudeRatio,6:0.00}{f.LagH,6}{f.RmseM,7:0.00}{f.NoneM,7:0.00}{f.Coverage80,8:0.00}{b.R,14:0.00}{b.AmplitudeRatio,6:0.00}{b.RmseM,6:0.00}{b.NoneM,6:0.00}")
                    : $"{start}  {site.Why}");
            }
        }

        if (score.Summary is { } all)
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Median of {all.Count}: r {all.R:0.00}, amplitude {all.AmplitudeRatio:0.00}, error {all.OfNone:0.00} of no tilt (worst {all.WorstOfNone:0.00}); {all.Coverage80:0.00} of all hours within the 80 % interval."));
        foreach (string line in score.Assumed) output.WriteLine($"  {line}");
    }
}
