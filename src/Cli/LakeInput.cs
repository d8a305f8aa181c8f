using SecondShore.Answers.Lake;
using SecondShore.Cli.Console;
using SecondShore.Formats;
using SecondShore.Formats.Lake;

namespace SecondShore.Cli;

/// <summary>Opens what the user named as LAKE, says every problem, and stops where one stands in the way.</summary>
internal static class LakeInput
{
    // More than this of one file's rows is one fault told many times.
    private const int MaxWarningsShown = 8;

    /// <summary>Reads a lake.</summary>
    /// <exception cref="BadInputException">It cannot be used; the message names file, line and reason.</exception>
    public static LakeFolder Read(string path, Surroundings surroundings, CancellationToken stop)
    {
        LakeFolder folder;
        using (ProgressLine progress = new(surroundings, $"Reading {path}"))
            folder = LakeFolderReader.ReadPath(path, surroundings.Settings, progress, stop);
        folder = SurveyDialogue.Settle(path, folder, surroundings, stop);
        Problem[] errors = [.. folder.Problems.Where(p => p.Severity == ProblemSeverity.Error)];
        if (errors.Length > 0)
        {
            SurveyDialogue.Show(folder, surroundings.Err);
            throw new BadInputException(string.Join(Environment.NewLine, errors.Select(p => p.ToString())));
        }

        if (!folder.HasSite)
            throw new BadInputException($"{path}: no file gives a position for the lake. Put latitude_deg and longitude_deg into lake.json, or add a survey that carries coordinates.");
        Problem[] warnings = [.. folder.Problems.Where(p => p.Severity == ProblemSeverity.Warning)];
        foreach (Problem warning in warnings.Take(MaxWarningsShown)) surroundings.Err.WriteLine(warning);
        if (warnings.Length > MaxWarningsShown)
            surroundings.Err.WriteLine($"... and {warnings.Length - MaxWarningsShown} more; 'secondshore check {path}' lists them all.");
        return folder;
    }

    /// <summary>Reads and prepares a lake.</summary>
    public static PreparedLake Prepare(string path, Surroundings surroundings, CancellationToken stop)
    {
        LakeFolder folder = Read(path, surroundings, stop);
        using ProgressLine progress = new(surroundings, "Building the bottom");
        return PreparedLake.From(folder, progress, stop);
    }
}
