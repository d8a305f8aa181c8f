using SecondShore.Formats.Surveys.Xyz;
using SecondShore.Formats.Text;

namespace SecondShore.Formats.Surveys;

/// <summary>The first rows of a survey in a text file, to be looked at and its columns named.</summary>
/// <param name="Columns">Names by column; empty where the file gives none.</param>
/// <param name="Rows">Cells of the first rows.</param>
/// <param name="X">Column taken for eastings or longitudes, from 0; -1 for none.</param>
/// <param name="Y">Column taken for northings or latitudes, from 0; -1 for none.</param>
/// <param name="Depth">Column taken for the depth, from 0; -1 for none.</param>
public sealed record SurveyTable(IReadOnlyList<string> Columns, IReadOnlyList<IReadOnlyList<string>> Rows, int X, int Y, int Depth)
{
    private const int MostColumns = 40;

    /// <summary>The table of a file; null where it is none.</summary>
    /// <param name="source">The file.</param>
    /// <param name="options">What the user set.</param>
    /// <param name="rows">How many rows to show.</param>
    public static SurveyTable? Of(SurveySource source, SurveyOptions options, int rows)
    {
        ArgumentNullException.ThrowIfNull(source);
        if (!TextDecoding.LooksLikeText(source.Bytes) || source.Bytes.FirstOrDefault(b => b > ' ') is (byte)'{' or (byte)'<' or (byte)'$' or (byte)'!') return null;
        string head = TextDecoding.Decode(source.Bytes.AsSpan(0, Math.Min(source.Bytes.Length, 30_000)), out _);
        if (head.AsSpan().TrimStart().StartsWith("n", StringComparison.OrdinalIgnoreCase) && new AsciiGrid.AsciiGridReader().Sniff(source) > 0.5) return null;
        if (XyzLayout.Find(source.Name, head, options) is not XyzLayout layout) return null;
        CsvTable table = layout.Table;
        int columns = Math.Min(table.Cells(layout.FirstRow), MostColumns);
        if (columns < 2) return null;
        string Cell(int row, int column) => column < table.Cells(row) ? TextDecoding.Excerpt(table[row, column].Trim(), 24) : "";
        return new SurveyTable([.. Enumerable.Range(0, columns).Select(c => layout.HeaderRow < 0 ? "" : Cell(layout.HeaderRow, c))],
            [.. Enumerable.Range(layout.FirstRow, Math.Clamp(table.Count - layout.FirstRow, 0, rows))
                .Select(row => (IReadOnlyList<string>)[.. Enumerable.Range(0, columns).Select(c => Cell(row, c))])],
            layout.Roles.Place?.X ?? -1, layout.Roles.Place?.Y ?? -1, layout.Roles.Depth);
    }
}
