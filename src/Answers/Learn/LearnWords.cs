using System.Globalization;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Learn;

namespace SecondShore.Answers.Learn;

/// <summary>What learning says of itself: never more certain than the log.</summary>
public static class LearnWords
{
    private static readonly string[] Numbers = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

    /// <summary>How far it may be trusted.</summary>
    public static string Trust(LogTotals totals)
    {
        ArgumentNullException.ThrowIfNull(totals);
        if (totals.Stretches == 0) return "The log holds no stretch of fishing with its time: everything here is belief of the trade, not of this lake.";
        string seen = $"{Capital(Bites(totals.Bites))} in {Hours(totals.HoursH)}";
        return totals.Bites switch
        {
            0 => $"{seen}: that says the fishing was slow, not what to change.",
            <= 4 => $"{seen}. {Capital(Bites(totals.Bites))} {(totals.Bites == 1 ? "is" : "are")} {Bites(totals.Bites)}: a thread to pull at, nothing to build on.",
            <= 15 => $"{seen}: first hints. Any of the leading choices may still turn out to be the best.",
            <= 50 => $"{seen}: large differences show, small ones do not yet.",
            _ => $"{seen}: enough to trust the wide differences; read the ranges before the names.",
        };
    }

    /// <summary>A count of bites.</summary>
    public static string Bites(int count) =>
        $"{(count < Numbers.Length ? Numbers[count] : count.ToString(CultureInfo.InvariantCulture))} {(count == 1 ? "bite" : "bites")}";

    /// <summary>Hours of fishing.</summary>
    public static string Hours(double hoursH) => string.Create(CultureInfo.InvariantCulture, $"{hoursH:0.#} h");

    /// <summary>A range of rates.</summary>
    public static string Range(Spread perH) => string.Create(CultureInfo.InvariantCulture, $"{perH.P50:0.0} ({perH.P10:0.0} to {perH.P90:0.0})");

    /// <summary>A chance as anglers say it.</summary>
    public static string Chance(double chance) => chance switch
    {
        >= 0.95 => "nearly sure",
        < 0.05 => "less than 1 in 20",
        _ => string.Create(CultureInfo.InvariantCulture, $"{Math.Clamp(Math.Round(10 * chance), 1, 9):0} in 10"),
    };

    /// <summary>A level of a factor with what its word means.</summary>
    public static string Level(string factor, string level, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(units);
        return (factor, level) switch
        {
            ("layer", "far above") => $"more than {units.Depth(5)} above it",
            ("layer", "above") => $"{units.DepthRange(2, 5)} above it",
            ("layer", "at the layer") => $"at it ({units.Depth(2)} above to {units.Depth(1)} below)",
            ("layer", "just below") => $"{units.DepthRange(1, 3)} below it",
            ("layer", "well below") => $"more than {units.Depth(3)} below it",
            ("weight", "light") => $"light (under {units.JigWeight(0.012)})",
            ("weight", "middling") => $"middling ({units.JigWeight(0.012)} to {units.JigWeight(0.019)})",
            ("weight", "heavy") => $"heavy ({units.JigWeight(0.019)} to {units.JigWeight(0.025)})",
            ("weight", "very heavy") => $"very heavy (over {units.JigWeight(0.025)})",
            ("speed", "slow") => $"slow (under {units.Pace(0.25)})",
            ("speed", "middling") => $"middling ({units.Pace(0.25)} to {units.Pace(0.4)})",
            ("speed", "fast") => $"fast (over {units.Pace(0.4)})",
            ("wind change", "fresh") => "under 2 h",
            ("wind change", "settling") => "2 to 6 h",
            ("wind change", "steady") => "over 6 h",
            _ => level,
        };
    }

    /// <summary>Advice as a sentence.</summary>
    public static string Say(TryAdvice advice, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(advice);
        string more = advice.MoreH is { } hoursH && hoursH > 0.2 && advice.BestChance < 0.9
            ? string.Create(CultureInfo.InvariantCulture, $" About {Math.Ceiling(hoursH):0} h more on the two leading ones would likely settle it.")
            : "";
        return $"{Capital(advice.Factor)}: {Level(advice.Factor, advice.Choice, units)}, because {advice.Why}.{more}";
    }

    internal static string Capital(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];
}
