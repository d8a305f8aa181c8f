using System.Globalization;

namespace SecondShore.Formats.Surveys.Xyz;

/// <summary>Reads angles written as degrees, degrees and minutes, or degrees, minutes and seconds, with or without a compass letter.</summary>
internal static class AngleText
{
    /// <summary>Reads an angle such as <c>52° 20' 37.03" N</c>; plain numbers are left to the caller.</summary>
    public static bool TryParse(ReadOnlySpan<char> text, out double degrees)
    {
        degrees = 0;
        text = text.Trim();
        if (text.Length is < 3 or > 40) return false;
        bool negative = false, marked = false;
        char last = char.ToUpperInvariant(text[^1]), first = char.ToUpperInvariant(text[0]);
        if (last is 'N' or 'S' or 'E' or 'W')
        {
            (negative, marked) = (last is 'S' or 'W', true);
            text = text[..^1];
        }
        else if (first is 'N' or 'S' or 'E' or 'W')
        {
            (negative, marked) = (first is 'S' or 'W', true);
            text = text[1..];
        }

        bool northSouth = last is 'N' or 'S' || (last is not ('E' or 'W') && first is 'N' or 'S');
        Span<double> parts = stackalloc double[3];
        int n = 0;
        while (true)
        {
            text = text.TrimStart(" \t°º'\"′″:dm\uFFFD");
            if (text.IsEmpty) break;
            int end = 0;
            while (end < text.Length && (char.IsAsciiDigit(text[end]) || text[end] == '.' || (end == 0 && text[end] is '-' or '+'))) end++;
            if (end == 0 || n == 3 || !double.TryParse(text[..end], NumberStyles.Float, CultureInfo.InvariantCulture, out parts[n])) return false;
            int point = text[..end].IndexOf('.'), whole = point < 0 ? end : point;
            // Degrees and minutes in one with a letter: 4807.038N, 01131.5E.
            if (n == 0 && end == text.TrimEnd().Length && marked && whole >= (northSouth ? 4 : 5) && char.IsAsciiDigit(text[0]))
            {
                double degreesWhole = Math.Floor(parts[0] / 100);
                (parts[1], parts[0]) = (parts[0] - (degreesWhole * 100), degreesWhole);
                n = 2;
                break;
            }

            if (end < text.Length && text[end] is '°' or 'º' or '\'' or '"' or '′' or '″') marked = true;
            n++;
            text = text[end..];
        }

        if (!marked || n == 0 || (n > 1 && !(parts[1] is >= 0 and < 60)) || (n > 2 && !(parts[2] is >= 0 and < 60))) return false;
        double size = Math.Abs(parts[0]) + (n > 1 ? parts[1] / 60 : 0) + (n > 2 ? parts[2] / 3600 : 0);
        degrees = negative || parts[0] < 0 || double.IsNegative(parts[0]) ? -size : size;
        return Math.Abs(degrees) <= 360;
    }
}
