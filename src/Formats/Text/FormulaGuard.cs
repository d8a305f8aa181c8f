namespace SecondShore.Formats.Text;

/// <summary>
/// Words that begin with <c>= + - @</c> are run as formulas by table programs, whoever wrote them. An apostrophe in front makes them
/// words again; reading takes it away, so that a text comes back as it was. Numbers are left alone.
/// </summary>
internal static class FormulaGuard
{
    /// <summary>The text as it is written.</summary>
    public static string On(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Begins(text) && !NumberText.TryParse(text, decimalComma: false, out _) ? "'" + text : text;
    }

    /// <summary>The text as it was before <see cref="On"/>.</summary>
    public static string Off(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length > 0 && text[0] == '\'' && Begins(text) ? text[1..] : text;
    }

    // A text that begins with a guard already gets one more, so that taking one away is always right. Some programs take the wide
    // forms of these letters, and cells that begin with a tab or a line end, the same way.
    private static bool Begins(string text)
    {
        ReadOnlySpan<char> rest = text.AsSpan().TrimStart('\'');
        return !rest.IsEmpty && rest[0] is '=' or '+' or '-' or '@' or '\t' or '\r' or '\n' or '\uFF1D' or '\uFF0B' or '\uFF0D' or '\uFF20';
    }
}
