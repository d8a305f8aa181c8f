using System.Globalization;
using SecondShore.Answers.Words;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Rig;

namespace SecondShore.Answers.Rig;

/// <summary>Says an answer in plain words: the weight first, then why, then what to do with it.</summary>
public static class RigWords
{
    // A twentieth of a mile per hour: less than the boat's speed can be held to.
    private static readonly double WorthSayingMps = 0.023;

    /// <summary>The answer, a sentence or two an item.</summary>
    public static IReadOnlyList<string> Of(RigReply reply)
    {
        ArgumentNullException.ThrowIfNull(reply);
        List<string> words = [Headline(reply), Because(reply), Feel(reply)];
        if (Neighbours(reply) is { Length: > 0 } neighbours) words.Add(neighbours);
        words.Add(LineOut(reply));
        words.Add(Fastest(reply));
        words.Add(Fall(reply));
        words.Add(Hang(reply));
        if (Flow(reply) is { Length: > 0 } flow) words.Add(flow);
        if (Lines(reply) is { Length: > 0 } lines) words.Add(lines);
        if (reply.Asked is { } asked) words.Add($"{Weight(reply, asked)} stays down {InTen(asked.HoldsChance)}.");
        return words;
    }

    /// <summary>What to tie on, in one line, such as <c>3/4 oz lead on 15 lb fluorocarbon</c>.</summary>
    public static string Short(RigPick reply)
    {
        ArgumentNullException.ThrowIfNull(reply);
        Jig jig = reply.Choice.Chosen.Jig;
        return $"{reply.Request.Units.JigWeight(jig.MassKg)} {jig.Material.Name} on {reply.Line.Name}, {reply.Request.Units.ShortDistance(Out(reply))} out";
    }

    private static string Headline(RigReply reply)
    {
        string weight = reply.Request.Units.JigWeight(reply.Choice.Chosen.Jig.MassKg);
        return reply.Choice.Holds ? $"Tie on {weight}." : $"Nothing here holds the bottom, not even {weight}. Slow down or let out more line.";
    }

    private static string Because(RigReply reply)
    {
        UnitSystem units = reply.Request.Units;
        string where = $"at {units.Pace(reply.Conditions.SpeedMps)} in {units.Depth(reply.Conditions.DepthM)}";
        RigChoice choice = reply.Choice;
        double sureKg = choice.NeededKg;
        return choice.Reason switch
        {
            WeightReason.Hold => $"Because {where} the water lifts {reply.Line.Name}, and anything under {Grams(units, sureKg)} leaves the bottom more than {OutOfTen(1 - reply.Request.Rule.Confidence)}.",
            WeightReason.Feel => $"Because {where} on {reply.Line.Name} anything under {Grams(units, sureKg)} drags too lightly to feel the bottom.",
            WeightReason.LightestOwned => $"Because it is the lightest there is; {where}, {Grams(units, sureKg)} would do.",
            _ => $"Because {where} on {reply.Line.Name} {(sureKg >= 1.99 ? "no weight in use" : "only " + Grams(units, sureKg) + " or more")} would stay down.",
        };
    }

    private static string Feel(RigReply reply)
    {
        Spread share = reply.Choice.Chosen.OnBottomShare;
        string feel = share.P50 switch
        {
            < 0.1 => "it skips",
            < 0.3 => "a light touch",
            <= 0.7 => "a clear feel",
            <= 0.8 => "a firm feel",
            _ => "it digs in where the bottom is soft",
        };
        return string.Create(CultureInfo.InvariantCulture,
            $"It leaves {share.P50 * 100:0} % of its weight on the bottom, between {share.P10 * 100:0} and {share.P90 * 100:0}: {feel}.");
    }

    private static string Neighbours(RigReply reply)
    {
        string text = "";
        if (reply.Choice.Lighter is { } lighter)
            text = $"{Weight(reply, lighter)} stays down {InTen(lighter.HoldsChance)} and falls in {Seconds(lighter.FallS.P50)}.";
        if (reply.Choice.Heavier is { } heavier)
            text += $"{(text.Length > 0 ? " " : "")}{Weight(reply, heavier)} stays down {InTen(heavier.HoldsChance)}, falls in {Seconds(heavier.FallS.P50)}, and snags more.";
        return text;
    }

    private static string LineOut(RigReply reply)
    {
        UnitSystem units = reply.Request.Units;
        double out_ = Out(reply), least = reply.Choice.Chosen.LeastLineM.P90;
        string text = $"Line out {units.ShortDistance(out_)} from the rod tip.";
        return least < 0.95 * out_ ? $"{text} {units.ShortDistance(least)} would still hold." : text;
    }

    private static string Fastest(RigReply reply)
    {
        UnitSystem units = reply.Request.Units;
        Spread fastest = reply.Choice.Chosen.FastestMps;
        return fastest.P50 >= 2.99
            ? "Speed does not lift it."
            : $"Stays down up to {units.Pace(fastest.P10)} for sure, {units.Pace(fastest.P50)} as likely as not.";
    }

    private static string Fall(RigReply reply)
    {
        Spread fall = reply.Choice.Chosen.FallS;
        if (!(fall.P90 < 3599)) return "On this line it may hang and not reach the bottom.";
        return $"Fall to the bottom on slack line {Seconds(fall.P50)}, between {Seconds(fall.P10)} and {Seconds(fall.P90)}; on tight line {Seconds(reply.Choice.Chosen.TightFallS)}. "
            + $"Still falling at {Math.Ceiling(fall.P90 * 1.05).ToString("0", CultureInfo.InvariantCulture)}? You are off the edge.";
    }

    private static string Hang(RigReply reply)
    {
        UnitSystem units = reply.Request.Units;
        Spread angle = reply.Choice.Chosen.LineAngleRad;
        string text = string.Create(CultureInfo.InvariantCulture,
            $"The line meets the water {Degrees(angle.P50):0}° below level, between {Degrees(angle.P10):0} and {Degrees(angle.P90):0}. The jig trails {units.ShortDistance(reply.Shape.Tow.TrailM)} behind");
        if (Math.Abs(reply.Shape.Tow.SideM) > 0.5)
            text += $" and {units.ShortDistance(Math.Abs(reply.Shape.Tow.SideM))} to the {(reply.Shape.Tow.SideM > 0 ? "left" : "right")}";
        return double.IsFinite(reply.Sweep.TimeS)
            ? string.Create(CultureInfo.InvariantCulture, $"{text}. The pull of a quick sweep is there in {reply.Sweep.TimeS:0.0} s, after {units.ShortDistance(reply.Sweep.RodTravelM)} of rod tip.")
            : $"{text}. A quick sweep is lost in the bow of the line.";
    }

    private static string Flow(RigReply reply)
    {
        if (reply.Request.Current is not { } current) return "";
        UnitSystem units = reply.Request.Units;
        current.At(0.3, out double low, out _);
        current.At(reply.Conditions.DepthM - 0.3, out double high, out _);
        if (Math.Max(Math.Abs(low), Math.Abs(high)) < WorthSayingMps) return "The water hardly runs along this drag, at the jig or near the surface.";
        return $"The water runs {Way(low, units)} at the jig and {Way(high, units)} near the surface.";
    }

    private static string Way(double alongMps, UnitSystem units) => Math.Abs(alongMps) < WorthSayingMps
        ? "hardly at all"
        : $"{units.Pace(Math.Abs(alongMps))} {(alongMps > 0 ? "with you" : "against you")}";

    private static string Lines(RigReply reply)
    {
        List<string> parts = [];
        double present = reply.Lines.First(l => l.Line == reply.Line).NeededKg;
        foreach (LineTrade trade in reply.Lines)
        {
            if (trade.Line == reply.Line || trade.Size is not { } size || double.IsInfinity(trade.NeededKg) || Math.Abs((trade.NeededKg / present) - 1.0) < 0.05) continue;
            parts.Add($"on {trade.Line.Name} {size.Label}");
        }

        return parts.Count == 0 ? "" : $"With another line: {string.Join(", ", parts)}.";
    }

    private static double Out(RigPick reply) => reply.Conditions.LineOutAtM(reply.Conditions.DepthM);

    private static double Degrees(double rad) => rad * 180.0 / Math.PI;

    private static string Weight(RigReply reply, WeightOutlook outlook) => reply.Request.Units.JigWeight(outlook.Jig.MassKg);

    private static string Grams(UnitSystem units, double massKg) => units.IsMetric
        ? string.Create(CultureInfo.InvariantCulture, $"{massKg * 1000:0} g")
        : string.Create(CultureInfo.InvariantCulture, $"{massKg / Engine.Core.Units.Mass.KilogramsPerOunce:0.##} oz");

    private static string Seconds(double s) => string.Create(CultureInfo.InvariantCulture, $"{s:0} s");

    private static string InTen(double chance) => chance >= 0.97 ? "nearly always" : chance <= 0.03 ? "hardly ever"
        : string.Create(CultureInfo.InvariantCulture, $"{Math.Clamp(Math.Floor((chance * 10) + 1e-9), 1, 9):0} times in 10");

    private static string OutOfTen(double chance) => chance < 0.045
        ? string.Create(CultureInfo.InvariantCulture, $"{chance * 100:0} times in 100")
        : string.Create(CultureInfo.InvariantCulture, $"{chance * 10:0.#} time{(chance > 0.11 ? "s" : "")} in 10");
}
