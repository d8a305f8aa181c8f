using SecondShore.Formats.Text;

namespace SecondShore.Formats.Surveys.Xyz;

/// <summary>How the rows of a text file are laid out: separator, header, first row of data, and which column is what.</summary>
internal sealed record XyzLayout(CsvTable Table, bool DecimalComma, int HeaderRow, int FirstRow, XyzRoles Roles, string Preamble)
{
    private static readonly char[] Separators = [',', ';', '\t', '|', ' '];

    /// <summary>Column of eastings or longitudes.</summary>
    public int XColumn => Roles.Place!.X;

    /// <summary>Column of northings or latitudes.</summary>
    public int YColumn => Roles.Place!.Y;

    /// <summary>Column of depths.</summary>
    public int DepthColumn => Roles.Depth;

    /// <summary>What the layout found wanting, as a sentence; empty when whole.</summary>
    public string Missing => Roles.Missing;

    /// <summary>Finds the layout of a text.</summary>
    /// <param name="file">The file's name.</param>
    /// <param name="text">Its text, or the start of it.</param>
    /// <param name="options">What the user set.</param>
    public static XyzLayout? Find(string file, string text, SurveyOptions options)
    {
        string head = text.Length > 60_000 ? text[..60_000] : text;
        CsvTable? best = null;
        char bestSeparator = ',';
        int bestScore = 0, bestThree = 0;
        foreach (char separator in Separators)
        {
            if (options.Separator is char set && set != separator) continue;
            CsvTable table = CsvTable.Parse(head, separator);
            // Blanks stand inside cells too: they part columns only where nothing else does.
            if (separator == ' ' && bestThree * 2 > Math.Min(table.Count, 120)) continue;
            int score = Score(table, separator != ',');
            if (separator != ' ') bestThree = Math.Max(bestThree, RowsOfThree(table, separator != ','));
            if (score <= bestScore) continue;
            (best, bestSeparator, bestScore) = (table, separator, score);
        }

        if (best is null) return null;
        bool comma = options.DecimalComma ?? (bestSeparator != ',' && UsesDecimalComma(best));
        int first = FirstDataRow(best, comma);
        if (first < 0) return null;
        int header = first > 0 && LooksLikeHeader(best, first - 1, best.Cells(first)) ? first - 1 : -1;
        CsvTable all = head.Length == text.Length ? best : CsvTable.Parse(text, bestSeparator);
        string preamble = PreambleOf(best, header >= 0 ? header : first) + ClosingOf(all, first, comma);
        XyzRoles roles = new XyzColumns(file, preamble, all, comma, header, first, options).Roles();
        return new XyzLayout(all, comma, header, first, roles, preamble);
    }

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

    private static int RowsOfThree(CsvTable table, bool comma)
    {
        int rows = 0;
        for (int row = 0; row < Math.Min(table.Count, 120); row++)
        {
            int numbers = 0;
            for (int c = 0; c < Math.Min(table.Cells(row), 60) && numbers < 3; c++) if (TryValue(table[row, c], comma, out _)) numbers++;
            if (numbers >= 3) rows++;
        }

        return rows;
    }

    // One column with commas is enough: coordinates with points may stand beside depths with commas.
    private static bool UsesDecimalComma(CsvTable table)
    {
        int commas = 0, rows = Math.Min(table.Count, 60);
        for (int row = 0; row < rows; row++)
        {
            for (int c = 0; c < Math.Min(table.Cells(row), 30); c++)
            {
                ReadOnlySpan<char> cell = table[row, c];
                if (cell.IndexOf(',') < 0 || !NumberText.TryParse(cell, true, out _)) continue;
                commas++;
                break;
            }
        }

        return commas * 5 > rows;
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

    // Words below the last row of numbers belong to the file as those above the first do.
    private static string ClosingOf(CsvTable table, int first, bool comma)
    {
        int from = table.Count;
        while (from > first && table.Count - from < 12 && Numbers(table, from - 1, comma) < 2) from--;
        System.Text.StringBuilder text = new();
        for (int row = from; row < table.Count; row++)
            for (int c = 0; c < Math.Min(table.Cells(row), 20); c++) text.Append(' ').Append(table[row, c]);
        return text.ToString();
    }

    private static string PreambleOf(CsvTable table, int rows)
    {
        System.Text.StringBuilder text = new();
        for (int row = 0; row < Math.Min(rows, 40); row++)
            for (int c = 0; c < Math.Min(table.Cells(row), 20); c++) text.Append(table[row, c]).Append(' ');
        return text.ToString();
    }
}
