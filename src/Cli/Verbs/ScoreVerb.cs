using System.CommandLine;
using System.Globalization;
using SecondShore.Answers.Scoring;
using SecondShore.Cli.Console;
using SecondShore.Formats.Lake;

namespace SecondShore.Cli.Verbs;

/// <summary><c>score DIR...</c>: accuracy on measured lakes, each DIR a lake folder or a folder of them.</summary>
internal static class ScoreVerb
{
    public static Command Make(Surroundings surroundings)
    {
        Argument<string[]> folders = new("DIR") { Description = "Lake folders with profiles.csv, or folders of such folders.", Arity = ArgumentArity.OneOrMore };
        Option<ScoreMode> mode = new("--mode") { Description = "blind: defaults only. few: three readings. fit: first half of the years. hindcast: cut in autumn. bare: position, area and depth alone, without weather; bareDepthUnknown: without the depth too.", DefaultValueFactory = _ => ScoreMode.Blind };
        Option<bool> json = SharedOptions.Json();
        Command command = new("score", "How accurate is the outlook on lakes that were measured?") { folders, mode, json };
        command.SetAction((parsed, stop) =>
        {
            List<LakeFolder> lakes = [.. parsed.GetRequiredValue(folders).SelectMany(Lakes).Select(path => LakeInput.Read(path, surroundings, stop))];
            ScoreReport report;
            using (ProgressLine progress = new(surroundings, "Scoring")) report = ScoreRunner.Run(lakes, parsed.GetValue(mode), progress, stop);
            if (parsed.GetValue(json)) surroundings.Out.WriteLine(report.ToJson());
            else Print(report, surroundings.Out);
            return Task.FromResult(ExitCodes.Done);
        });
        return command;
    }

    private static IEnumerable<string> Lakes(string path)
    {
        if (!Directory.Exists(path)) throw new BadInputException($"{path} is not a folder; name a lake folder with profiles.csv, or a folder of such folders.");
        if (File.Exists(Path.Combine(path, "lake.json")) || File.Exists(Path.Combine(path, "profiles.csv"))) return [path];
        string[] inside = [.. Directory.GetDirectories(path).Where(d => File.Exists(Path.Combine(d, "profiles.csv"))).Order(StringComparer.Ordinal)];
        return inside.Length > 0 ? inside : throw new BadInputException($"{path} holds no lake folder with profiles.csv; name one that does.");
    }

    private static void Print(ScoreReport report, TextWriter output)
    {
        output.WriteLine($"{"lake",-24} {"mode",-9} {"temp C",7} {"surf C",7} {"therm m",8} {"turn d",7} {"n",7}");
        foreach (LakeScore s in report.Lakes)
        {
            output.WriteLine($"{s.Lake,-24} {s.Mode,-9} {Number(s.TemperatureRmseC),7} {Number(s.SurfaceRmseC),7} {Number(s.ThermoclineMaeM),8} {Number(s.OverturnMaeDays),7} {s.N,7}{(s.InSample ? "  in sample" : "")}");
            foreach (string why in s.Why) output.WriteLine($"    {why}");
        }

        foreach (ScoreSummary s in report.Summary)
            output.WriteLine($"{"median of " + s.Over,-24} {s.Mode,-9} {Number(s.TemperatureRmseC),7} {Number(s.SurfaceRmseC),7} {Number(s.ThermoclineMaeM),8} {Number(s.OverturnMaeDays),7} {s.N,7}");
        if (Note(report) is { Length: > 0 } note) output.WriteLine(note);
    }

    private static string Note(ScoreReport report)
    {
        int seen = report.Lakes.Count(l => l.InSample);
        return seen == 0 ? "" : $"In sample: the priors were learned from lakes of the same region ({seen} of {report.Lakes.Count} lakes); their figures do not tell how well other lakes are met.";
    }

    private static string Number(double? value) => value is { } v ? v.ToString("0.00", CultureInfo.InvariantCulture) : "-";
}
