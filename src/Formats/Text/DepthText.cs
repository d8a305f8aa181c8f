using SecondShore.Formats.Surveys;
using SecondShore.Formats.Surveys.Hypotheses;

namespace SecondShore.Formats.Text;

/// <summary>A depth, or the two ends of a band of depths, as people write them.</summary>
/// <param name="First">The one number, or the first end.</param>
/// <param name="Second">The other end; NaN where there is one number only.</param>
/// <param name="Unit">The unit written with it, or null.</param>
internal readonly record struct DepthText(double First, double Second, DepthUnit? Unit)
{
    private static readonly string[] Between = ["to", "bis", "a", "til", "till", "tot", "do", "jusqua", "and", "und", "thru", "through"];

    /// <summary>Where a band begins: its end nearer to the surface, that is, to 0.</summary>
    public double Begin => double.IsNaN(Second) || Math.Abs(First) <= Math.Abs(Second) ? First : Second;

    /// <summary>Reads <c>2-4 m</c>, <c>2 bis 4</c>, <c>&gt;8 m</c>, <c>12.3 m</c>, <c>15 ft</c>, <c>10'</c>; nothing else may stand in the text.</summary>
    public static bool TryParse(ReadOnlySpan<char> text, out DepthText depth)
    {
        depth = default;
        text = text.Trim();
        if (text.Length is 0 or > 40) return false;
        double first = double.NaN, second = double.NaN;
        DepthUnit? unit = null;
        bool parted = false;
        while (true)
        {
            text = text.TrimStart(" \t[]()");
            if (text.IsEmpty) break;
            char c = text[0];
            bool parts = c is '-' or '–' or '—' or '~' or '/' && !double.IsNaN(first) && !parted;
            int number = parts ? 0 : NumberEnd(text);
            if (parts)
            {
                parted = true;
                text = text[1..];
            }
            else if (number > 0)
            {
                if (!NumberText.TryParse(text[..number], true, out double value) || !double.IsNaN(second)) return false;
                if (double.IsNaN(first)) first = value;
                else if (parted) second = value;
                else return false;
                text = text[number..];
            }
            else if (c is '>' or '<' or '≥' or '≤' or '+' or '=')
            {
                text = text[1..];
            }
            else if (c is '\'' or '′')
            {
                unit = DepthUnit.Feet;
                text = text[1..];
            }
            else if (!Word(ref text, ref unit, ref parted, !double.IsNaN(first)))
            {
                return false;
            }
        }

        if (double.IsNaN(first)) return false;
        depth = new DepthText(first, second, unit);
        return true;
    }

    private static bool Word(ref ReadOnlySpan<char> text, ref DepthUnit? unit, ref bool parted, bool any)
    {
        int end = 0;
        while (end < text.Length && char.IsLetter(text[end])) end++;
        if (end == 0) return false;
        string word = string.Concat(HeaderWords.Split(text[..end].ToString()));
        text = text[end..].TrimStart('.');
        if (WordList.Units.TryGetValue(word, out DepthUnit named)) unit = named;
        else if (any && !parted && Between.Contains(word)) parted = true;
        else return word is "over" or "ueber" or "mehr" or "als" or "more" or "than" or "below" or "unter" or "plus";
        return true;
    }

    // A sign belongs to a number only where none stands before it.
    private static int NumberEnd(ReadOnlySpan<char> text)
    {
        int at = text[0] == '-' && text.Length > 1 && char.IsAsciiDigit(text[1]) ? 1 : 0, digits = 0;
        for (; at < text.Length; at++)
        {
            if (char.IsAsciiDigit(text[at])) digits++;
            else if (text[at] is not ('.' or ',') || at + 1 >= text.Length || !char.IsAsciiDigit(text[at + 1])) break;
        }

        return digits == 0 ? 0 : at;
    }
}
