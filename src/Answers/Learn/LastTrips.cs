using SecondShore.Engine.Core.Words;
using SecondShore.Engine.Learn;

namespace SecondShore.Answers.Learn;

/// <summary>The last day on the water, and what it changed in what is believed.</summary>
internal static class LastTrips
{
    public static LastTrip? Of(IReadOnlyList<EffortSpan> spans, CatchRates after, LearnChoices choices, LearnConditions conditions, LearnWish wish, UnitSystem units)
    {
        if (spans.Count == 0) return null;
        DateOnly day = spans.Max(LearnSums.DayOf);
        EffortSpan[] own = [.. spans.Where(s => LearnSums.DayOf(s) == day)], before = [.. spans.Where(s => LearnSums.DayOf(s) != day)];
        CatchRates then = CatchRates.Learn(before, wish.Priors, conditions.Words, wish.Seed);
        List<string> changed = [units.Speech.Say($"An ordinary hour was believed to give {LearnWords.Range(then.BasePerH, units.Speech)} bites before the day and {LearnWords.Range(after.BasePerH, units.Speech)} after it.")];
        foreach (string factor in (string[])["trailer", "layer", "form"])
            if (Shift(factor, choices.In(factor), then, after, units) is { } shift) changed.Add(shift);
        return new LastTrip(day, LearnSums.Of(own, 0), Best(own, units), changed);
    }

    // How far the day moved the odds of the level that leads now.
    private static string? Shift(string factor, IReadOnlyList<string> among, CatchRates then, CatchRates after, UnitSystem units)
    {
        if (among.Count < 2) return null;
        ChoiceRate now = after.By(factor, among)[0];
        double was = then.By(factor, among).First(r => r.Level == now.Level).BestChance;
        Speech speech = units.Speech;
        string heading = speech.Plain(factor == "layer" ? "Depth off the thermocline" : factor == "form" ? "Kind of bottom" : "Trailer");
        string name = $"{heading} '{LearnWords.Level(factor, now.Level, units)}'", chance = LearnWords.Chance(now.BestChance, speech);
        return Math.Abs(now.BestChance - was) < 0.05
            ? speech.Say($"{name} leads as before, the best with a chance of {chance}.")
            : speech.Say($"{name} went from {LearnWords.Chance(was, speech)} to {chance} to be the best.");
    }

    private static string Best(EffortSpan[] spans, UnitSystem units)
    {
        EffortSpan? best = null;
        foreach (EffortSpan span in spans)
            if (span.Bites > 0 && (best is null || span.Bites / span.HoursH > best.Bites / best.HoursH)) best = span;
        if (best is null) return "";
        LogEntry e = best.Effort;
        Speech speech = units.Speech;
        string where = string.Join(", ", new[] { e.Spot ?? "", speech.Plain(e.Form ?? ""), e.BottomDepthM is { } d ? units.Depth(d) : "" }.Where(w => w.Length > 0));
        string told = speech.Say($"{LearnWords.Capital(LearnWords.Bites(best.Bites, speech))} in {60 * best.HoursH:0} minutes");
        if (where.Length > 0) told += ", " + where;
        return e.Rig.Trailer is { } t ? speech.Say($"{told}, on {t}.") : told + ".";
    }
}
