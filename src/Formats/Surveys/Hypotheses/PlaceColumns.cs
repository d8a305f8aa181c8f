namespace SecondShore.Formats.Surveys.Hypotheses;

/// <summary>One reading of which two columns are the position.</summary>
/// <param name="X">Column of eastings or longitudes.</param>
/// <param name="Y">Column of northings or latitudes.</param>
/// <param name="Form">How the numbers are written.</param>
/// <param name="Weight">Log-odds.</param>
/// <param name="NamedDegrees">The header names latitude and longitude.</param>
/// <param name="NamedPlane">The header names easting and northing in whole words.</param>
/// <param name="XLetter">Column of E or W; -1 without.</param>
/// <param name="YLetter">Column of N or S; -1 without.</param>
internal sealed record PlaceColumns(int X, int Y, AngleForm Form, double Weight, bool NamedDegrees, bool NamedPlane, int XLetter = -1, int YLetter = -1)
{
    /// <summary>The readings of a file's columns, best first.</summary>
    /// <param name="columns">Numbers by column.</param>
    /// <param name="words">Words by column; of unknown role without a header.</param>
    /// <param name="named">Whether there is a header.</param>
    public static List<PlaceColumns> Of(IReadOnlyList<ColumnNumbers> columns, IReadOnlyList<HeaderWords> words, bool named)
    {
        List<PlaceColumns> found = [];
        for (int x = 0; x < columns.Count; x++)
            for (int y = 0; y < columns.Count; y++)
                if (x != y && Pair(columns, words, named, x, y) is PlaceColumns pair) found.Add(pair);
        return [.. found.OrderByDescending(p => p.Weight)];
    }

    private static PlaceColumns? Pair(IReadOnlyList<ColumnNumbers> columns, IReadOnlyList<HeaderWords> words, bool named, int x, int y)
    {
        ColumnNumbers a = columns[x], b = columns[y];
        if (a.Count == 0 || b.Count == 0 || Math.Min(a.Count, b.Count) < 0.3 * a.Values.Length) return null;
        HeaderWords wa = words[x], wb = words[y];
        bool saysDegrees = wa.Role == ColumnRole.Lon && wb.Role == ColumnRole.Lat, saysPlane = wa.Role == ColumnRole.East && wb.Role == ColumnRole.North;
        double said = saysDegrees || saysPlane ? wa.Weight + wb.Weight : named ? -6 : 0;
        if (!saysDegrees && !saysPlane && (wa.Role is not (ColumnRole.Unknown or ColumnRole.Bare) || wb.Role is not (ColumnRole.Unknown or ColumnRole.Bare))) return null;
        (int xl, int yl) = (LetterBeside(columns, x, c => c.EastWest), LetterBeside(columns, y, c => c.NorthSouth));
        bool minutes = (MinutesFit(a, 180, beside: true) && MinutesFit(b, 90)) || (MinutesFit(a, 180) && MinutesFit(b, 90, beside: true));
        if (xl >= 0 && yl >= 0 && minutes)
            return new PlaceColumns(x, y, AngleForm.DegreeMinutes, said + 8, saysDegrees, false, xl, yl);
        if (!Possible(a, b, saysDegrees || saysPlane)) return null;
        double weight = said + (Math.Abs(x - y) == 1 ? 1 : 0);
        if (!saysDegrees && !saysPlane)
        {
            // Whatever only grows or hardly changes is no place of a survey; a column pair is written side by side.
            if (a.Counts || b.Counts || Math.Abs(x - y) > 1) return null;
            if (a.Distinct < 3 && b.Distinct < 3) return null;
            weight += Habit(a, b, x, y);
        }

        AngleForm form = saysDegrees && !(Math.Abs(b.Middle) <= 90) && MinutesFit(a, 180) && MinutesFit(b, 90) ? AngleForm.DegreeMinutes : AngleForm.Plain;
        return new PlaceColumns(x, y, form, weight, saysDegrees, saysPlane && wa.Weight > 5, Math.Max(xl, -1), Math.Max(yl, -1));
    }

    private static bool Possible(ColumnNumbers a, ColumnNumbers b, bool said)
    {
        bool degrees = Math.Abs(a.Middle) <= 360 && Math.Abs(b.Middle) <= 90, plane = Math.Abs(a.Middle) > 1000 || Math.Abs(b.Middle) > 1000;
        return said ? degrees || plane || Math.Abs(b.Middle) <= 360 : (a.IsDegrees && b.IsDegrees && Math.Abs(b.Middle) <= 90) || (a.IsPlane && b.IsPlane);
    }

    // East before north is the custom of planes and of tables that start with the place; latitude first that of loggers, after the time.
    private static double Habit(ColumnNumbers a, ColumnNumbers b, int x, int y)
    {
        if (a.IsPlane) return PlaneOrder(a.Middle, b.Middle) + (x < y ? 1 : 0);
        if (Math.Abs(a.Middle) > 90) return 3;
        return Math.Min(x, y) == 0 == x < y ? 1.5 : 0;
    }

    private static double PlaneOrder(double east, double north) =>
        east is > 1e5 and < 9e5 && north > 1e6 ? 3 : north is > 1e5 and < 9e5 && east > 1e6 ? -1 : 0;

    private static int LetterBeside(IReadOnlyList<ColumnNumbers> columns, int column, Func<ColumnNumbers, double> share) =>
        column + 1 < columns.Count && share(columns[column + 1]) > 0.4 ? column + 1
        : column > 0 && share(columns[column - 1]) > 0.4 ? column - 1 : -1;

    /// <summary>Whether numbers can be degrees and minutes in one: the last two whole digits stay under 60.</summary>
    internal static bool MinutesFit(ColumnNumbers numbers, double most, bool beside = false)
    {
        // Beside one number of degrees and minutes the other may be less than a degree.
        if ((!beside && !(Math.Abs(numbers.Middle) > 100)) || numbers.Decimals < 2) return false;
        foreach (double value in numbers.Values)
        {
            double size = Math.Abs(value);
            if (!double.IsNaN(size) && (size % 100 >= 60 || size / 100 > most + 1)) return false;
        }

        return true;
    }
}
