using System.Globalization;

namespace SecondShore.Formats.Coordinates;

/// <summary>
/// One bracketed item of a WKT text. Files are read by this small parser, and only texts written anew from what it
/// found reach the projection library, whose own parser does not end on some damaged texts.
/// </summary>
internal sealed class WktNode(string keyword)
{
    private static readonly int Deepest = 12;

    /// <summary>Its keyword in capitals, such as <c>PROJCS</c>.</summary>
    public string Keyword { get; } = keyword;

    /// <summary>Its first quoted text; empty when it has none.</summary>
    public string Name { get; private set; } = "";

    /// <summary>Its numbers in order.</summary>
    public List<double> Numbers { get; } = [];

    /// <summary>The items inside it.</summary>
    public List<WktNode> Children { get; } = [];

    /// <summary>The first item inside with a keyword.</summary>
    public WktNode? Child(string keyword) => Children.Find(c => c.Keyword == keyword);

    /// <summary>Parses a text; null when it is not one whole item.</summary>
    public static WktNode? Parse(string text)
    {
        int at = 0;
        return ParseNode(text, ref at, 0);
    }

    private static WktNode? ParseNode(string text, ref int at, int depth)
    {
        SkipBlanks(text, ref at);
        int start = at;
        while (at < text.Length && (char.IsAsciiLetterOrDigit(text[at]) || text[at] == '_')) at++;
        if (at == start || at - start > 40 || at >= text.Length || text[at] is not ('[' or '(') || depth > Deepest) return null;
        WktNode node = new(text[start..at].ToUpperInvariant());
        at++;
        while (at < text.Length)
        {
            SkipBlanks(text, ref at);
            if (at >= text.Length) return null;
            char c = text[at];
            if (c is ']' or ')')
            {
                at++;
                return node;
            }

            if (c == ',') at++;
            else if (c == '"' ? !node.TakeText(text, ref at) : char.IsAsciiLetter(c) ? !node.TakeChild(text, ref at, depth) : !node.TakeNumber(text, ref at)) return null;
        }

        return null;
    }

    private bool TakeText(string text, ref int at)
    {
        int end = text.IndexOf('"', at + 1);
        if (end < 0) return false;
        if (Name.Length == 0) Name = text[(at + 1)..end];
        at = end + 1;
        return true;
    }

    private bool TakeNumber(string text, ref int at)
    {
        int start = at;
        while (at < text.Length && (char.IsAsciiDigit(text[at]) || text[at] is '.' or '-' or '+' or 'e' or 'E')) at++;
        if (!double.TryParse(text.AsSpan(start, at - start), NumberStyles.Float, CultureInfo.InvariantCulture, out double value) || !double.IsFinite(value)) return false;
        Numbers.Add(value);
        return true;
    }

    // A bare word, such as the EAST of an axis, stands for nothing we need.
    private bool TakeChild(string text, ref int at, int depth)
    {
        int end = at;
        while (end < text.Length && (char.IsAsciiLetterOrDigit(text[end]) || text[end] == '_')) end++;
        if (end >= text.Length || text[end] is not ('[' or '('))
        {
            at = end;
            return true;
        }

        if (ParseNode(text, ref at, depth + 1) is not WktNode child || Children.Count > 100) return false;
        Children.Add(child);
        return true;
    }

    private static void SkipBlanks(string text, ref int at)
    {
        while (at < text.Length && (char.IsWhiteSpace(text[at]) || text[at] == '\0')) at++;
    }
}
