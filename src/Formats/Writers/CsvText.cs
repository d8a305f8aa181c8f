using System.Buffers;
using System.Text;
using SecondShore.Formats.Text;

namespace SecondShore.Formats.Writers;

/// <summary>Builds CSV text: comma, point, LF, quotes only where needed.</summary>
internal sealed class CsvText
{
    private static readonly SearchValues<char> NeedQuotes = SearchValues.Create(",;\"\r\n\t");
    private readonly StringBuilder _text = new();
    private bool _first = true;

    public CsvText(params ReadOnlySpan<string> headers)
    {
        foreach (string header in headers) Cell(header);
        End();
    }

    /// <summary>A cell of words.</summary>
    public CsvText Cell(string value)
    {
        if (!_first) _text.Append(',');
        _first = false;
        _text.Append(Quoted(value));
        return this;
    }

    public CsvText Cell(double value) => Cell(NumberText.Format(value));

    public CsvText Cell(double? value) => Cell(NumberText.Format(value));

    public CsvText Cell(DateTimeOffset time) => Cell(TimeText(time));

    public void End()
    {
        _text.Append('\n');
        _first = true;
    }

    public override string ToString() => _text.ToString();

    /// <summary>
    /// A cell's text, in quotes where it holds a separator, a quote, a line end, outer blanks or a leading #; words that a table
    /// program would take for a formula are guarded (<see cref="FormulaGuard"/>).
    /// </summary>
    public static string Quoted(string value)
    {
        value = FormulaGuard.On(value);
        bool needs = value.AsSpan().IndexOfAny(NeedQuotes) >= 0 || (value.Length > 0 && (value[0] is ' ' or '#' || value[^1] == ' '));
        return needs ? $"\"{value.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : value;
    }

    /// <summary>A time in UTC, with seconds' fractions only where it has them.</summary>
    public static string TimeText(DateTimeOffset time)
    {
        DateTimeOffset utc = time.ToUniversalTime();
        string form = utc.Ticks % TimeSpan.TicksPerSecond == 0 ? "yyyy-MM-dd'T'HH:mm:ss'Z'" : "yyyy-MM-dd'T'HH:mm:ss.FFFFFFF'Z'";
        return utc.ToString(form, System.Globalization.CultureInfo.InvariantCulture);
    }
}
