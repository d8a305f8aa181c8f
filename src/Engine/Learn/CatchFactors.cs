using System.Globalization;

namespace SecondShore.Engine.Learn;

/// <summary>The levels of the factors that rates are learned by. An unknown level says nothing of the factor.</summary>
public static class CatchFactors
{
    /// <summary>Level of a span in a factor; null when it is not known.</summary>
    public static string? LevelOf(string factor, EffortSpan span)
    {
        Core.Require.NotNull(span);
        LogEntry e = span.Effort;
        return factor switch
        {
            "trailer" => Word(e.Rig.Trailer),
            "colour" => Word(e.Rig.Colour),
            "weight" => e.Rig.WeightG is double g ? WeightClass(g) : null,
            "layer" => e.BelowThermoclineM is double below ? LayerBand(below) : null,
            "form" => Word(e.Form),
            "speed" => e.SpeedMps is double mps ? (mps < 0.25 ? "slow" : mps < 0.4 ? "middling" : "fast") : null,
            "wind change" => e.SinceWindChangeH is double h ? (h < 2 ? "fresh" : h < 6 ? "settling" : "steady") : null,
            "spot" => Word(e.Spot),
            "day" => e.At.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            _ => null,
        };
    }

    /// <summary>Band of a depth off the thermocline, m below it.</summary>
    public static string LayerBand(double belowThermoclineM) => belowThermoclineM switch
    {
        < -5 => "far above",
        < -2 => "above",
        <= 1 => "at the layer",
        <= 3 => "just below",
        _ => "well below",
    };

    /// <summary>Class of a head's weight, g.</summary>
    public static string WeightClass(double weightG) => weightG < 12 ? "light" : weightG < 19 ? "middling" : weightG < 25 ? "heavy" : "very heavy";

    /// <summary>Conditions of the day, as the rules of the priors name them.</summary>
    /// <param name="secchiM">Secchi depth, m; null when not known.</param>
    /// <param name="surfaceC">Surface temperature, degC; null when not known.</param>
    /// <param name="lowLight">Dawn, dusk or heavy cloud; null when not known.</param>
    /// <param name="eats">What the fish eat there: crayfish, baitfish, sunfish.</param>
    public static IReadOnlyCollection<string> Conditions(double? secchiM, double? surfaceC, bool? lowLight, IEnumerable<string> eats)
    {
        List<string> conditions = [];
        if (secchiM is double s) conditions.Add(s > 3.5 ? "clear" : s > 1.2 ? "stained" : "muddy");
        if (surfaceC is double c) conditions.Add(c < 12 ? "cold" : c < 20 ? "cool" : "warm");
        if (lowLight is bool low) conditions.Add(low ? "low light" : "bright");
        foreach (string food in Core.Require.NotNull(eats)) conditions.Add($"eats {food.ToLowerInvariant()}");
        return conditions;
    }

    private static string? Word(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim().ToLowerInvariant();
}
