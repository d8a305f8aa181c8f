using System.Globalization;

namespace SecondShore.Engine.Core.Findings;

/// <summary>A kind of finding: its key among the sentences, and the names of the values that each sentence of it must use.</summary>
/// <remarks>
/// Kinds are declared as static fields beside the code that finds them, in a class whose name ends in <c>Findings</c>; a test asks for a
/// sentence of each in every language. Decision 0100.
/// </remarks>
public sealed class FindingKind
{
    /// <summary>Declares a kind.</summary>
    /// <param name="key">Room and name, such as <c>season.no-past-years</c>.</param>
    /// <param name="places">Names of its values, in the order they are given.</param>
    public FindingKind(string key, params string[] places) => (Key, Places) = (Require.NotNull(key), Require.NotNull(places));

    private FindingKind(string form, int places)
        : this(form, [.. Enumerable.Range(0, places).Select(i => i.ToString(CultureInfo.InvariantCulture))]) => IsForm = true;

    /// <summary>Its key; an English sentence with <c>{0}</c> for its values where <see cref="IsForm"/>.</summary>
    public string Key { get; }

    /// <summary>Names of its values.</summary>
    public IReadOnlyList<string> Places { get; }

    /// <summary>Whether the key is the English sentence itself; see <see cref="FindingForm"/>.</summary>
    public bool IsForm { get; }

    /// <summary>A finding of this kind.</summary>
    /// <param name="values">One value for each place.</param>
    public Finding Of(params Told[] values)
    {
        Require.SameLength(Require.NotNull(values).Length, Places.Count, Key);
        return new Finding(this, values);
    }

    /// <inheritdoc/>
    public override string ToString() => Key;

    internal static FindingKind OfForm(string form, int places) => new(form, places);
}
