using SecondShore.Formats.Coordinates;
using SecondShore.Formats.Surveys.Hypotheses;
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
        return XyzLayout.Find(source.Name, head, new SurveyOptions()) is XyzLayout layout && layout.Missing.Length == 0 ? 0.6 : 0.1;
    }

    public RawSurvey? Read(SurveySource source, SurveyOptions options, ProblemLog log, IProgress<double>? progress, CancellationToken cancellation)
    {
        string text = TextDecoding.Decode(source.Bytes, out string encoding);
        XyzLayout? layout = XyzLayout.Find(source.Name, text, options);
        if (layout is null)
        {
            log.Error(source.Name, "the file holds no rows of numbers; soundings are expected, one a row, with a position and a depth.");
            return null;
        }

        if (layout.Missing.Length > 0)
        {
            log.Error(source.Name, layout.Missing);
            return null;
        }

        RawSurvey raw = new(Format) { Question = layout.Roles.Question, Words = WordsOf(source.Name, layout) };
        if (raw.Question is not null) return raw;
        if (encoding != "UTF-8") raw.Doubts.Add($"The text was read as {Finding.Of(encoding)}.");
        WaterNames? names = WaterNames.Of(source.Name, layout);
        if (names is not null && options.Water is null)
        {
            raw.Question = names.Ask();
            return raw;
        }

        XyzRows rows = new(source.Name, layout, log) { Of = names is null || options.Water is null or "*" ? null : (names.Column, options.Water) };
        RawPoints points = rows.Read(progress, cancellation);
        raw.Rows = (rows.Total, rows.Unreadable + rows.WithoutFix);
        if (points.X.Length == 0)
        {
            log.Error(source.Name, "no row of the file has both a position and a depth that can be read.");
            return null;
        }

        Describe(raw, layout, ref points, options);
        raw.Points.Add(points);
        return raw;
    }

    private static string WordsOf(string file, XyzLayout layout)
    {
        System.Text.StringBuilder words = new(file.Length > 120 ? file[..120] : file);
        words.Append(' ').Append(layout.Preamble);
        if (layout.HeaderRow >= 0)
            for (int c = 0; c < Math.Min(layout.Table.Cells(layout.HeaderRow), 40); c++) words.Append(' ').Append(layout.Table[layout.HeaderRow, c]);
        return words.ToString();
    }

    private static void Describe(RawSurvey raw, XyzLayout layout, ref RawPoints points, SurveyOptions options)
    {
        layout.Roles.Attribute?.Tell(raw);
        if (raw.Unit is null && !raw.OddUnit) TakeUnitInWords(raw, layout);

        Tell(raw, layout, "east or longitude", layout.XColumn);
        Tell(raw, layout, "north or latitude", layout.YColumn);
        Tell(raw, layout, "depth", layout.DepthColumn);
        if (layout.Roles.Units >= 0) Tell(raw, layout, "unit of each row's depth", layout.Roles.Units);
        raw.RolesTaken.Add($"separator: {(layout.Table.Separator switch { ',' => "comma", ';' => "semicolon", '\t' => "tab", '|' => "bar", _ => "blanks" })}{(layout.DecimalComma ? ", decimal comma" : "")}");
        if (layout.HeaderRow < 0)
            raw.Doubts.Add($"The file has no header: columns {layout.XColumn + 1} and {layout.YColumn + 1} are taken as position (east, north) and column {layout.DepthColumn + 1} as depth.");
        if (layout.Roles.Place!.Form == AngleForm.DegreeMinutes)
        {
            raw.Doubts.Add("The position is written as degrees and minutes in one number.");
            (raw.Crs, raw.CrsKnown) = (CoordinateSystem.Degrees, Knowledge.Found);
            return;
        }

        Untangle(raw, layout, ref points, options);
    }

    // Headers that say latitude over eastings, or degrees in swapped order, are common; the numbers decide, aloud.
    private static void Untangle(RawSurvey raw, XyzLayout layout, ref RawPoints points, SurveyOptions options)
    {
        double x = Middle(points.X), y = Middle(points.Y);
        bool degrees = CoordinateSystem.InDegrees(x, y), swappedDegrees = !degrees && CoordinateSystem.InDegrees(y, x);
        bool chosen = options.XColumn is not null && options.YColumn is not null;
        if (degrees && options.WestPositive is null) TurnNamed(raw, layout, ref points);
        if (swappedDegrees)
        {
            points = points with { X = points.Y, Y = points.X };
            raw.Doubts.Add("The columns named as latitude and longitude are swapped (one holds numbers over 90); they were put right.");
        }
        else if (!degrees && layout.Roles.Place!.NamedDegrees)
        {
            raw.Doubts.Add($"The columns are named latitude and longitude but hold numbers such as {x:G9} and {y:G9}: taken as metres in a plane.");
            raw.MayBeSwapped = !chosen;
        }
        else if (!degrees)
        {
            raw.MayBeSwapped = !layout.Roles.Place!.NamedPlane && !chosen;
        }
    }

    // Long_W and Lat_S say in their names what their numbers leave out.
    private static void TurnNamed(RawSurvey raw, XyzLayout layout, ref RawPoints points)
    {
        if (layout.HeaderRow < 0) return;
        bool west = Says(layout.XColumn, "w", "west"), south = Says(layout.YColumn, "s", "south");
        if (west && Array.TrueForAll(points.X, x => x > 0)) points = points with { X = [.. points.X.Select(x => -x)] };
        else west = false;
        if (south && Array.TrueForAll(points.Y, y => y > 0)) points = points with { Y = [.. points.Y.Select(y => -y)] };
        else south = false;
        if (west || south) raw.Doubts.Add("The names of the columns say west or south: their numbers are counted that way.");

        bool Says(int column, string letter, string word) =>
            HeaderWords.Split(layout.Table[layout.HeaderRow, column].ToString()).Exists(w => w == letter || w == word);
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

    // Both named, and neither with the depths: asked about.
    private static void TakeUnitInWords(RawSurvey raw, XyzLayout layout)
    {
        (DepthUnit? unit, bool both) = UnitWords.In(layout.Preamble);
        if (both) raw.OddUnit = true;
        if (unit is null) return;
        (raw.Unit, raw.UnitKnown) = (unit, Knowledge.Stated);
        raw.Doubts.Add($"The lines beside the data name {Finding.Of(unit == DepthUnit.Feet ? "feet" : "metres")}: taken as the unit of depth.");
    }
}
