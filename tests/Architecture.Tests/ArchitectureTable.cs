using SecondShore.TestKit;

namespace SecondShore.Architecture.Tests;

/// <summary>The table of projects in docs/architecture.md, read so that page and code cannot drift apart.</summary>
internal static class ArchitectureTable
{
    private const string Build = " (build)";

    /// <summary>One row: what a project may reference, what it runs while it is built (marked so on the page), and its packages.</summary>
    internal sealed record Row(string Project, IReadOnlyList<string> Projects, IReadOnlyList<string> RunByBuild, IReadOnlyList<string> Packages);

    public static IReadOnlyList<Row> Rows { get; } = Read();

    /// <summary>Engine's folders in the order of the arrow: each may use those before it.</summary>
    public static IReadOnlyList<string> EngineOrder { get; } =
        ["Core", "Water", "Basin", "Season", "Motion", "Rig", "Learn", "Day"];

    private static List<Row> Read()
    {
        List<Row> rows = [];
        string[] lines = File.ReadAllLines(Path.Combine(SharedData.RepositoryRoot, "docs", "architecture.md"));
        int start = Array.FindIndex(lines, l => l.StartsWith("| project |", StringComparison.Ordinal));
        foreach (string line in lines.Skip(start + 2).TakeWhile(l => l.StartsWith('|')))
        {
            string[] cells = [.. line.Trim('|').Split('|').Select(c => c.Trim())];
            ILookup<bool, string> names = Names(cells[1]).ToLookup(n => n.EndsWith(Build, StringComparison.Ordinal));
            rows.Add(new Row(cells[0], [.. names[false]], [.. names[true].Select(n => n[..^Build.Length])], Names(cells[2])));
        }

        return rows;
    }

    private static string[] Names(string cell) =>
        cell.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
}
