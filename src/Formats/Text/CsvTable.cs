namespace SecondShore.Formats.Text;

/// <summary>
/// A delimited text split into rows and cells without copying it. Knows quotes (a quote only opens a cell at its
/// start), any line end, blank lines and lines that start with #, which are passed over.
/// </summary>
internal sealed class CsvTable
{
    private readonly string _text;
    private readonly List<Cell> _cells = [];
    private readonly List<Row> _rows = [];

    private CsvTable(string text, char separator)
    {
        _text = text;
        Separator = separator;
    }

    /// <summary>The sign between cells; a blank means any run of blanks and tabs.</summary>
    public char Separator { get; }

    /// <summary>Number of rows, headers included.</summary>
    public int Count => _rows.Count;

    /// <summary>Line on which an opened quote was never closed; null when all are closed.</summary>
    public int? UnclosedQuoteLine { get; private set; }

    /// <summary>Splits a text.</summary>
    public static CsvTable Parse(string text, char separator)
    {
        CsvTable table = new(text, separator);
        new Splitter(table).Run();
        return table;
    }

    /// <summary>The separator that a text's first lines agree on: comma, semicolon, tab, or blanks.</summary>
    public static char GuessSeparator(string text)
    {
        ReadOnlySpan<char> head = text.AsSpan(0, Math.Min(text.Length, 8192));
        // What stands in quotes is somebody's words: they must not decide how the file is read.
        int commas = 0, semicolons = 0, tabs = 0, feeds = 0, returns = 0;
        bool quoted = false;
        foreach (char c in head)
        {
            if (c == '"') quoted = !quoted;
            if (quoted) continue;
            if (c == ',') commas++;
            else if (c == ';') semicolons++;
            else if (c == '\t') tabs++;
            else if (c == '\n') feeds++;
            else if (c == '\r') returns++;
        }

        int lines = Math.Max(1, Math.Max(feeds, returns));
        if (semicolons > 0 && semicolons >= lines / 2) return ';';
        if (tabs > 0 && tabs >= lines / 2) return '\t';
        return commas > 0 && commas >= lines / 2 ? ',' : head.IndexOf(' ') >= 0 && commas == 0 ? ' ' : ',';
    }

    /// <summary>Line of a row in the file, counted from 1.</summary>
    public int Line(int row) => _rows[row].Line;

    /// <summary>Number of cells in a row.</summary>
    public int Cells(int row) => _rows[row].Count;

    /// <summary>A cell without its quotes and outer blanks; empty when the row is shorter.</summary>
    public ReadOnlySpan<char> this[int row, int column]
    {
        get
        {
            Row r = _rows[row];
            if ((uint)column >= (uint)r.Count) return [];
            Cell cell = _cells[r.First + column];
            ReadOnlySpan<char> raw = _text.AsSpan(cell.Start, cell.Length);
            if (!cell.Quoted) return raw.Trim();
            return raw.IndexOf('"') < 0 ? raw : raw.ToString().Replace("\"\"", "\"", StringComparison.Ordinal);
        }
    }

    private readonly record struct Cell(int Start, int Length, bool Quoted);

    private readonly record struct Row(int Line, int First, int Count);

    private sealed class Splitter(CsvTable table)
    {
        private readonly string _text = table._text;
        private int _at;
        private int _line = 1;

        public void Run()
        {
            while (_at < _text.Length)
            {
                SkipBlanks();
                if (_at >= _text.Length) break;
                if (_text[_at] is '\r' or '\n')
                {
                    NextLine();
                    continue;
                }

                if (_text[_at] == '#') SkipLine();
                else ReadRow();
            }
        }

        private void ReadRow()
        {
            int first = table._cells.Count, line = _line;
            while (true)
            {
                table._cells.Add(ReadCell());
                if (_at >= _text.Length) break;
                if (_text[_at] is '\r' or '\n')
                {
                    NextLine();
                    break;
                }

                _at++;
                if (table.Separator != ' ') continue;
                SkipBlanks();
                if (_at >= _text.Length) break;
                if (_text[_at] is not ('\r' or '\n')) continue;
                NextLine();
                break;
            }

            table._rows.Add(new Row(line, first, table._cells.Count - first));
        }

        private Cell ReadCell()
        {
            if (table.Separator != '\t') SkipBlanks();
            if (_at < _text.Length && _text[_at] == '"' && TryReadQuoted(out Cell quoted)) return quoted;
            int start = _at;
            while (_at < _text.Length && !Ends(_text[_at])) _at++;
            return new Cell(start, _at - start, false);
        }

        private bool TryReadQuoted(out Cell cell)
        {
            int start = _at + 1, end = start, lines = 0;
            while (end < _text.Length)
            {
                char c = _text[end];
                if (c == '"')
                {
                    if (end + 1 >= _text.Length || _text[end + 1] != '"') break;
                    end++;
                }
                else if (c is '\n' || (c is '\r' && (end + 1 >= _text.Length || _text[end + 1] != '\n')))
                {
                    // After one quote that never closes, later ones may not run over lines: keeps the time linear.
                    if (table.UnclosedQuoteLine is not null) break;
                    lines++;
                }

                end++;
            }

            cell = new Cell(start, end - start, true);
            if (end >= _text.Length || _text[end] != '"')
            {
                table.UnclosedQuoteLine ??= _line;
                return false;
            }

            _at = end + 1;
            _line += lines;
            while (_at < _text.Length && !Ends(_text[_at])) _at++;
            return true;
        }

        private bool Ends(char c) => c == table.Separator || c is '\r' or '\n' || (table.Separator == ' ' && c == '\t');

        private void SkipBlanks()
        {
            while (_at < _text.Length && (_text[_at] == ' ' || (_text[_at] == '\t' && table.Separator != '\t'))) _at++;
        }

        private void SkipLine()
        {
            while (_at < _text.Length && _text[_at] is not ('\r' or '\n')) _at++;
        }

        private void NextLine()
        {
            if (_text[_at] == '\r' && _at + 1 < _text.Length && _text[_at + 1] == '\n') _at++;
            _at++;
            _line++;
        }
    }
}
