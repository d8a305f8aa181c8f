using System.Globalization;

namespace SecondShore.Engine.Core.Findings;

/// <summary>
/// Something found, assumed or refused, as a kind and its numbers. What it says to a person, in which language and units, is decided where
/// it is read: the engine computes, it does not talk.
/// </summary>
public sealed class Finding : IEquatable<Finding>
{
    internal Finding(FindingKind kind, IReadOnlyList<Told> values) => (Kind, Values) = (kind, values);

    /// <summary>Its kind.</summary>
    public FindingKind Kind { get; }

    /// <summary>Its values, one for each of the kind's places.</summary>
    public IReadOnlyList<Told> Values { get; }

    /// <summary>A finding by its English sentence.</summary>
    public static Finding Of(FindingForm sentence) => sentence.ToFinding();

    /// <summary>Whether two findings are of one kind and carry the same values.</summary>
    public bool Equals(Finding? other) => other is not null && Kind.Key == other.Kind.Key && Values.SequenceEqual(other.Values);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Finding);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Kind.Key.GetHashCode(StringComparison.Ordinal), Values.Count);

    /// <summary>The same finding where it opens a sentence: with a capital.</summary>
    public Finding Opening() => Openings.Of(this);

    /// <summary>In English where the kind is a sentence; else, for developers, the key and the bare values.</summary>
    public override string ToString() => Kind.IsForm
        ? string.Format(CultureInfo.InvariantCulture, Kind.Key, [.. Values.Select(v => v.ForFormat())])
        : ReferenceEquals(Kind, Openings) ? Capital(Values[0].ToString())
        : Values.Count == 0 ? Kind.Key : $"{Kind.Key} ({string.Join(", ", Values)})";

    /// <summary>A text with a capital.</summary>
    public static string Capital(string text) => Require.NotNull(text).Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>The kind that opens a sentence with another finding.</summary>
    public static FindingKind Openings { get; } = new("opening", "sentence");
}
