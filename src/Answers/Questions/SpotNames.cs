using SecondShore.Engine.Basin.Arms;
using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Basin.Spots;

namespace SecondShore.Answers.Questions;

/// <summary>What spots are called: in a list, on the chart, in the plan and on the sheet the same.</summary>
public static class SpotNames
{
    /// <summary>The lake's own name, else the form and the arm it lies in.</summary>
    /// <param name="spot">The spot.</param>
    /// <param name="shore">The answer it belongs to.</param>
    /// <param name="units">Whose language.</param>
    public static string Of(Spot spot, ShoreResult shore, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(spot);
        ArgumentNullException.ThrowIfNull(shore);
        ArgumentNullException.ThrowIfNull(units);
        if (spot.Name.Length > 0) return spot.Name;
        string form = units.Speech.Plain(Short(spot.Form));
        string named = char.ToUpperInvariant(form[0]) + form[1..];
        return shore.Lake.Arms is { Arms.Count: > 1 } arms && arms.ArmAt(spot.Place) is { Name.Length: > 0 } arm ? $"{named}, {ArmText.Of(arm.Name, units.Speech)}" : named;
    }

    /// <summary>The same answer with every spot named.</summary>
    public static ShoreResult Named(ShoreResult shore, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(shore);
        return shore with { Spots = [.. shore.Spots.Select(s => s with { Name = Of(s, shore, units) })] };
    }

    // With the arm named after it, a point of the main lake need not say so twice.
    private static string Short(FormClass form) => form switch
    {
        FormClass.MainPoint => "point",
        FormClass.MainChannel => "channel edge",
        _ => FormWords.Of(form),
    };
}
