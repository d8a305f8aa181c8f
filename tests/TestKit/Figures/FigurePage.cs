using System.Globalization;
using System.Text;

namespace SecondShore.TestKit.Figures;

/// <summary>docs/figures.md, made from the figure files and never written by hand.</summary>
public static class FigurePage
{
    /// <summary>Where the page lies.</summary>
    public static string FilePath { get; } = Path.Combine(SharedData.RepositoryRoot, "docs", "figures.md");

    private const string Head =
        """
        # Figures

        The latest measured figure of each claim. `dotnet run -c Release --project bench -- NAME` measures one again, keeps it in
        `docs/figures/` and makes this page from the files there; `-- --compare NAME` keeps nothing and says what has moved beyond its
        margin. A `+` behind a commit means that files were changed beside it. Times are of the machine and the load they name.

        """;

    /// <summary>Writes the page of the figures.</summary>
    public static string Of(IEnumerable<FigureFile> figures)
    {
        StringBuilder page = new(Head.ReplaceLineEndings("\n"));
        foreach (FigureFile figure in figures) Add(page, figure);
        return page.ToString();
    }

    private static void Add(StringBuilder page, FigureFile figure)
    {
        page.Append(CultureInfo.InvariantCulture, $"\n## {figure.Name}\n\n{Sentence(figure.Claim)}");
        if (figure.LeftOut is { } leftOut) page.Append(CultureInfo.InvariantCulture, $" Left out: {Sentence(leftOut)}");
        if (figure.Note is { } note) page.Append(CultureInfo.InvariantCulture, $" {Sentence(note)}");
        page.Append(CultureInfo.InvariantCulture, $"\n[{figure.Date:yyyy-MM-dd}](figures/{figure.Name}.json), {Circumstances(figure)}: `{figure.Command}`\n\n");
        page.Append("| figure | value | unit | against | margin |\n| --- | --- | --- | --- | --- |\n");
        foreach (FigureValue v in figure.Values.Where(v => v.OnPage))
            page.Append(CultureInfo.InvariantCulture, $"| {v.Name} | {Number(v.Value)} | {v.Unit} | {Cell(v.Against)} | {v.Margin} |\n");
        int more = figure.Values.Count(v => !v.OnPage);
        if (more > 0) page.Append(CultureInfo.InvariantCulture, $"\n{more} more in [its file](figures/{figure.Name}.json).\n");
    }

    private static string Circumstances(FigureFile figure)
    {
        string commit = figure.Commit is { } c ? $"commit {c}" : "commit not written down";
        string machine = figure.Machine.Processor is { } p ? $"{figure.Machine.Cores} cores of {p}" : $"{figure.Machine.Cores} cores";
        string load = figure.Load is { } l ? string.Create(CultureInfo.InvariantCulture, $"load {l:0.0}") : "load not written down";
        return $"{commit}, {machine}, {load}";
    }

    private static string Number(double value) =>
        value.ToString(Math.Abs(value) is >= 1000 and < 1e9 ? "0" : "G4", CultureInfo.InvariantCulture);

    private static string Sentence(string text) => text.EndsWith('.') ? text : text + ".";

    private static string Cell(string text) => text.Replace("|", "\\|", StringComparison.Ordinal);
}
