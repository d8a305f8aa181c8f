using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Core.Words;
using SecondShore.Engine.Rig;

namespace SecondShore.Answers.Rig;

/// <summary>Says an answer in plain words: the weight first, then why, then what to do with it.</summary>
public static class RigWords
{
    // A twentieth of a mile per hour: less than the boat's speed can be held to.
    private static readonly double WorthSayingMps = 0.023;

    /// <summary>The answer, a sentence or two an item, in the language of its units.</summary>
    public static IReadOnlyList<string> Of(RigReply reply)
    {
        ArgumentNullException.ThrowIfNull(reply);
        Speech speech = reply.Request.Units.Speech;
        List<string> words = [Headline(reply), speech.Say($"Because {Why(reply)}"), Feel(reply)];
        if (Neighbours(reply) is { Length: > 0 } neighbours) words.Add(neighbours);
        words.Add(LineOut(reply));
        words.Add(Fastest(reply));
        words.Add(Fall(reply));
        words.Add(Hang(reply));
        if (Flow(reply) is { Length: > 0 } flow) words.Add(flow);
        if (Lines(reply) is { Length: > 0 } lines) words.Add(lines);
        if (reply.Asked is { } asked) words.Add(speech.Say($"{Weight(reply, asked)} stays down {InTen(speech, asked.HoldsChance)}."));
        return words;
    }

    /// <summary>What to tie on, in one line, such as <c>3/4 oz lead on 15 lb fluorocarbon</c>.</summary>
    public static string Short(RigPick reply)
    {
        ArgumentNullException.ThrowIfNull(reply);
        UnitSystem units = reply.Request.Units;
        Jig jig = reply.Choice.Chosen.Jig;
        return units.Speech.Say($"{units.JigWeight(jig.MassKg)} {units.Speech.Plain(jig.Material.Name)} on {LineName(units, reply.Line)}, {units.ShortDistance(Out(reply))} out");
    }

    /// <summary>Why that weight, without 'because' and with its full stop.</summary>
    public static string Why(RigReply reply)
    {
        ArgumentNullException.ThrowIfNull(reply);
        UnitSystem units = reply.Request.Units;
        Speech speech = units.Speech;
        RigChoice choice = reply.Choice;
        string pace = units.Pace(reply.Conditions.SpeedMps), depth = units.Depth(reply.Conditions.DepthM), line = LineName(units, reply.Line), weight = Grams(units, choice.NeededKg);
        return choice.Reason switch
        {
            WeightReason.Hold => speech.Say($"at {pace} in {depth} the water lifts {line}, and anything under {weight} leaves the bottom more than {OutOfTen(speech, 1 - reply.Request.Rule.Confidence)}."),
            WeightReason.Feel => speech.Say($"at {pace} in {depth} on {line} anything under {weight} drags too lightly to feel the bottom."),
            WeightReason.LightestOwned => speech.Say($"it is the lightest there is; at {pace} in {depth}, {weight} would do."),
            _ when choice.NeededKg >= 1.99 => speech.Say($"at {pace} in {depth} on {line} no weight in use would stay down."),
            _ => speech.Say($"at {pace} in {depth} on {line} only {weight} or more would stay down."),
        };
    }

    private static string Headline(RigReply reply)
    {
        UnitSystem units = reply.Request.Units;
        string weight = units.JigWeight(reply.Choice.Chosen.Jig.MassKg);
        return reply.Choice.Holds ? units.Speech.Say($"Tie on {weight}.") : units.Speech.Say($"Nothing here holds the bottom, not even {weight}. Slow down or let out more line.");
    }

    private static string Feel(RigReply reply)
    {
        Speech speech = reply.Request.Units.Speech;
        Spread share = reply.Choice.Chosen.OnBottomShare;
        string feel = speech.Plain(share.P50 switch
        {
            < 0.1 => "it skips",
            < 0.3 => "a light touch",
            <= 0.7 => "a clear feel",
            <= 0.8 => "a firm feel",
            _ => "it digs in where the bottom is soft",
        });
        return speech.Say($"It leaves {share.P50 * 100:0} % of its weight on the bottom, between {share.P10 * 100:0} and {share.P90 * 100:0}: {feel}.");
    }

    private static string Neighbours(RigReply reply)
    {
        Speech speech = reply.Request.Units.Speech;
        List<string> parts = [];
        if (reply.Choice.Lighter is { } lighter)
            parts.Add(speech.Say($"{Weight(reply, lighter)} stays down {InTen(speech, lighter.HoldsChance)} and falls in {lighter.FallS.P50:0} s."));
        if (reply.Choice.Heavier is { } heavier)
            parts.Add(speech.Say($"{Weight(reply, heavier)} stays down {InTen(speech, heavier.HoldsChance)}, falls in {heavier.FallS.P50:0} s, and snags more."));
        return string.Join(" ", parts);
    }

    private static string LineOut(RigReply reply)
    {
        UnitSystem units = reply.Request.Units;
        double outM = Out(reply), leastM = reply.Choice.Chosen.LeastLineM.P90;
        string text = units.Speech.Say($"Line out {units.ShortDistance(outM)} from the rod tip.");
        return leastM < 0.95 * outM ? $"{text} {units.Speech.Say($"{units.ShortDistance(leastM)} would still hold.")}" : text;
    }

    private static string Fastest(RigReply reply)
    {
        UnitSystem units = reply.Request.Units;
        Spread fastest = reply.Choice.Chosen.FastestMps;
        return fastest.P50 >= 2.99
            ? units.Speech.Plain("Speed does not lift it.")
            : units.Speech.Say($"Stays down up to {units.Pace(fastest.P10)} for sure, {units.Pace(fastest.P50)} as likely as not.");
    }

    private static string Fall(RigReply reply)
    {
        Speech speech = reply.Request.Units.Speech;
        Spread fall = reply.Choice.Chosen.FallS;
        if (!(fall.P90 < 3599)) return speech.Plain("On this line it may hang and not reach the bottom.");
        return speech.Say($"Fall to the bottom on slack line {fall.P50:0} s, between {fall.P10:0} s and {fall.P90:0} s; on tight line {reply.Choice.Chosen.TightFallS:0} s. Still falling at {Math.Ceiling(fall.P90 * 1.05):0}? You are off the edge.");
    }

    private static string Hang(RigReply reply)
    {
        UnitSystem units = reply.Request.Units;
        Speech speech = units.Speech;
        Spread angle = reply.Choice.Chosen.LineAngleRad;
        TowResult tow = reply.Shape.Tow;
        string behind = units.ShortDistance(tow.TrailM), aside = units.ShortDistance(Math.Abs(tow.SideM));
        string trails = Math.Abs(tow.SideM) <= 0.5 ? speech.Say($"The jig trails {behind} behind.")
            : tow.SideM > 0 ? speech.Say($"The jig trails {behind} behind and {aside} to the left.")
            : speech.Say($"The jig trails {behind} behind and {aside} to the right.");
        string sweep = double.IsFinite(reply.Sweep.TimeS)
            ? speech.Say($"The pull of a quick sweep is there in {reply.Sweep.TimeS:0.0} s, after {units.ShortDistance(reply.Sweep.RodTravelM)} of rod tip.")
            : speech.Plain("A quick sweep is lost in the bow of the line.");
        string meets = speech.Say(
            $"The line meets the water {Degrees(angle.P50):0}° below level, between {Degrees(angle.P10):0} and {Degrees(angle.P90):0}.");
        return $"{meets} {trails} {sweep}";
    }

    private static string Flow(RigReply reply)
    {
        if (reply.Request.Current is not { } current) return "";
        UnitSystem units = reply.Request.Units;
        current.At(0.3, out double low, out _);
        current.At(reply.Conditions.DepthM - 0.3, out double high, out _);
        return Math.Max(Math.Abs(low), Math.Abs(high)) < WorthSayingMps
            ? units.Speech.Plain("The water hardly runs along this drag, at the jig or near the surface.")
            : units.Speech.Say($"The water runs {Way(low, units)} at the jig and {Way(high, units)} near the surface.");
    }

    private static string Way(double alongMps, UnitSystem units) => Math.Abs(alongMps) < WorthSayingMps ? units.Speech.Plain("hardly at all")
        : alongMps > 0 ? units.Speech.Say($"{units.Pace(alongMps)} with you") : units.Speech.Say($"{units.Pace(-alongMps)} against you");

    private static string Lines(RigReply reply)
    {
        UnitSystem units = reply.Request.Units;
        List<string> parts = [];
        double present = reply.Lines.First(l => l.Line == reply.Line).NeededKg;
        foreach (LineTrade trade in reply.Lines)
        {
            if (trade.Line == reply.Line || trade.Size is not { } size || double.IsInfinity(trade.NeededKg) || Math.Abs((trade.NeededKg / present) - 1.0) < 0.05) continue;
            parts.Add(units.Speech.Say($"on {LineName(units, trade.Line)} {size.Label}"));
        }

        return parts.Count == 0 ? "" : units.Speech.Say($"With another line: {string.Join(", ", parts)}.");
    }

    /// <summary>A line's own name, or its strength and material.</summary>
    internal static string LineName(UnitSystem units, FishingLine line) => line.Name.EndsWith(" lb " + line.Material.Name, StringComparison.Ordinal)
        ? line.Name[..^line.Material.Name.Length] + units.Speech.Plain(line.Material.Name)
        : line.Name;

    private static double Out(RigPick reply) => reply.Conditions.LineOutAtM(reply.Conditions.DepthM);

    private static double Degrees(double rad) => double.RadiansToDegrees(rad);

    private static string Weight(RigReply reply, WeightOutlook outlook) => reply.Request.Units.JigWeight(outlook.Jig.MassKg);

    private static string Grams(UnitSystem units, double massKg) => units.IsMetric
        ? $"{units.Speech.Number(massKg * 1000, "0")} g"
        : $"{units.Speech.Number(massKg / Engine.Core.Units.Mass.KilogramsPerOunce, "0.##")} oz";

    private static string InTen(Speech speech, double chance) => chance >= 0.97 ? speech.Plain("nearly always") : chance <= 0.03 ? speech.Plain("hardly ever")
        : speech.Say($"{Math.Clamp(Math.Floor((chance * 10) + 1e-9), 1, 9):0} times in 10");

    private static string OutOfTen(Speech speech, double chance) => chance < 0.045 ? speech.Say($"{chance * 100:0} times in 100")
        : chance > 0.11 ? speech.Say($"{chance * 10:0.#} times in 10") : speech.Say($"{chance * 10:0.#} time in 10");
}
