using System.Globalization;

namespace SecondShore.Formats.Text;

/// <summary>Reads numbers as people and loggers write them.</summary>
internal static class NumberText
{
    private static readonly double[] PowersOfTen = [1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15];

    /// <summary>Whether a cell stands for "no value".</summary>
    public static bool IsMissing(ReadOnlySpan<char> text)
    {
        text = text.Trim();
        return text.Length switch
        {
            0 => true,
            1 => text[0] is '-' or '?',
            2 => text.Equals("NA", StringComparison.OrdinalIgnoreCase) || text is "--",
            3 => text.Equals("NaN", StringComparison.OrdinalIgnoreCase) || text.Equals("N/A", StringComparison.OrdinalIgnoreCase),
            4 => text.Equals("null", StringComparison.OrdinalIgnoreCase) || text.Equals("none", StringComparison.OrdinalIgnoreCase),
            _ => false,
        };
    }

    /// <summary>
    /// Reads what nearly every number of a file is: a sign, digits, a point and digits, fifteen at most. Such a number is a whole
    /// one over a power of ten, both exact, so the one division rounds as the general parser does (Clinger1990). False says
    /// nothing about the text: the general parser decides.
    /// </summary>
    public static bool TryPlain(ReadOnlySpan<char> text, out double value)
    {
        value = 0;
        int at = text.Length > 0 && text[0] == '-' ? 1 : 0, start = at, point = -1;
        if (text.Length - at is < 1 or > 16) return false;
        long whole = 0;
        for (; at < text.Length; at++)
        {
            int digit = text[at] - '0';
            if ((uint)digit <= 9) whole = (whole * 10) + digit;
            else if (text[at] == '.' && point < 0) point = at;
            else return false;
        }

        int digits = at - start - (point < 0 ? 0 : 1), decimals = point < 0 ? 0 : at - point - 1;
        if (digits is < 1 or > 15) return false;
        value = whole / PowersOfTen[decimals];
        if (start == 1) value = -value;
        return true;
    }

    /// <summary>Reads a finite number with a point, or with a comma where the file uses decimal commas.</summary>
    public static bool TryParse(ReadOnlySpan<char> text, bool decimalComma, out double value)
    {
        if (TryPlain(text, out value)) return true;
        text = text.Trim();
        if (!decimalComma || text.IndexOf(',') < 0)
            return double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);
        value = 0;
        if (text.Length > 64) return false;
        Span<char> pointed = stackalloc char[text.Length];
        text.CopyTo(pointed);
        int comma = pointed.IndexOf(',');
        if (pointed[(comma + 1)..].IndexOf(',') >= 0 || pointed.IndexOf('.') >= 0) return false;
        pointed[comma] = '.';
        return double.TryParse(pointed, NumberStyles.Float, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);
    }

    /// <summary>Shortest text that reads back as the same number; empty for NaN.</summary>
    public static string Format(double value) => double.IsNaN(value) ? "" : value.ToString("R", CultureInfo.InvariantCulture);

    /// <summary>Text of a number, empty for null or NaN.</summary>
    public static string Format(double? value) => value is double v ? Format(v) : "";
}
