using System.Globalization;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.Formats.Surveys;

namespace SecondShore.Cli;

/// <summary>Asks what a survey file leaves open: numbered choices on a terminal, the settings to say for scripts.</summary>
internal static class SurveyDialogue
{
    private const int MostQuestions = 8;
    private const int MostShown = 12;

    /// <summary>Asks on a terminal until nothing is open, and keeps the answers in the folder's lake.json.</summary>
    public static LakeFolder Settle(string path, LakeFolder folder, Surroundings surroundings, CancellationToken stop)
    {
        if (surroundings.Answers is not { } typed || folder.SurveyQuestions.Count == 0) return folder;
        ILakeFiles files = folder.Files;
        List<string> said = [];
        for (int k = 0; k < MostQuestions && folder.SurveyQuestions.Count > 0; k++)
        {
            SurveyQuestion question = folder.SurveyQuestions[0];
            if (Ask(question, surroundings.Err, typed) is not SurveyOptions answer) return folder;
            answer = answer with { Why = $"{question.Text} Answered on the terminal." };
            files = LakeSettings.WithAnswer(files, question.File, answer);
            said.AddRange(LakeSettings.Of(answer with { Why = null }));
            folder = LakeFolderReader.Read(files, null, stop);
        }

        if (Directory.Exists(path) && files.Find("lake.json") is string name)
        {
            FilesWriter.WriteFolder(new MemoryFiles("answers", [KeyValuePair.Create("lake.json", files.Read(name))]), path, cancellation: stop);
            surroundings.Err.WriteLine("Kept in lake.json.");
        }
        else
        {
            surroundings.Err.WriteLine($"To say it at once next time: {string.Join(' ', said.Select(s => $"--set \"{s}\""))}");
        }

        return folder;
    }

    /// <summary>Shows what is open, with the setting for each choice.</summary>
    public static void Show(LakeFolder folder, TextWriter to)
    {
        foreach (SurveyQuestion question in folder.SurveyQuestions)
        {
            to.WriteLine($"{question.File}: {question.Text}");
            foreach (SurveyChoice choice in question.Choices.Take(MostShown))
                to.WriteLine($"  {choice.Label}:  {string.Join(' ', LakeSettings.Of(choice.Set).Select(s => $"--set \"{s}\""))}");
            if (question.Choices.Count > MostShown) to.WriteLine($"  and {question.Choices.Count - MostShown} more; --set latitude_deg=... --set longitude_deg=... with a place on the lake finds the one.");
        }
    }

    private static SurveyOptions? Ask(SurveyQuestion question, TextWriter to, TextReader typed)
    {
        to.WriteLine($"{question.File}: {question.Text}");
        int shown = MostShown;
        for (int i = 0; i < question.Choices.Count && i < shown; i++) to.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {i + 1}  {question.Choices[i].Label}"));
        while (true)
        {
            to.Write(question.Kind == SurveyQuestionKind.Level ? "Number of a choice, or the level such as 41.7 m: " : question.Choices.Count > shown ? "Number, or m for more: " : "Number: ");
            string? line = typed.ReadLine()?.Trim();
            if (string.IsNullOrEmpty(line)) return null;
            if (line is "m" && question.Choices.Count > shown)
            {
                for (int i = shown; i < question.Choices.Count; i++) to.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {i + 1}  {question.Choices[i].Label}"));
                shown = question.Choices.Count;
                continue;
            }

            if (int.TryParse(line, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number >= 1 && number <= question.Choices.Count) return question.Choices[number - 1].Set;
            string level = line.EndsWith('m') ? line[..^1].Trim() : line;
            if (question.Kind == SurveyQuestionKind.Level && double.TryParse(level, NumberStyles.Float, CultureInfo.InvariantCulture, out double metres))
                return new SurveyOptions { Sense = DepthSense.Elevation, SurfaceElevationM = metres };
            to.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Write a number from 1 to {question.Choices.Count}, or nothing to stop."));
        }
    }
}
