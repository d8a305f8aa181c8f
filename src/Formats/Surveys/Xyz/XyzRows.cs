using SecondShore.Formats.Surveys.Hypotheses;
using SecondShore.Formats.Text;

namespace SecondShore.Formats.Surveys.Xyz;

/// <summary>Reads the rows of a text file whose layout is known.</summary>
internal sealed class XyzRows(string file, XyzLayout layout, ProblemLog log)
{
    private readonly PlaceColumns _place = layout.Roles.Place!;

    /// <summary>The column of waters' names and the one that is meant; null takes every row.</summary>
    public (int Column, string Name)? Of { get; init; }

    /// <summary>Rows of data.</summary>
    public int Total { get; private set; }

    /// <summary>Rows without the numbers they should hold.</summary>
    public int Unreadable { get; private set; }

    /// <summary>Rows at 0, 0: the receiver had no fix.</summary>
    public int WithoutFix { get; private set; }

    public RawPoints Read(IProgress<double>? progress, CancellationToken cancellation)
    {
        CsvTable table = layout.Table;
        Total = table.Count - layout.FirstRow;
        int others = 0;
        List<double> x = new(Total), y = new(Total), z = new(Total);
        int empty = 0, marks = 0, firstWithoutFix = 0;
        for (int row = layout.FirstRow; row < table.Count; row++)
        {
            if (row % 100_000 == 0)
            {
                cancellation.ThrowIfCancellationRequested();
                progress?.Report((double)row / table.Count);
            }

            if (Of is (int names, string name) && !table[row, names].Trim().Equals(name, StringComparison.OrdinalIgnoreCase))
            {
                others++;
                continue;
            }

            if (!Value(row, layout.XColumn, out double px) | !Value(row, layout.YColumn, out double py) | !Depth(row, out double pz))
            {
                if (NumberText.IsMissing(table[row, layout.DepthColumn]) && !table[row, layout.XColumn].IsEmpty) empty++;
                else Report(row);
                continue;
            }

            if ((px == 0 && py == 0) || (IsNoDataMark(px) && IsNoDataMark(py)))
            {
                if (WithoutFix++ == 0) firstWithoutFix = table.Line(row);
                continue;
            }

            if (IsNoDataMark(pz))
            {
                marks++;
                continue;
            }

            x.Add(Placed(px, row, _place.XLetter));
            y.Add(Placed(py, row, _place.YLetter));
            z.Add(pz);
        }

        Total -= others;
        if (others > 0) log.Note(file, $"{others} rows belong to other waters of the file and are not used.");
        if (empty > 0) log.Note(file, $"{empty} rows have no depth and are not used.");
        if (marks > 0) log.Note(file, $"{marks} rows hold a mark for no data (such as -9999) as depth and are not used.");
        if (WithoutFix > 0)
            log.Warn(file, $"{WithoutFix} rows lie at 0, 0 or hold a mark (no fix), the first on line {firstWithoutFix}; they are not used.");
        return new RawPoints([.. x], [.. y], [.. z], []);
    }

    private static bool IsNoDataMark(double value) =>
        value is -9999 or -99999 or -32768 or -32767 or 32767 or 1e6 or 99999 or 999999 or 9999 or -999 or -999.9 or -99.9 or 999.999999 or 99.999999 or 655.35 or 6553.5 || Math.Abs(value) > 1e7;

    private double Placed(double value, int row, int letter)
    {
        double size = value;
        if (_place.Form == AngleForm.DegreeMinutes)
        {
            double whole = Math.Floor(Math.Abs(value) / 100);
            size = Math.CopySign(whole + ((Math.Abs(value) - (whole * 100)) / 60), value);
        }

        if (letter < 0) return size;
        ReadOnlySpan<char> mark = layout.Table[row, letter].Trim();
        return mark.Length == 1 && mark[0] is 'S' or 'W' or 's' or 'w' ? -Math.Abs(size) : size;
    }

    private bool Value(int row, int column, out double value) => XyzLayout.TryValue(layout.Table[row, column], layout.DecimalComma, out value);

    private bool Depth(int row, out double value)
    {
        if (Value(row, layout.DepthColumn, out value))
        {
            if (layout.Roles.Units < 0 || IsNoDataMark(value)) return true;
            if (ColumnNumbers.UnitIn(layout.Table[row, layout.Roles.Units].Trim()) is not DepthUnit own) return false;
            value *= DepthMeanings.MetresPer(own);
            return true;
        }

        if (layout.Roles.Attribute?.Unit is not DepthUnit unit || !DepthText.TryParse(layout.Table[row, layout.DepthColumn], out DepthText written)
            || !double.IsNaN(written.Second) || written.Unit != unit) return false;
        value = written.First;
        return true;
    }

    private void Report(int row)
    {
        Unreadable++;
        int column = !Value(row, layout.XColumn, out _) ? layout.XColumn : !Value(row, layout.YColumn, out _) ? layout.YColumn : layout.DepthColumn;
        string cell = TextDecoding.Excerpt(layout.Table[row, column]);
        log.Row(file, layout.Table.Line(row), "row without numbers", $"column {column + 1} is '{cell}' where a number is expected; the row is not used.");
    }
}
