using SecondShore.Formats.Coordinates;
using SecondShore.Formats.Text;

namespace SecondShore.Formats.Surveys.Xyz;

/// <summary>Reads soundings from delimited text of any make: the layout is found, said, and can be set.</summary>
internal sealed class XyzReader : ISurveyReader
{
    public string Format => "soundings as text (XYZ, CSV)";

    public double Sniff(SurveySource source)
    {
        if (!TextDecoding.LooksLikeText(source.Bytes)) return 0;
        byte first = source.Bytes.FirstOrDefault(b => b > ' ');
        if (first is (byte)'{' or (byte)'<' or (byte)'$' or (byte)'!') return 0;
        string head = TextDecoding.Decode(source.Bytes.AsSpan(0, Math.Min(source.Bytes.Length, 30_000)), out _);
        return XyzLayout.Find(head, new SurveyOptions()) is XyzLayout layout && layout.Missing.IsEmpty ? 0.6 : 0.1;
    }

    public RawSurvey? Read(SurveySource source, SurveyOptions options, ProblemLog log, IProgress<double>? progress, CancellationToken cancellation)
    {
        string text = TextDecoding.Decode(source.Bytes, out string encoding);
        XyzLayout? layout = XyzLayout.Find(text, options);
        if (layout is null)
        {
            log.Error(source.Name, "the file holds no rows of numbers; soundings are expected, one a row, with a position and a depth.");
            return null;
        }

        if (!layout.Missing.IsEmpty)
        {
            log.Error(source.Name, layout.Missing);
            return null;
        }

        RawSurvey raw = new(Format);
        if (encoding != "UTF-8") raw.Doubts.Add($"The text was read as {Finding.Of(encoding)}.");
        XyzRows rows = new(source.Name, layout, log);
        RawPoints points = rows.Read(progress, cancellation);
        if (points.X.Length == 0)
        {
            log.Error(source.Name, "no row of the file has both a position and a depth that can be read.");
            return null;
        }

        Describe(raw, layout, ref points, options);
        raw.Points.Add(points);
        return raw;
    }

    private static void Describe(RawSurvey raw, XyzLayout layout, ref RawPoints points, SurveyOptions options)
    {
        layout.Depth?.Tell(raw);
        if (layout.Depth is { Sense: DepthSense.Elevation, Unit: null } && options.Sense is null && layout.HeaderRow < 0) raw.Sense = null;
        if (raw.Unit is null && UnitInWords(layout.Preamble) is DepthUnit unit)
        {
            (raw.Unit, raw.UnitKnown) = (unit, Knowledge.Stated);
            raw.Doubts.Add($"The lines before the data name {Finding.Of(unit == DepthUnit.Feet ? "feet" : "metres")}: taken as the unit of depth.");
        }

        Tell(raw, layout, "east or longitude", layout.XColumn);
        Tell(raw, layout, "north or latitude", layout.YColumn);
        Tell(raw, layout, "depth", layout.DepthColumn);
        raw.RolesTaken.Add($"separator: {(layout.Table.Separator switch { ',' => "comma", ';' => "semicolon", '\t' => "tab", _ => "blanks" })}{(layout.DecimalComma ? ", decimal comma" : "")}");
        if (layout.HeaderRow < 0)
            raw.Doubts.Add($"The file has no header: columns {layout.XColumn + 1} and {layout.YColumn + 1} are taken as position (east, north) and column {layout.DepthColumn + 1} as depth.");
        Untangle(raw, layout, ref points);
    }

    // Headers that say latitude over eastings, or degrees in swapped order, are common; the numbers decide, aloud.
    private static void Untangle(RawSurvey raw, XyzLayout layout, ref RawPoints points)
    {
        double x = Middle(points.X), y = Middle(points.Y);
        bool degrees = CoordinateSystem.InDegrees(x, y), swappedDegrees = !degrees && CoordinateSystem.InDegrees(y, x);
        if (swappedDegrees)
        {
            points = points with { X = points.Y, Y = points.X };
            raw.Doubts.Add("The columns named as latitude and longitude are swapped (one holds numbers over 90); they were put right.");
        }
        else if (!degrees && layout.NamedDegrees)
        {
            raw.Doubts.Add($"The columns are named latitude and longitude but hold numbers such as {x:G9} and {y:G9}: taken as metres in a plane.");
            raw.MayBeSwapped = true;
        }
        else if (!degrees)
        {
            raw.MayBeSwapped = !layout.NamedPlane;
        }
    }

    private static double Middle(double[] values)
    {
        double[] sorted = [.. values];
        Array.Sort(sorted);
        return sorted[sorted.Length / 2];
    }

    private static void Tell(RawSurvey raw, XyzLayout layout, string role, int column)
    {
        string name = layout.HeaderRow >= 0 ? TextDecoding.Excerpt(layout.Table[layout.HeaderRow, column]) : "";
        raw.RolesTaken.Add(name.Length > 0 ? $"{name}: {role}" : $"column {column + 1}: {role}");
    }

    private static DepthUnit? UnitInWords(string preamble)
    {
        string[] words = preamble.ToLowerInvariant().Split([' ', ',', ';', ':', '(', ')', '[', ']', '\t'], StringSplitOptions.RemoveEmptyEntries);
        if (words.Any(w => w is "feet" or "ft" or "foot")) return DepthUnit.Feet;
        return words.Any(w => w is "metres" or "meters" or "meter" or "metre") ? DepthUnit.Metres : null;
    }
}

/// <summary>Reads the rows of a text file whose layout is known.</summary>
internal sealed class XyzRows(string file, XyzLayout layout, ProblemLog log)
{
    public RawPoints Read(IProgress<double>? progress, CancellationToken cancellation)
    {
        CsvTable table = layout.Table;
        int n = table.Count - layout.FirstRow;
        List<double> x = new(n), y = new(n), z = new(n);
        int empty = 0;
        for (int row = layout.FirstRow; row < table.Count; row++)
        {
            if (row % 100_000 == 0)
            {
                cancellation.ThrowIfCancellationRequested();
                progress?.Report((double)row / table.Count);
            }

            if (!Value(row, layout.XColumn, out double px) | !Value(row, layout.YColumn, out double py) | !Value(row, layout.DepthColumn, out double pz))
            {
                if (NumberText.IsMissing(table[row, layout.DepthColumn]) && !table[row, layout.XColumn].IsEmpty) empty++;
                else Report(row);
                continue;
            }

            x.Add(px);
            y.Add(py);
            z.Add(pz);
        }

        if (empty > 0) log.Note(file, $"{empty} rows have no depth and are not used.");
        return new RawPoints([.. x], [.. y], [.. z], []);
    }

    private bool Value(int row, int column, out double value) => XyzLayout.TryValue(layout.Table[row, column], layout.DecimalComma, out value);

    private void Report(int row)
    {
        int column = !Value(row, layout.XColumn, out _) ? layout.XColumn : !Value(row, layout.YColumn, out _) ? layout.YColumn : layout.DepthColumn;
        string cell = TextDecoding.Excerpt(layout.Table[row, column]);
        log.Row(file, layout.Table.Line(row), "row without numbers", $"column {column + 1} is '{cell}' where a number is expected; the row is not used.");
    }
}
