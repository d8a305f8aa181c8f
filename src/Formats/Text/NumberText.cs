using System.Globalization;

namespace SecondShore.Formats.Text;

/// <summary>Reads numbers as people and loggers write them.</summary>
internal static class NumberText
{
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

    /// <summary>Reads a finite number with a point, or with a comma where the file uses decimal commas.</summary>
    public static bool TryParse(ReadOnlySpan<char> text, bool decimalComma, out double value)
    {
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
