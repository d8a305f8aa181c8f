using System.Text;

namespace SecondShore.Cli.Console;

/// <summary>
/// Writes to a terminal what it may show. Names and words come from files that others made, and a terminal obeys control characters in
/// them: they are shown as <c>?</c>. Line ends, tabs and the return of our own progress line pass.
/// </summary>
internal sealed class PlainWriter(TextWriter to) : TextWriter(to.FormatProvider)
{
    public override Encoding Encoding => to.Encoding;

    public override void Write(char value) => to.Write(Shown(value));

    public override void Write(string? value)
    {
        if (value is null) return;
        to.Write(value.AsSpan().IndexOfAnyExceptInRange(' ', '~') < 0 ? value : string.Create(value.Length, value, static (shown, text) =>
        {
            for (int i = 0; i < text.Length; i++) shown[i] = Shown(text[i]);
        }));
    }

    public override void Write(char[] buffer, int index, int count)
    {
        ArgumentNullException.ThrowIfNull(buffer);
        Write(new string(buffer, index, count));
    }

    public override void WriteLine() => to.WriteLine();

    public override void WriteLine(string? value)
    {
        Write(value);
        to.WriteLine();
    }

    public override void Flush() => to.Flush();

    // Direction marks would let a name show as another.
    private static char Shown(char c) => c is '\n' or '\r' or '\t' || !(char.IsControl(c) || c is >= '\u202a' and <= '\u202e' or >= '\u2066' and <= '\u2069') ? c : '?';
}
