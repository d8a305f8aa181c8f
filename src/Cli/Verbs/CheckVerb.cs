using System.CommandLine;
using System.Text.Json;
using SecondShore.Answers.Check;
using SecondShore.Answers.Documents;
using SecondShore.Cli.Console;
using SecondShore.Formats.Lake;

namespace SecondShore.Cli.Verbs;

/// <summary><c>check LAKE</c>: reads everything, lists what is there, missing, odd.</summary>
internal static class CheckVerb
{
    public static Command Make(Surroundings surroundings)
    {
        Argument<string> lake = SharedOptions.Lake();
        Option<bool> json = SharedOptions.Json();
        Command command = new("check", "Reads everything and lists what is there, what is missing, what is odd.") { lake, json };
        command.SetAction((parsed, stop) =>
        {
            LakeFolder folder;
            using (ProgressLine progress = new(surroundings, "Reading"))
                folder = LakeFolderReader.ReadPath(parsed.GetRequiredValue(lake), surroundings.Settings, progress, stop);
            folder = SurveyDialogue.Settle(parsed.GetRequiredValue(lake), folder, surroundings, stop);
            CheckDocument document = FolderCheck.Describe(folder);
            if (parsed.GetValue(json)) surroundings.Out.WriteLine(JsonSerializer.Serialize(document, AnswersJson.Default.CheckDocument));
            else Print(document, surroundings.Out);
            if (!document.Usable)
                surroundings.Err.WriteLine(document.Problems.FirstOrDefault(p => p.Severity == "error") is { } worst
                    ? $"{worst.File}{(worst.Line is { } line ? $" line {line}" : "")}: {worst.Message}"
                    : $"{document.Lake}: no file gives a position for the lake. Put latitude_deg and longitude_deg into lake.json, or add a survey that carries coordinates.");
            SurveyDialogue.Show(folder, surroundings.Err);
            return Task.FromResult(document.Usable && folder.SurveyQuestions.Count == 0 ? ExitCodes.Done : ExitCodes.BadInput);
        });
        return command;
    }

    private static void Print(CheckDocument document, TextWriter output)
    {
        output.WriteLine(document.Lake);
        foreach (CheckDocument.PartRow part in document.Parts) output.WriteLine($"  {part.Part,-13} {part.Says}");
        foreach (CheckDocument.SurveyRow survey in document.Surveys)
        {
            output.WriteLine($"  {"survey",-13} {survey.File}: {survey.Format}, {survey.Kind}, {survey.Count:N0} values");
            output.WriteLine($"  {"",-13}   unit {survey.Unit}, {survey.Sense}, coordinates {survey.Crs}");
            if (survey.MinDepthM is { } low && survey.MaxDepthM is { } high) output.WriteLine(FormattableString.Invariant($"  {"",-13}   depth below full pool {low:0.##} to {high:0.##} m"));
            foreach (string doubt in survey.Doubts) output.WriteLine($"  {"",-13}   please confirm: {doubt}");
        }

        Section("Missing", document.Missing);
        Section("Assumed", document.Assumed);
        Section("Odd", [.. document.Problems.Select(p => $"{p.File}{(p.Line is { } line ? $" line {line}" : "")}: {p.Message}")]);

        void Section(string title, IReadOnlyList<string> lines)
        {
            if (lines.Count == 0) return;
            output.WriteLine(title);
            foreach (string line in lines) output.WriteLine($"  {line}");
        }
    }
}
