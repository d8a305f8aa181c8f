namespace SecondShore.Formats.Text;

/// <summary>A column of a CSV file: where it stands and how its numbers become SI. <paramref name="Next"/> is read where its cell is empty: the same value in another unit.</summary>
internal sealed record CsvColumn(int Index, string Header, UnitSuffix? Unit, double Low, double High, CsvColumn? Next);

/// <summary>A CSV file with one header row, its columns looked up by name and unit, its faults reported.</summary>
internal sealed class CsvSheet
{
    private readonly CsvTable _table;
    private readonly string[] _headers;
    private readonly bool[] _used;
    private readonly ProblemLog _log;
    private readonly bool _decimalComma;

    private CsvSheet(string file, CsvTable table, ProblemLog log)
    {
        File = file;
        _table = table;
        _log = log;
        _decimalComma = table.Separator is ';' or '\t';
        _headers = new string[table.Cells(0)];
        _used = new bool[_headers.Length];
        for (int i = 0; i < _headers.Length; i++) _headers[i] = UnitSuffix.Normalise(table[0, i]);
    }

    /// <summary>The file's name, for messages.</summary>
    public string File { get; }

    /// <summary>Number of data rows.</summary>
    public int Count => _table.Count - 1;

    /// <summary>Splits a file; null, with an error, when it has no header or no row.</summary>
    public static CsvSheet? Open(string file, byte[] bytes, ProblemLog log)
    {
        if (bytes.Length == 0)
        {
            log.Error(file, "the file is empty; it needs a header row and one row or more.");
            return null;
        }

        if (!TextDecoding.LooksLikeText(bytes))
        {
            log.Error(file, "the file is not text; a CSV file with a header row is expected.");
            return null;
        }

        string text = TextDecoding.Decode(bytes, out string encoding);
        if (encoding != "UTF-8") log.Note(file, $"read as {Finding.Of(encoding)}.");
        CsvTable table = CsvTable.Parse(text, CsvTable.GuessSeparator(text));
        if (table.UnclosedQuoteLine is int line)
            log.Add(file, line, ProblemSeverity.Warning, "a quotation mark is opened and never closed; the cell is taken to end with its line.");
        if (table.Count == 0) log.Error(file, "the file has no header row.");
        return table.Count == 0 ? null : new CsvSheet(file, table, log);
    }

    /// <summary>Line of a data row.</summary>
    public int Line(int row) => _table.Line(row + 1);

    /// <summary>A cell's text.</summary>
    public ReadOnlySpan<char> Text(int row, int column) => _table[row + 1, column];

    /// <summary>A cell's text, or empty where there is no such column.</summary>
    public string TextOf(int row, int column) => column < 0 ? "" : FormulaGuard.Off(_table[row + 1, column].ToString());

    /// <summary>Index of a text column by any of its names; -1 when there is none.</summary>
    public int Find(params ReadOnlySpan<string> names)
    {
        foreach (string name in names)
        {
            int index = Array.IndexOf(_headers, name);
            if (index < 0) continue;
            _used[index] = true;
            return index;
        }

        return -1;
    }

    /// <summary>A number column by stem and unit, such as <c>depth</c> with <c>_m</c> or <c>_ft</c>; null when there is none.</summary>
    /// <param name="quantity">What it measures.</param>
    /// <param name="low">Lowest SI value that can be true.</param>
    /// <param name="high">Highest SI value that can be true.</param>
    /// <param name="stems">Names without their unit, the preferred one first.</param>
    public CsvColumn? Find(Quantity quantity, double low, double high, params ReadOnlySpan<string> stems)
    {
        CsvColumn? first = null;
        for (int k = stems.Length - 1; k >= 0; k--)
        {
            string stem = stems[k];
            for (int i = _headers.Length - 1; i >= 0; i--)
            {
                UnitSuffix? unit = UnitSuffix.Match(_headers[i], stem, quantity);
                bool bare = unit is null && _headers[i] == stem;
                if (_used[i] || (unit is null && !bare)) continue;
                _used[i] = true;
                if (bare && quantity is not (Quantity.Number or Quantity.Share or Quantity.Angle))
                    _log.Warn(File, $"column '{_headers[i]}' carries no unit and is taken as {SiName(quantity)}; name it {stem}{SiSuffix(quantity)} to be sure.");
                first = new CsvColumn(i, _table[0, i].ToString(), unit, low, high, first);
            }
        }

        return first;
    }

    /// <summary>A number in SI; NaN where missing, not a number, or out of range (both reported).</summary>
    public double Number(int row, CsvColumn? column)
    {
        if (column is null) return double.NaN;
        ReadOnlySpan<char> cell = Text(row, column.Index);
        if (cell.IsEmpty) return Number(row, column.Next);
        if (!NumberText.TryParse(cell, _decimalComma, out double value))
        {
            if (!NumberText.IsMissing(cell))
                _log.Row(File, Line(row), $"no number in {column.Header}", $"{column.Header} is '{TextDecoding.Excerpt(cell)}' where a number is expected; the value is treated as missing. Correct it or leave the cell empty.");
            return double.NaN;
        }

        double si = column.Unit?.ToSi(value) ?? value;
        if (si >= column.Low && si <= column.High) return si;
        double low = column.Unit is null ? column.Low : (column.Low - column.Unit.Offset) / column.Unit.Scale;
        double high = column.Unit is null ? column.High : (column.High - column.Unit.Offset) / column.Unit.Scale;
        _log.Row(File, Line(row), $"{column.Header} out of range", $"{column.Header} is {value} where {Math.Round(low, 3)} to {Math.Round(high, 3)} is possible; the value is treated as missing. Check its unit and sign.");
        return double.NaN;
    }

    /// <summary>A number in SI, or null.</summary>
    public double? Optional(int row, CsvColumn? column)
    {
        double value = Number(row, column);
        return double.IsNaN(value) ? null : value;
    }

    /// <summary>The instant of a row; false, reported, when its time cannot be read.</summary>
    public bool TryTime(int row, int column, LakeClock clock, out DateTimeOffset instant)
    {
        ReadOnlySpan<char> cell = Text(row, column);
        if (!clock.TryRead(cell, out instant, out TimeDoubt doubt, out FindingForm fault))
        {
            _log.Row(File, Line(row), "time", $"time '{TextDecoding.Excerpt(cell)}' {fault}; the row is not used. Write it as 2026-10-04T17:00:00Z or, in the lake's own time, 2026-10-04T12:00.");
            return false;
        }

        if (doubt == TimeDoubt.Twice)
            _log.Row(File, Line(row), "time comes twice", $"local time {TextDecoding.Excerpt(cell)} comes twice in {clock.Zone.Id} when the clock goes back; taken as {instant.ToUniversalTime():yyyy-MM-dd'T'HH:mm'Z'} by the order of the rows. Write an offset to be sure.");
        else if (doubt == TimeDoubt.Skipped)
            _log.Row(File, Line(row), "time skipped", $"local time {TextDecoding.Excerpt(cell)} does not exist in {clock.Zone.Id}, where the clock goes forward; taken as {instant.ToUniversalTime():yyyy-MM-dd'T'HH:mm'Z'}. Write an offset to be sure.");
        return true;
    }

    private static FindingForm SiName(Quantity quantity) => quantity switch
    {
        Quantity.Length => "metres",
        Quantity.Temperature => "degrees Celsius",
        Quantity.Speed => "metres per second",
        Quantity.Mass => "grams",
        Quantity.Area => "square metres",
        Quantity.Flow => "cubic metres per second",
        Quantity.RainRate => "millimetres per hour",
        Quantity.Minutes => "minutes",
        _ => "SI units",
    };

    private static string SiSuffix(Quantity quantity) => quantity switch
    {
        Quantity.Length => "_m",
        Quantity.Temperature => "_c",
        Quantity.Speed => "_m_s",
        Quantity.Mass => "_g",
        Quantity.Area => "_m2",
        Quantity.Flow => "_m3_s",
        Quantity.RainRate => "_mm_h",
        Quantity.Flux => "_w_m2",
        Quantity.Concentration => "_mg_l",
        Quantity.Minutes => "_min",
        _ => "",
    };
}
