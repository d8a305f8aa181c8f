using SecondShore.Engine.Core.Words;
using SecondShore.Engine.Rig;

namespace SecondShore.Answers.Rig;

/// <summary>Cautions that bear on a rig.</summary>
public static class RigCautions
{
    /// <summary>The cautions of an answer, in words.</summary>
    public static IReadOnlyList<string> Of(RigReply reply)
    {
        ArgumentNullException.ThrowIfNull(reply);
        List<string> cautions = [];
        UnitSystem units = reply.Request.Units;
        Speech speech = units.Speech;
        FishingLine line = reply.Line;
        Jig jig = reply.Choice.Chosen.Jig;
        if (reply.Request.NearTimber || reply.Conditions.Bottom == BottomKind.Wood)
            cautions.Add(speech.Plain("Brush or timber within reach: a heavy jig wedges there. Slow down, shorten the line, and pull a snag free from the far side, engine out of gear."));
        string strength = line.StrengthN <= 0
            ? speech.Plain("The line's strength is not known")
            : speech.Say($"{RigWords.LineName(units, line)} is rated {line.StrengthN / FishingLine.PoundForceN:0} lb ({line.StrengthN:0} N)");
        cautions.Add(speech.Say($"{strength}; knots, nicks and age take a third or more. Break a snag off with the line round a cleat, never a hand: a jig that comes free flies."));
        if (jig.Material.Name == "lead")
            cautions.Add(speech.Plain("Lead is not allowed everywhere: check local rules for this water before you tie it on."));
        if (reply.Request.Tackle.Rods is { Count: > 0 } rods && rods.All(r => r.HeaviestLureKg > 0 && r.HeaviestLureKg < jig.MassKg))
            cautions.Add(speech.Say($"{units.JigWeight(jig.MassKg)} is more than your rods are rated for."));
        if (reply.Shape.Tow.Contact == JigContact.LineOnBottom)
            cautions.Add(speech.Plain("Line lies on the bottom ahead of the jig and will fray and snag: shorten it."));
        if (reply.Conditions.SlopeRad > 0.1)
            cautions.Add(speech.Plain("Dragging up a steep bank, the line rubs on it and the jig wedges more: come down or along it where you can."));
        return cautions;
    }
}
