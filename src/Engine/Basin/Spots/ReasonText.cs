using SecondShore.Engine.Basin.Arms;
using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Core.Words;

namespace SecondShore.Engine.Basin.Spots;

/// <summary>Puts reasons into words, in feet or metres.</summary>
public static class ReasonText
{
    /// <summary>One reason as a clause, such as <c>brush pile 130 ft away</c>.</summary>
    /// <param name="reason">The reason.</param>
    /// <param name="feet">Feet instead of metres.</param>
    /// <param name="speech">The language; null is English.</param>
    public static string Of(Reason reason, bool feet, Speech? speech = null)
    {
        Core.Require.NotNull(reason);
        speech ??= Speech.English;
        string form = speech.Plain(reason.Form is { } f ? FormWords.Of(f) : "form");
        string range = Range(reason, feet, speech), away = Away(reason.DistanceM, feet, speech), deep = Length(reason.DeepM, feet, speech), ground = Distance(reason.DistanceM, feet, speech);
        return reason.Kind switch
        {
            ReasonKind.OnForm => speech.Say($"{form} at {range}"),
            ReasonKind.SwingsByFlat => reason.DistanceM < 5
                ? speech.Say($"channel swings against a flat at {range}")
                : speech.Say($"channel swings within {ground} of a flat at {range}"),
            ReasonKind.NearForm => speech.Say($"{form} {away}"),
            ReasonKind.CoverNear => speech.Say($"{speech.Plain(CoverWord(reason.Cover))} {away}"),
            ReasonKind.SharpEdge => speech.Say($"edge breaks at {reason.SlopeDeg:0} degrees"),
            ReasonKind.DepthChange => speech.Say($"depth goes {range} within {ground}"),
            ReasonKind.DeepWater => speech.Say($"{deep} of water {away}"),
            ReasonKind.InReach => speech.Say($"{100 * reason.ChanceShare:0} % in reach of the thermocline"),
            ReasonKind.ArmSettled => speech.Say($"{ArmText.Of(reason.Word, speech)} has mixed and settled"),
            ReasonKind.ArmLayered => speech.Say($"{ArmText.Of(reason.Word, speech)} is still layered"),
            ReasonKind.SteepAnyDepth => speech.Say($"steep from {range}: fish move up and down without travelling"),
            ReasonKind.EdgeAnyDepth => speech.Say($"channel edge at {range}, good at any depth when the layers go"),
            ReasonKind.BackOfArm => speech.Say($"back of an arm at {deep}: swim the jig here rather than drag it"),
            _ => speech.Say($"wind-blown flat at {deep} near a channel: swim the jig here rather than drag it"),
        };
    }

    private static string Range(Reason reason, bool feet, Speech speech)
    {
        string unit = feet ? "ft" : "m";
        double low = feet ? reason.ShallowM / Core.Units.Length.MetresPerFoot : reason.ShallowM, high = feet ? reason.DeepM / Core.Units.Length.MetresPerFoot : reason.DeepM;
        string a = Number(low, feet, speech), b = Number(high, feet, speech);
        return a == b ? $"{a} {unit}" : speech.Say($"{a} to {b} {unit}");
    }

    private static string Away(double metres, bool feet, Speech speech) =>
        metres < 5 ? speech.Plain("right there") : speech.Say($"{Distance(metres, feet, speech)} away");

    // Along the ground to 5 ft at best: a survey knows no better.
    private static string Distance(double metres, bool feet, Speech speech) =>
        feet && metres < 30 ? $"{speech.Number(Math.Round(metres / Core.Units.Length.MetresPerFoot / 5) * 5, "0")} ft" : Length(metres, feet, speech);

    private static string Length(double metres, bool feet, Speech speech) =>
        feet ? $"{Number(metres / Core.Units.Length.MetresPerFoot, true, speech)} ft" : $"{Number(metres, metres >= 10, speech)} m";

    private static string Number(double value, bool whole, Speech speech) =>
        speech.Number(whole ? Math.Round(value >= 100 ? Math.Round(value / 10) * 10 : value) : Math.Round(value, 1), "0.#");

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
