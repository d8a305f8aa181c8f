using System.Globalization;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Core.Words;
using SecondShore.Engine.Learn;

namespace SecondShore.Answers.Learn;

/// <summary>What learning says of itself: never more certain than the log.</summary>
public static class LearnWords
{
    private static readonly string[] Numbers = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

    /// <summary>How far it may be trusted.</summary>
    public static string Trust(LogTotals totals, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(totals);
        ArgumentNullException.ThrowIfNull(units);
        Speech speech = units.Speech;
        if (totals.Stretches == 0) return speech.Plain("The log holds no stretch of fishing with its time: everything here is belief of the trade, not of this lake.");
        string seen = speech.Say($"{Capital(Bites(totals.Bites, speech))} in {Hours(totals.HoursH, speech)}"), bites = Bites(totals.Bites, speech);
        return totals.Bites switch
        {
            0 => speech.Say($"{seen}: that says the fishing was slow, not what to change."),
            1 => speech.Say($"{seen}. {Capital(bites)} is {bites}: a thread to pull at, nothing to build on."),
            <= 4 => speech.Say($"{seen}. {Capital(bites)} are {bites}: a thread to pull at, nothing to build on."),
            <= 15 => speech.Say($"{seen}: first hints. Any of the leading choices may still turn out to be the best."),
            <= 50 => speech.Say($"{seen}: large differences show, small ones do not yet."),
            _ => speech.Say($"{seen}: enough to trust the wide differences; read the ranges before the names."),
        };
    }

    /// <summary>A count of bites.</summary>
    public static string Bites(int count, Speech? speech = null)
    {
        speech ??= Speech.English;
        if (count == 1) return speech.Plain("one bite");
        string number = count < Numbers.Length ? speech.Plain(Numbers[count]) : count.ToString(CultureInfo.InvariantCulture);
        return speech.Say($"{number} bites");
    }

    /// <summary>Hours of fishing.</summary>
    public static string Hours(double hoursH, Speech? speech = null) => (speech ?? Speech.English).Number(hoursH, "0.#") + " h";

    /// <summary>A range of rates.</summary>
    public static string Range(Spread perH, Speech? speech = null) => (speech ?? Speech.English).Say($"{perH.P50:0.0} ({perH.P10:0.0} to {perH.P90:0.0})");

    /// <summary>A chance as anglers say it.</summary>
    public static string Chance(double chance, Speech? speech = null) => chance switch
    {
        >= 0.95 => (speech ?? Speech.English).Plain("nearly sure"),
        < 0.05 => (speech ?? Speech.English).Plain("less than 1 in 20"),
        _ => (speech ?? Speech.English).Say($"{Math.Clamp(Math.Round(10 * chance), 1, 9):0} in 10"),
    };

    /// <summary>A level of a factor with what its word means.</summary>
    public static string Level(string factor, string level, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(units);
        return (factor, level) switch
        {
            ("layer", "far above") => units.Speech.Say($"more than {units.Depth(5)} above it"),
            ("layer", "above") => units.Speech.Say($"{units.DepthRange(2, 5)} above it"),
            ("layer", "at the layer") => units.Speech.Say($"at it ({units.Depth(2)} above to {units.Depth(1)} below)"),
            ("layer", "just below") => units.Speech.Say($"{units.DepthRange(1, 3)} below it"),
            ("layer", "well below") => units.Speech.Say($"more than {units.Depth(3)} below it"),
            ("weight", "light") => units.Speech.Say($"light (under {units.JigWeight(0.012)})"),
            ("weight", "middling") => units.Speech.Say($"middling ({units.JigWeight(0.012)} to {units.JigWeight(0.019)})"),
            ("weight", "heavy") => units.Speech.Say($"heavy ({units.JigWeight(0.019)} to {units.JigWeight(0.025)})"),
            ("weight", "very heavy") => units.Speech.Say($"very heavy (over {units.JigWeight(0.025)})"),
            ("speed", "slow") => units.Speech.Say($"slow (under {units.Pace(0.25)})"),
            ("speed", "middling") => units.Speech.Say($"middling ({units.Pace(0.25)} to {units.Pace(0.4)})"),
            ("speed", "fast") => units.Speech.Say($"fast (over {units.Pace(0.4)})"),
            ("wind change", "fresh") => units.Speech.Plain("under 2 h"),
            ("wind change", "settling") => units.Speech.Plain("2 to 6 h"),
            ("wind change", "steady") => units.Speech.Plain("over 6 h"),
            ("form", _) => units.Speech.Plain(level),
            _ => level,
        };
    }

    /// <summary>Advice as a sentence.</summary>
    public static string Say(TryAdvice advice, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(advice);
        string more = advice.MoreH is { } hoursH && hoursH > 0.2 && advice.BestChance < 0.9
            ? " " + units.Speech.Say($"About {Math.Ceiling(hoursH):0} h more on the two leading ones would likely settle it.")
            : "";
        return $"{Capital(advice.Factor)}: {Level(advice.Factor, advice.Choice, units)}, because {advice.Why.Say(units)}.{more}";
    }

    internal static string Capital(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];
}
