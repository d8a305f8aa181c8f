using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;

namespace SecondShore.Engine.Core.Findings;

/// <summary>
/// Takes an interpolated sentence as a finding: its English form, with <c>{0}</c> where the values stand, is the kind's key, and other
/// languages have their form by it. For the many sentences about files, each said in one place only.
/// </summary>
/// <remarks>The default value says nothing. Words among the values that are not the user's own must be findings themselves.</remarks>
[InterpolatedStringHandler]
public readonly struct FindingForm
{
    private readonly StringBuilder? _form;
    private readonly List<Told>? _values;
    private readonly string? _plain;
    private readonly Finding? _ready;

    /// <summary>Called by the compiler.</summary>
    public FindingForm(int literalLength, int formattedCount)
    {
        _form = new StringBuilder(literalLength + (8 * formattedCount));
        _values = new List<Told>(formattedCount);
    }

    private FindingForm(string? plain, Finding? ready) => (_plain, _ready) = (plain, ready);

    /// <summary>Whether it says nothing.</summary>
    public bool IsEmpty => _ready is null && string.IsNullOrEmpty(_plain) && _form is not { Length: > 0 };

    /// <summary>A sentence without values.</summary>
    public static implicit operator FindingForm(string sentence) => new(Require.NotNull(sentence), null);

    /// <summary>A finding made elsewhere.</summary>
    public static implicit operator FindingForm(Finding finding) => new(null, Require.NotNull(finding));

    /// <summary>Called by the compiler.</summary>
    public void AppendLiteral(string text) => _form!.Append(Escaped(Require.NotNull(text)));

    /// <summary>A name or the user's own word.</summary>
    public void AppendFormatted(string? value) => Place(value ?? "", null);

    /// <summary>A number.</summary>
    public void AppendFormatted(double value, string? format = null) => Place(value, format);

    /// <summary>A number.</summary>
    public void AppendFormatted(float value, string? format = null) => Place((double)value, format);

    /// <summary>A count.</summary>
    public void AppendFormatted(int value, string? format = null) => Place(value, format);

    /// <summary>An instant.</summary>
    public void AppendFormatted(DateTimeOffset value, string? format = null) => Place(value, format);

    /// <summary>A value that knows what it measures, a finding or a row of them.</summary>
    public void AppendFormatted(Told value, string? format = null) => Place(value, format);

    /// <summary>Another finding.</summary>
    public void AppendFormatted(Finding value) => Place(Require.NotNull(value), null);

    /// <summary>Another finding.</summary>
    public void AppendFormatted(FindingForm value) => Place(value.ToFinding(), null);

    /// <summary>Anything else, as it is written in every language.</summary>
    public void AppendFormatted<T>(T value, string? format = null) =>
        Place(value is IFormattable formattable ? formattable.ToString(format, CultureInfo.InvariantCulture) : value?.ToString() ?? "", null);

    /// <summary>The finding.</summary>
    public Finding ToFinding() => _ready ?? (_form is null
        ? FindingKind.OfForm(Escaped(_plain ?? ""), 0).Of()
        : FindingKind.OfForm(_form.ToString(), _values!.Count).Of([.. _values]));

    private static string Escaped(string text) => text.Replace("{", "{{", StringComparison.Ordinal).Replace("}", "}}", StringComparison.Ordinal);

    private void Place(Told value, string? format)
    {
        _form!.Append('{').Append(_values!.Count.ToString(CultureInfo.InvariantCulture));
        if (format is not null) _form.Append(':').Append(format);
        _form.Append('}');
        _values.Add(value);
    }
}

/// <summary>Lists of findings that take a sentence by its form.</summary>
public static class FindingLists
{
    /// <summary>Adds a finding by its English sentence.</summary>
    public static void Add(this ICollection<Finding> findings, FindingForm sentence) => Require.NotNull(findings).Add(sentence.ToFinding());
}
