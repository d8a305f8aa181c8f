namespace SecondShore.App.Pace;

/// <summary>The last runs of one piece of work on this device, as kept in its storage.</summary>
internal static class FormerRuns
{
    /// <summary>Runs that are kept: enough for a median, few enough to follow a device that became slower.</summary>
    internal static int Most => 7;

    /// <summary>Key in the device's storage.</summary>
    /// <param name="work">The work, such as the plan of a day.</param>
    /// <param name="lake">The lake's id: another lake is other work.</param>
    public static string Key(string work, string lake) => $"pace-1:{work}:{lake}";

    /// <summary>Reads what was kept; lines that are no runs are left out.</summary>
    public static IReadOnlyList<WorkRun> Parse(string? text) =>
        [.. (text ?? "").Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(WorkRun.Parse).OfType<WorkRun>()];

    /// <summary>The text to keep: the runs before and the one just done.</summary>
    public static string With(IReadOnlyList<WorkRun> before, WorkRun now) =>
        string.Join('\n', before.Append(now).TakeLast(Most).Select(r => r.ToString()));
}
