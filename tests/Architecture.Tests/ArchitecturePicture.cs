using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using SecondShore.TestKit;

namespace SecondShore.Architecture.Tests;

/// <summary>The picture of docs/architecture.md, drawn from that page's own table and list: who knows whom, and the way of a depth.</summary>
internal static partial class ArchitecturePicture
{
    private const int BoxWidth = 132, BoxHeight = 40, GapX = 26, GapY = 52, Edge = 24, TextWidth = 380, LineHeight = 40;

    public static string FilePath { get; } = Path.Combine(SharedData.RepositoryRoot, "docs", "images", "architecture.svg");

    /// <summary>Draws it; the same page gives the same bytes.</summary>
    public static string Draw()
    {
        Dictionary<string, string[]> direct = ArchitectureTable.Rows.ToDictionary(r => r.Project, Direct);
        Dictionary<string, int> rank = [];
        foreach (string project in direct.Keys) RankOf(project, direct, rank);
        int ranks = rank.Values.Max() + 1;
        string[][] rows = [.. Enumerable.Range(0, ranks).Select(k => direct.Keys.Where(p => rank[p] == k).ToArray())];
        int widest = rows.Max(r => r.Length), left = Edge + (widest * (BoxWidth + GapX));
        int height = (2 * Edge) + (ranks * BoxHeight) + ((ranks - 1) * GapY);
        Dictionary<string, (int X, int Y)> at = [];
        for (int k = 0; k < ranks; k++)
        {
            int start = Edge + ((widest - rows[k].Length) * (BoxWidth + GapX) / 2);
            for (int i = 0; i < rows[k].Length; i++) at[rows[k][i]] = (start + (i * (BoxWidth + GapX)), height - Edge - BoxHeight - (k * (BoxHeight + GapY)));
        }

        (string Project, string Text)[] way = Way();
        StringBuilder svg = new();
        svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {left + TextWidth} {height}\" font-family=\"Georgia, serif\" font-size=\"15\" role=\"img\">\n");
        svg.Append("<title>Projects: each knows those its lines lead down to. Numbers: the way of a depth.</title>\n");
        svg.Append("<rect width=\"100%\" height=\"100%\" fill=\"#f6f0e2\"/>\n<g stroke=\"#8a8271\" fill=\"none\">\n");
        foreach ((string user, string[] used) in direct)
            foreach (string other in used)
                svg.Append(CultureInfo.InvariantCulture, $"<path d=\"M{at[user].X + (BoxWidth / 2)} {at[user].Y + BoxHeight} L{at[other].X + (BoxWidth / 2)} {at[other].Y}\"/>\n");
        svg.Append("</g>\n");
        foreach ((string project, (int x, int y)) in at) Box(svg, project, x, y, [.. way.Index().Where(s => s.Item.Project == project).Select(s => s.Index + 1)]);
        for (int i = 0; i < way.Length; i++)
        {
            int y = Edge + 16 + (i * LineHeight);
            svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{left}\" y=\"{y}\" fill=\"#b3401f\">{i + 1}</text><text x=\"{left + 20}\" y=\"{y}\" fill=\"#2b2a26\">{way[i].Project}: {Escape(way[i].Text)}</text>\n");
        }

        return svg.Append("</svg>\n").ToString();
    }

    private static void Box(StringBuilder svg, string project, int x, int y, int[] steps)
    {
        svg.Append(CultureInfo.InvariantCulture, $"<rect x=\"{x}\" y=\"{y}\" width=\"{BoxWidth}\" height=\"{BoxHeight}\" fill=\"#fffaf0\" stroke=\"#2b2a26\"/>");
        svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{x + 12}\" y=\"{y + 25}\" fill=\"#2b2a26\">{project}</text>");
        if (steps.Length > 0)
            svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{x + BoxWidth - 8}\" y=\"{y + 25}\" text-anchor=\"end\" fill=\"#b3401f\">{string.Join(' ', steps)}</text>");
        svg.Append('\n');
    }

    // What is known only through another is not drawn.
    private static string[] Direct(ArchitectureTable.Row row)
    {
        HashSet<string> through = [.. row.Projects.SelectMany(p => ArchitectureTable.Rows.First(r => r.Project == p).Projects)];
        return [.. row.Projects.Where(p => !through.Contains(p))];
    }

    private static int RankOf(string project, Dictionary<string, string[]> direct, Dictionary<string, int> rank)
    {
        if (!rank.TryGetValue(project, out int known))
            rank[project] = known = direct[project].Length == 0 ? 0 : 1 + direct[project].Max(p => RankOf(p, direct, rank));
        return known;
    }

    private static (string Project, string Text)[] Way() =>
    [
        .. Step().Matches(File.ReadAllText(Path.Combine(SharedData.RepositoryRoot, "docs", "architecture.md")))
            .Select(m => (m.Groups["project"].Value, m.Groups["text"].Value)),
    ];

    private static string Escape(string text) => text.Replace("&", "&amp;", StringComparison.Ordinal).Replace("<", "&lt;", StringComparison.Ordinal);

    [GeneratedRegex(@"^\d+\. (?<project>\w+): (?<text>[^.;\n]+)", RegexOptions.Multiline)]
    private static partial Regex Step();
}
