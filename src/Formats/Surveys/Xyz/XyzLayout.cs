using SecondShore.Formats.Text;

namespace SecondShore.Formats.Surveys.Xyz;

/// <summary>How the rows of a text file are laid out: separator, header, first row of data, and which column is what.</summary>
internal sealed record XyzLayout(CsvTable Table, bool DecimalComma, int HeaderRow, int FirstRow, int XColumn, int YColumn, int DepthColumn, DepthAttribute? Depth, bool NamedDegrees, bool NamedPlane, string Preamble)
{
    private static readonly char[] Separators = [',', ';', '\t', ' '];
    private static readonly string[] LatNames = ["latitude", "lat", "latitude_deg", "lat_deg", "lat_dd", "gps_lat", "breite", "y_lat"];
    private static readonly string[] LonNames = ["longitude", "lon", "long", "lng", "longitude_deg", "lon_deg", "long_deg", "lon_dd", "long_dd", "gps_lon", "gps_long", "laenge", "x_lon"];
    private static readonly string[] EastNames = ["easting", "east", "eastings", "x", "x_coord", "xcoord", "utm_e", "utm_x", "e", "rechtswert", "x_m", "easting_m", "x_ft", "easting_ft"];
    private static readonly string[] NorthNames = ["northing", "north", "northings", "y", "y_coord", "ycoord", "utm_n", "utm_y", "n", "hochwert", "y_m", "northing_m", "y_ft", "northing_ft"];
    private static readonly string[] BareDepthNames = ["z", "value", "val", "depths", "tiefe", "z_m", "z_ft"];

    /// <summary>Index of columns the layout found wanting, as a sentence; empty when whole.</summary>
    public FindingForm Missing => XColumn < 0 || YColumn < 0
        ? "no two columns of the file can be a position; name them latitude_deg and longitude_deg, or easting and northing, in a header row, or set survey.x_column and y_column in lake.json."
        : DepthColumn < 0 ? "no column of the file can be a depth; name it depth_m or depth_ft in a header row, or set survey.depth_column in lake.json." : "";

    /// <summary>Finds the layout from the start of a text.</summary>
    public static XyzLayout? Find(string text, SurveyOptions options)
    {
        string head = text.Length > 60_000 ? text[..60_000] : text;
        CsvTable? best = null;
        char bestSeparator = ',';
        int bestScore = 0;
        foreach (char separator in Separators)
        {
            if (options.Separator is char set && set != separator) continue;
            CsvTable table = CsvTable.Parse(head, separator);
            int score = Score(table, separator != ',');
            if (score <= bestScore) continue;
            (best, bestSeparator, bestScore) = (table, separator, score);
        }

        if (best is null) return null;
        bool comma = options.DecimalComma ?? (bestSeparator != ',' && UsesDecimalComma(best));
        int first = FirstDataRow(best, comma);
        if (first < 0) return null;
        int header = first > 0 && LooksLikeHeader(best, first - 1, best.Cells(first)) ? first - 1 : -1;
        XyzColumns columns = new(best, comma, header, first, options);
        string preamble = PreambleOf(best, header >= 0 ? header : first);
        CsvTable all = head.Length == text.Length ? best : CsvTable.Parse(text, bestSeparator);
        return columns.Layout(all, comma, header, first, preamble);
    }

    /// <summary>Whether a header names a latitude.</summary>
    public static bool IsLat(string plain) => LatNames.Contains(plain);

    /// <summary>Whether a header names a longitude.</summary>
    public static bool IsLon(string plain) => LonNames.Contains(plain);

    /// <summary>Whether a header names an easting.</summary>
    public static bool IsEast(string plain) => EastNames.Contains(plain);

    /// <summary>Whether a header names a northing.</summary>
    public static bool IsNorth(string plain) => NorthNames.Contains(plain);

    /// <summary>Whether a header names a third coordinate of no stated sense.</summary>
    public static bool IsBareDepth(string plain) => BareDepthNames.Contains(plain);

    /// <summary>A cell as a number or an angle.</summary>
    public static bool TryValue(ReadOnlySpan<char> cell, bool decimalComma, out double value) =>
        NumberText.TryParse(cell, decimalComma, out value) || AngleText.TryParse(cell, out value);

    private static int Score(CsvTable table, bool comma)
    {
        int score = 0;
        for (int row = 0; row < Math.Min(table.Count, 120); row++)
        {
            int numbers = 0, cells = Math.Min(table.Cells(row), 60);
            for (int c = 0; c < cells; c++) if (TryValue(table[row, c], comma, out _)) numbers++;
            if (numbers >= 2) score += Math.Min(numbers, 12);
        }

        return score;
    }

    private static bool UsesDecimalComma(CsvTable table)
    {
        int commas = 0, points = 0;
        for (int row = 0; row < Math.Min(table.Count, 60); row++)
        {
            for (int c = 0; c < Math.Min(table.Cells(row), 30); c++)
            {
                ReadOnlySpan<char> cell = table[row, c];
                if (!NumberText.TryParse(cell, true, out _)) continue;
                if (cell.IndexOf(',') >= 0) commas++;
                else if (cell.IndexOf('.') >= 0) points++;
            }
        }

        return commas > points;
    }

    private static int FirstDataRow(CsvTable table, bool comma)
    {
        for (int row = 0; row < Math.Min(table.Count, 200); row++)
        {
            if (table.Cells(row) < 2 || Numbers(table, row, comma) < 2) continue;
            int like = 0;
            for (int next = row + 1; next < Math.Min(table.Count, row + 4); next++)
                if (Numbers(table, next, comma) >= 2 && table.Cells(next) == table.Cells(row)) like++;
            if (like >= Math.Min(2, table.Count - row - 1)) return row;
        }

        return -1;
    }

    private static int Numbers(CsvTable table, int row, bool comma)
    {
        int numbers = 0;
        for (int c = 0; c < Math.Min(table.Cells(row), 60); c++) if (TryValue(table[row, c], comma, out _)) numbers++;
        return numbers;
    }

    private static bool LooksLikeHeader(CsvTable table, int row, int dataCells)
    {
        if (table.Cells(row) < Math.Min(dataCells, 2) || table.Cells(row) > dataCells + 2) return false;
        int words = 0;
        for (int c = 0; c < table.Cells(row); c++) if (!table[row, c].IsEmpty && char.IsLetter(table[row, c][0])) words++;
        return words >= 2;
    }

    private static string PreambleOf(CsvTable table, int rows)
    {
        System.Text.StringBuilder text = new();
        for (int row = 0; row < Math.Min(rows, 40); row++)
            for (int c = 0; c < Math.Min(table.Cells(row), 20); c++) text.Append(table[row, c]).Append(' ');
        return text.ToString();
    }
}
