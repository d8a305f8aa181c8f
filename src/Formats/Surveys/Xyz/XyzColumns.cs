using System.Globalization;
using SecondShore.Formats.Text;

namespace SecondShore.Formats.Surveys.Xyz;

/// <summary>Decides which column of a text file is east, north and depth: by the user, by its header, by its numbers.</summary>
internal sealed class XyzColumns
{
    private readonly CsvTable _table;
    private readonly string[] _names;
    private readonly SurveyOptions _options;
    private readonly List<ColumnFacts> _facts = [];

    public XyzColumns(CsvTable table, bool comma, int header, int first, SurveyOptions options)
    {
        _table = table;
        _options = options;
        int count = Math.Min(table.Cells(first), 100);
        _names = new string[count];
        for (int c = 0; c < count; c++)
        {
            _names[c] = header >= 0 ? table[header, c].ToString() : "";
            _facts.Add(ColumnFacts.Of(table, c, first, comma));
        }
    }

    public XyzLayout Layout(CsvTable all, bool comma, int header, int first, string preamble)
    {
        string[] plain = [.. _names.Select(n => UnitSuffix.Normalise(n))];
        int x = Chosen(_options.XColumn), y = Chosen(_options.YColumn), z = Chosen(_options.DepthColumn);
        bool degrees = false, plane = false;
        if (x < 0 || y < 0)
        {
            int lat = Numeric(plain, XyzLayout.IsLat), lon = Numeric(plain, XyzLayout.IsLon);
            int east = Numeric(plain, XyzLayout.IsEast), north = Numeric(plain, XyzLayout.IsNorth);
            if (lat >= 0 && lon >= 0) (x, y, degrees) = (lon, lat, true);
            else if (east >= 0 && north >= 0) (x, y, plane) = (east, north, plain[east].Length > 1 && plain[east] is not "x_coord");
            else if (header < 0 || !plain.Any(p => p.Length > 0 && (XyzLayout.IsLat(p) || XyzLayout.IsLon(p)))) (x, y) = ByNumbers(z);
        }

        DepthAttribute? attribute = null;
        if (z < 0)
        {
            List<string> names = [.. Enumerable.Range(0, _names.Length).Where(c => c != x && c != y && _facts[c].Count > 0).Select(c => _names[c])];
            attribute = DepthAttribute.Choose(names, _options with { DepthColumn = null });
            z = attribute is not null ? Array.IndexOf(_names, attribute.Name) : Numeric(plain, XyzLayout.IsBareDepth, x, y);
            if (z < 0 && x >= 0 && y >= 0 && header < 0) z = DepthByNumbers(x, y);
        }
        else
        {
            attribute = DepthAttribute.Of(_names[z]);
        }

        return new XyzLayout(all, comma, header, first, x, y, z, attribute, degrees, plane, preamble);
    }

    private int Chosen(string? column)
    {
        if (column is null) return -1;
        for (int c = 0; c < _names.Length; c++) if (string.Equals(_names[c], column, StringComparison.OrdinalIgnoreCase)) return c;
        return int.TryParse(column, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number >= 1 && number <= _names.Length ? number - 1 : -1;
    }

    private int Numeric(string[] plain, Func<string, bool> named, int not1 = -1, int not2 = -1)
    {
        for (int c = 0; c < plain.Length; c++)
            if (c != not1 && c != not2 && named(plain[c]) && _facts[c].Count > 0) return c;
        return -1;
    }

    // Without names: two neighbouring columns that vary little against their size and carry enough digits for a place.
    private (int X, int Y) ByNumbers(int z)
    {
        List<int> numeric = [.. Enumerable.Range(0, _facts.Count).Where(c => c != z && _facts[c].IsMostlyNumbers)];
        for (int k = 0; k + 1 < numeric.Count; k++)
        {
            int a = numeric[k], b = numeric[k + 1];
            if (b != a + 1 || !_facts[a].CouldBePlace || !_facts[b].CouldBePlace) continue;
            // A latitude stays within 90; where both do, latitude first is the older custom only with a comma or a date before it.
            if (Math.Abs(_facts[a].Middle) > 90 || _facts[a].Middle < 0 && _facts[b].Middle > 0 || k == 0 && _facts[a].IsPlane) return (a, b);
            return Math.Abs(_facts[b].Middle) > 90 || a > 0 || _facts[b].Middle < 0 ? (b, a) : (a, b);
        }

        return (-1, -1);
    }

    private int DepthByNumbers(int x, int y)
    {
        int best = -1;
        double bestScore = 0;
        for (int c = 0; c < _facts.Count; c++)
        {
            ColumnFacts facts = _facts[c];
            if (c == x || c == y || !facts.IsMostlyNumbers || facts.IsCounter || facts.High == facts.Low) continue;
            // Depths carry a fraction, vary, and stand beside the position: before it in loggers' files, after it in grids'.
            double beside = c == Math.Min(x, y) - 1 ? 3 : c == Math.Max(x, y) + 1 ? 2 : 1;
            double score = (facts.HasFractions ? 10 : 1) * Math.Min(facts.High - facts.Low, 200) * beside;
            if (score > bestScore) (best, bestScore) = (c, score);
        }

        return best;
    }

    private sealed record ColumnFacts(int Count, int Rows, double Low, double High, double Middle, bool HasFractions, int Decimals, bool IsCounter)
    {
        public bool IsMostlyNumbers => Count > 0.8 * Rows;

        public bool IsPlane => Math.Abs(Middle) > 1000;

        public bool CouldBePlace => IsMostlyNumbers && !IsCounter && (IsPlane || (Decimals >= 4 && Math.Abs(Middle) <= 180));

        public static ColumnFacts Of(CsvTable table, int column, int first, bool comma)
        {
            List<double> values = [];
            int rows = 0, decimals = 0, steps = 0;
            bool fractions = false;
            int last = Math.Min(table.Count, first + 3000);
            int stride = Math.Max(1, (last - first) / 300);
            double before = double.NaN;
            for (int row = first; row < last; row++)
            {
                bool early = row < first + 40;
                if (!early && (row - first) % stride != 0) continue;
                rows++;
                ReadOnlySpan<char> cell = table[row, column];
                if (!XyzLayout.TryValue(cell, comma, out double value)) continue;
                values.Add(value);
                fractions |= value % 1 != 0;
                int point = cell.IndexOfAny('.', ',');
                decimals = Math.Max(decimals, point < 0 ? (AngleText.TryParse(cell, out _) ? 6 : 0) : cell.Length - point - 1);
                if (early && value - before == 1) steps++;
                before = value;
            }

            if (values.Count == 0) return new ColumnFacts(0, rows, 0, 0, 0, false, 0, false);
            values.Sort();
            return new ColumnFacts(values.Count, rows, values[0], values[^1], values[values.Count / 2], fractions, decimals,
                steps >= Math.Min(values.Count, 40) * 0.8 && !fractions && steps > 1);
        }
    }
}
