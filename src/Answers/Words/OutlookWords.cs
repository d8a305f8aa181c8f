using System.Globalization;
using System.Text;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Core.Units;
using SecondShore.Engine.Season;

namespace SecondShore.Answers.Words;

/// <summary>An outlook in the words of a tired angler.</summary>
public static class OutlookWords
{
    /// <summary>What an answer without any weather is called.</summary>
    public static readonly string RoughGuess = "No weather is on file, so this is a rough guess from latitude.";

    /// <summary>The whole outlook in a few short sentences.</summary>
    /// <param name="outlook">The outlook; its instant's offset decides the dates.</param>
    /// <param name="inFeet">Depths in whole feet, else in metres and tenths.</param>
    public static string Say(Outlook outlook, bool inFeet)
    {
        ArgumentNullException.ThrowIfNull(outlook);
        StringBuilder words = new();
        if (outlook.IsRoughGuess) words.Append(RoughGuess).Append(' ');
        words.Append(State(outlook.Lake)).Append('.');
        if (outlook.Lake.State != LayerState.Mixed && outlook.Lake.ThermoclineM is { } depth)
            words.Append(' ').Append(Thermocline(depth, inFeet)).Append('.');
        words.Append(' ').Append(Turns(outlook)).Append('.');
        if (outlook.Lake.State != LayerState.Mixed && outlook.Lake.OxygenFloorM is { } floor)
            words.Append(' ').Append(Oxygen(floor, inFeet)).Append('.');
        else if (outlook.Lake.State != LayerState.Mixed)
            words.Append(' ').Append(NoFloor(outlook.Lake)).Append('.');
        return words.ToString();
    }

    /// <summary>One word for the state: Layered, Turning or Mixed.</summary>
    public static string State(ArmOutlook arm) => arm?.State switch
    {
        LayerState.Stratified => "Layered",
        LayerState.Turning => "Turning over",
        _ => "Mixed from top to bottom",
    };

    /// <summary>Thermocline depth with its spread, such as <c>Thermocline 27 ft (24 to 30)</c>.</summary>
    public static string Thermocline(SampleDistribution depthM, bool inFeet)
    {
        Spread spread = (depthM ?? throw new ArgumentNullException(nameof(depthM))).Spread;
        return $"Thermocline {Depth(spread.P50, inFeet)} {Unit(inFeet)} ({Depth(spread.P10, inFeet)} to {Depth(spread.P90, inFeet)})";
    }

    /// <summary>Where the deep water is likely too poor in oxygen.</summary>
    public static string Oxygen(SampleDistribution floorM, bool inFeet)
    {
        Spread spread = (floorM ?? throw new ArgumentNullException(nameof(floorM))).Spread;
        return $"Below {Depth(spread.P50, inFeet)} {Unit(inFeet)} ({Depth(spread.P10, inFeet)} to {Depth(spread.P90, inFeet)}) there is probably too little oxygen to hold fish";
    }

    // Never 'enough' without a meter's word.
    private static string NoFloor(ArmOutlook lake) => lake.Oxygen == OxygenState.Enough
        ? "By what was measured lately there is oxygen enough to the bottom"
        : "Whether oxygen reaches the bottom is not known: no reading of the deep water tells, and the reckoning gives "
            + $"{Math.Clamp(Math.Round(10 * lake.ChanceOxygenShort), 1, 5):0} in ten that it runs out";

    /// <summary>When each arm turns, arms of the same answer together.</summary>
    public static string Turns(Outlook outlook)
    {
        ArgumentNullException.ThrowIfNull(outlook);
        bool one = outlook.Arms.Count == 1;
        IEnumerable<string> parts = outlook.Arms
            .Select(a => (a.Name, When: When(outlook, a)))
            .GroupBy(p => p.When)
            .Select(g => one ? $"It {g.Key}" : $"{Names([.. g.Select(p => p.Name)])} {(g.Count() > 1 ? Plural(g.Key) : g.Key)}");
        return string.Join("; ", parts);
    }

    private static string When(Outlook outlook, ArmOutlook arm)
    {
        if (arm.State == LayerState.Turning) return "is turning now";
        if (arm.TurnoverInDays is not { } days) return arm.State == LayerState.Mixed ? "is mixed" : "does not turn within the weather at hand";
        if (arm.State == LayerState.Mixed)
            return days.Quantile(0.5) >= 0 ? "is mixed now" : outlook.IsRoughGuess
                ? $"turned over between {Date(outlook.At, days.Quantile(0.1))} and {Date(outlook.At, days.Quantile(0.9))}" : $"turned over about {Date(outlook.At, days.Quantile(0.5))}";
        string from = Date(outlook.At, days.Quantile(0.1)), to = Date(outlook.At, days.Quantile(0.9));
        return from == to ? $"turns about {from}" : $"turns between {from} and {to}";
    }

    private static string Plural(string when) =>
        when.StartsWith("is ", StringComparison.Ordinal) ? "are " + when[3..]
        : when.StartsWith("turns ", StringComparison.Ordinal) ? "turn " + when[6..]
        : when.StartsWith("does ", StringComparison.Ordinal) ? "do " + when[5..] : when;

    private static string Names(string[] names) =>
        names.Length == 1 ? names[0] : string.Join(", ", names[..^1]) + " and " + names[^1];

    private static string Date(DateTimeOffset at, double days) => at.AddDays(days).ToString("d MMM", CultureInfo.InvariantCulture);

    private static string Depth(double depthM, bool inFeet) => inFeet
        ? Math.Round(Length.FromMetres(depthM).Feet).ToString(CultureInfo.InvariantCulture)
        : depthM.ToString("0.0", CultureInfo.InvariantCulture);

    private static string Unit(bool inFeet) => inFeet ? "ft" : "m";
}
