using SecondShore.Formats.Surveys.Xyz;
using SecondShore.Formats.Text;

namespace SecondShore.Formats.Surveys.Hypotheses;

/// <summary>How the numbers of one column of a text file behave, from rows in short runs over the whole file.</summary>
internal sealed class ColumnNumbers
{
    private const int MostRows = 4000;
    private const int RunRows = 16;

    private ColumnNumbers(double[] values) => Values = values;

    /// <summary>Numbers by sampled row; NaN where there is none.</summary>
    public double[] Values { get; }

    /// <summary>Numbers read.</summary>
    public int Count { get; private set; }

    /// <summary>Least number.</summary>
    public double Low { get; private set; } = double.NaN;

    /// <summary>Greatest number.</summary>
    public double High { get; private set; } = double.NaN;

    /// <summary>The number that a hundredth lies below.</summary>
    public double Low1 { get; private set; } = double.NaN;

    /// <summary>The number that a hundredth lies above.</summary>
    public double High1 { get; private set; } = double.NaN;

    /// <summary>The middle number.</summary>
    public double Middle { get; private set; } = double.NaN;

    /// <summary>Span of the middle half.</summary>
    public double Spread { get; private set; }

    /// <summary>Number of different values.</summary>
    public int Distinct { get; private set; }

    /// <summary>Most decimals written.</summary>
    public int Decimals { get; private set; }

    /// <summary>The unit that its cells carry, as in <c>12.3 m</c>; null without.</summary>
    public DepthUnit? Unit { get; private set; }

    /// <summary>Whether nearly all cells are the name of a unit and nothing else.</summary>
    public bool IsUnits { get; private set; }

    /// <summary>Whether cells are angles written with degrees, minutes and seconds.</summary>
    public bool IsAngle { get; private set; }

    /// <summary>Share of steps from row to row that do not fall.</summary>
    public double NeverFalls { get; private set; }

    /// <summary>Share of steps from row to row that are the most common one.</summary>
    public double EvenSteps { get; private set; }

    /// <summary>Median step from row to row over <see cref="Spread"/>: small for what changes slowly.</summary>
    public double Roughness { get; private set; } = double.NaN;

    /// <summary>Share of cells that are the letter N or S.</summary>
    public double NorthSouth { get; private set; }

    /// <summary>Share of cells that are the letter E or W.</summary>
    public double EastWest { get; private set; }

    /// <summary>Share of cells that are a compass letter.</summary>
    public double Letters => NorthSouth + EastWest;

    /// <summary>Whether the numbers count rows, meters run or seconds: they only grow.</summary>
    public bool OnlyGrows => Count > 8 && NeverFalls > 0.985 && Distinct > Count * 0.3;

    /// <summary>Whether the numbers are a running number.</summary>
    public bool Counts => Count > 3 && NeverFalls > 0.97 && EvenSteps > 0.7 && Distinct > Count * 0.5;

    /// <summary>Whether the numbers can be a position in a plane.</summary>
    public bool IsPlane => Math.Abs(Middle) > 1000 && High1 > Low1 && Most < 4e5;

    /// <summary>Whether the numbers can be degrees of a lake's place.</summary>
    public bool IsDegrees => Math.Abs(Middle) <= 180 && (Decimals >= 4 || IsAngle) && Most < 3 && Middle != 0;

    // Rows without a fix and rows of another grid must not hide a place: what six tenths of the numbers span.
    private double Most { get; set; }

    /// <summary>Rows sampled: all, or short runs of neighbours.</summary>
    public static int[] SampleRows(CsvTable table, int first)
    {
        int n = table.Count - first;
        if (n <= MostRows) return [.. Enumerable.Range(first, n)];
        List<int> rows = new(MostRows);
        int runs = MostRows / RunRows;
        for (int run = 0; run < runs; run++)
        {
            int from = first + (int)((long)run * (n - RunRows) / (runs - 1));
            for (int k = 0; k < RunRows; k++) if (rows.Count == 0 || from + k > rows[^1]) rows.Add(from + k);
        }

        return [.. rows];
    }

    /// <summary>Looks at a column.</summary>
    public static ColumnNumbers Of(CsvTable table, int[] rows, int column, bool comma, bool plain = false)
    {
        double[] values = new double[rows.Length];
        int decimals = 0, angles = 0, northSouth = 0, eastWest = 0, united = 0, units = 0;
        DepthUnit? unit = null;
        bool mixed = false;
        for (int i = 0; i < rows.Length; i++)
        {
            ReadOnlySpan<char> cell = table[rows[i], column].Trim();
            values[i] = double.NaN;
            if (cell.Length == 1 && cell[0] is 'N' or 'S' or 'n' or 's') northSouth++;
            else if (cell.Length == 1 && cell[0] is 'E' or 'W' or 'e' or 'w') eastWest++;
            else if (UnitIn(cell) is not null) units++;
            if (NumberText.TryParse(cell, comma, out double value))
            {
                values[i] = value;
                int point = cell.IndexOfAny('.', ',');
                if (point >= 0) decimals = Math.Max(decimals, cell.Length - point - 1);
            }
            else if (AngleText.TryParse(cell, out value))
            {
                values[i] = value;
                angles++;
            }
            else if (!plain && DepthText.TryParse(cell, out DepthText written) && double.IsNaN(written.Second) && written.Unit is DepthUnit own)
            {
                values[i] = written.First;
                if (unit is not null && unit != own) mixed = true;
                unit = own;
                united++;
            }
        }

        // Two units in one column, or in some cells only, are no numbers to be trusted.
        if (united > 0 && (mixed || united * 2 < rows.Length)) return Of(table, rows, column, comma, plain: true);

        ColumnNumbers numbers = new(values) { Unit = unit, Decimals = decimals, NorthSouth = (double)northSouth / Math.Max(1, rows.Length), EastWest = (double)eastWest / Math.Max(1, rows.Length) };
        numbers.IsUnits = units > 0.9 * rows.Length;
        numbers.Sum(rows);
        numbers.IsAngle = angles > numbers.Count / 2 && angles > 0;
        return numbers;
    }

    /// <summary>The unit that a cell is the name of; null where it is anything else.</summary>
    public static DepthUnit? UnitIn(ReadOnlySpan<char> cell) =>
        cell.Length is > 0 and < 12 && char.IsLetter(cell[0]) && WordList.Units.TryGetValue(cell.TrimEnd('.').ToString().ToLowerInvariant(), out DepthUnit unit) ? unit : null;

    private void Sum(int[] rows)
    {
        double[] sorted = [.. Values.Where(v => !double.IsNaN(v))];
        Count = sorted.Length;
        if (Count == 0) return;
        Array.Sort(sorted);
        int cut = Count / 100;
        (Low, High, Low1, High1, Middle) = (sorted[0], sorted[^1], sorted[cut], sorted[^(cut + 1)], sorted[Count / 2]);
        Most = sorted[Count * 4 / 5] - sorted[Count / 5];
        Spread = sorted[Count * 3 / 4] - sorted[Count / 4];
        Distinct = 1;
        for (int i = 1; i < Count; i++) if (sorted[i] != sorted[i - 1]) Distinct++;
        List<double> steps = [];
        int up = 0;
        for (int i = 1; i < rows.Length; i++)
        {
            if (rows[i] != rows[i - 1] + 1 || double.IsNaN(Values[i]) || double.IsNaN(Values[i - 1])) continue;
            double step = Values[i] - Values[i - 1];
            if (step >= 0) up++;
            steps.Add(step);
        }

        if (steps.Count == 0) return;
        NeverFalls = (double)up / steps.Count;
        EvenSteps = (double)steps.GroupBy(s => Math.Round(s, 6)).Max(g => g.Key == 0 ? 0 : g.Count()) / steps.Count;
        double[] sizes = [.. steps.Select(Math.Abs)];
        Array.Sort(sizes);
        double wide = Math.Max(Spread, (High1 - Low1) / 4);
        Roughness = wide > 0 ? sizes[sizes.Length / 2] / wide : double.NaN;
    }
}
