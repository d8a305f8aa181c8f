using SecondShore.Engine.Learn;

namespace SecondShore.Answers.Learn;

/// <summary>When to leave a stop, from what the log says of places and of the way between them.</summary>
internal static class LeaveTables
{
    // As the day's plan takes it where nothing is known of a place (docs/science/day.md).
    private static readonly double TiringPerH = 0.6;
    private static readonly double UsualTravelH = 0.25;

    public static LeaveTable Of(CatchRates rates, IReadOnlyList<EffortSpan> spans, LearnWish wish, UnitSystem units, List<Finding> assumed)
    {
        double travelH = wish.TravelH ?? Gap(spans) ?? UsualTravelH;
        if (wish.TravelH is null && Gap(spans) is null) assumed.Add(AnswerFindings.WayAssumed.Of());
        double meanPerH = Math.Max(0.02, rates.BasePerH.P50);
        StopBelief belief = StopBelief.Of(meanPerH, Math.Clamp(rates.NewStopDoubtShare, 0.4, 1.6), TiringPerH);
        double elsewhere = LeaveRule.LongRunPerH(belief, travelH);
        List<LeaveRow> rows = [];
        for (int bites = 0; bites <= 4; bites++) rows.Add(new LeaveRow(bites, GiveUpMinutes(belief, bites, elsewhere)));
        string words = units.Speech.Say(
            $"Going on gives about {elsewhere:0.0} bites an hour with {60 * travelH:0} minutes of running, so leave a place that has given nothing in {rows[0].AfterMinutes} minutes; one bite makes that {rows[1].AfterMinutes}, two {rows[2].AfterMinutes}.");
        return new LeaveTable(elsewhere, travelH, rows, words);
    }

    // The time at which a stop with so many bites and no more is no longer worth its time.
    private static int GiveUpMinutes(StopBelief belief, int bites, double elsewherePerH)
    {
        for (int minutes = 0; minutes < 300; minutes += 5)
            if (LeaveRule.StayIfNoBiteH(belief, minutes / 60.0, bites, elsewherePerH) <= 0) return minutes;
        return 300;
    }

    // Half of the gaps between stretches of one day, running and retying together; gaps over two hours are lunch.
    private static double? Gap(IReadOnlyList<EffortSpan> spans)
    {
        List<double> gaps = [];
        for (int i = 1; i < spans.Count; i++)
        {
            if (LearnSums.DayOf(spans[i]) != LearnSums.DayOf(spans[i - 1]) || spans[i - 1].Effort.Until is not { } ended) continue;
            double gapH = (spans[i].Effort.At - ended).TotalHours;
            if (gapH is > 0.03 and < 2) gaps.Add(gapH);
        }

        if (gaps.Count < 3) return null;
        gaps.Sort();
        return gaps[gaps.Count / 2];
    }
}
