using System.Globalization;
using SecondShore.Engine.Basin.Forms;

namespace SecondShore.Engine.Basin.Spots;

/// <summary>Puts reasons into words, in feet or metres.</summary>
public static class ReasonText
{
    /// <summary>One reason as a clause, such as <c>brush pile 130 ft away</c>.</summary>
    /// <param name="reason">The reason.</param>
    /// <param name="feet">Feet instead of metres.</param>
    public static string Of(Reason reason, bool feet)
    {
        Core.Require.NotNull(reason);
        string form = reason.Form is { } f ? FormWords.Of(f) : "form";
        return reason.Kind switch
        {
            ReasonKind.OnForm => $"{form} at {Range(reason, feet)}",
            ReasonKind.SwingsByFlat => reason.DistanceM < 5
                ? $"channel swings against a flat at {Range(reason, feet)}"
                : $"channel swings within {Distance(reason.DistanceM, feet)} of a flat at {Range(reason, feet)}",
            ReasonKind.NearForm => $"{form} {Away(reason.DistanceM, feet)}",
            ReasonKind.CoverNear => $"{CoverWord(reason.Cover)} {Away(reason.DistanceM, feet)}",
            ReasonKind.SharpEdge => string.Create(CultureInfo.InvariantCulture, $"edge breaks at {reason.SlopeDeg:0} degrees"),
            ReasonKind.DepthChange => $"depth goes {Range(reason, feet)} within {Distance(reason.DistanceM, feet)}",
            ReasonKind.DeepWater => $"{Length(reason.DeepM, feet)} of water {Away(reason.DistanceM, feet)}",
            ReasonKind.InReach => string.Create(CultureInfo.InvariantCulture, $"{100 * reason.ChanceShare:0} % in reach of the thermocline"),
            ReasonKind.ArmSettled => $"{reason.Word} has mixed and settled",
            ReasonKind.ArmLayered => $"{reason.Word} is still layered",
            ReasonKind.SteepAnyDepth => $"steep from {Range(reason, feet)}: fish move up and down without travelling",
            ReasonKind.EdgeAnyDepth => $"channel edge at {Range(reason, feet)}, good at any depth when the layers go",
            ReasonKind.BackOfArm => $"back of an arm at {Length(reason.DeepM, feet)}: swim the jig here rather than drag it",
            _ => $"wind-blown flat at {Length(reason.DeepM, feet)} near a channel: swim the jig here rather than drag it",
        };
    }

    private static string Range(Reason reason, bool feet)
    {
        string unit = feet ? "ft" : "m";
        double low = feet ? reason.ShallowM / 0.3048 : reason.ShallowM, high = feet ? reason.DeepM / 0.3048 : reason.DeepM;
        string a = Number(low, feet), b = Number(high, feet);
        return a == b ? $"{a} {unit}" : $"{a} to {b} {unit}";
    }

    private static string Away(double metres, bool feet) => metres < 5 ? "right there" : $"{Distance(metres, feet)} away";

    // Along the ground to 5 ft at best: a survey knows no better.
    private static string Distance(double metres, bool feet) =>
        feet && metres < 30 ? string.Create(CultureInfo.InvariantCulture, $"{Math.Round(metres / 0.3048 / 5) * 5:0} ft") : Length(metres, feet);

    private static string Length(double metres, bool feet) => feet ? $"{Number(metres / 0.3048, true)} ft" : $"{Number(metres, metres >= 10)} m";

    private static string Number(double value, bool whole) =>
        (whole ? Math.Round(value >= 100 ? Math.Round(value / 10) * 10 : value) : Math.Round(value, 1)).ToString("0.#", CultureInfo.InvariantCulture);

    private static string CoverWord(CoverKind? cover) => cover switch
    {
        CoverKind.Brush => "brush pile",
        CoverKind.Stumps => "stumps",
        CoverKind.StandingTimber => "standing timber",
        CoverKind.Rock => "rock",
        CoverKind.Weed => "weed edge",
        CoverKind.Works => "old works",
        _ => "cover",
    };
}
