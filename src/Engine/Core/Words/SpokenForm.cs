using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;

namespace SecondShore.Engine.Core.Words;

/// <summary>
/// Takes an interpolated sentence as its English form, with <c>{0}</c> where the values stand, and its values. Pieces joined by a sign are one
/// sentence, so that a long one may be written on several lines.
/// </summary>
/// <remarks>The default value says nothing.</remarks>
[InterpolatedStringHandler]
public readonly struct SpokenForm
{
    private readonly StringBuilder? _form;
    private readonly List<object?>? _values;

    /// <summary>Called by the compiler.</summary>
    public SpokenForm(int literalLength, int formattedCount)
    {
        _form = new StringBuilder(literalLength + (8 * formattedCount));
        _values = new List<object?>(formattedCount);
    }

    /// <summary>The form.</summary>
    public string Form => _form?.ToString() ?? "";

    /// <summary>The values, in order.</summary>
    public object?[] Values => _values?.ToArray() ?? [];

    /// <summary>Called by the compiler.</summary>
    public void AppendLiteral(string text) =>
        _form!.Append(Require.NotNull(text).Replace("{", "{{", StringComparison.Ordinal).Replace("}", "}}", StringComparison.Ordinal));

    /// <summary>A value, written as the language does.</summary>
    public void AppendFormatted<T>(T value, string? format = null)
    {
        _form!.Append('{').Append(_values!.Count.ToString(CultureInfo.InvariantCulture));
        if (format is not null) _form.Append(':').Append(format);
        _form.Append('}');
        _values.Add(value);
    }
}
