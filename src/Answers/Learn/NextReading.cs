using SecondShore.Engine.Core.Words;
using SecondShore.Engine.Season;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Learn;

/// <summary>Which reading would teach most next time: the one that takes away the greatest share of a doubt that matters.</summary>
public static class NextReading
{
    // Worth of a Secchi depth, and of a meter where it is not known whether oxygen reaches the bottom, beside the shares of doubt
    // that other readings take away (choice).
    private const double SecchiShare = 0.3, OxygenShare = 0.35, LeastShare = 0.1;

    /// <summary>Readings worth taking, best first: which, when, and how much it narrows.</summary>
    public static IEnumerable<string> Of(Outlook? outlook, LakeFolder folder, UnitSystem units)
    {
        if (outlook is null || outlook.Lake.State == LayerState.Mixed) yield break;
        ArmOutlook lake = outlook.Lake;
        List<(double Share, string Words)> worth =
            [.. lake.Worth.GroupBy(w => w.Kind).Select(g => g.MaxBy(w => w.Share)!).Select(w => (w.Share, Say(w, units)))];
        if (lake.Oxygen == OxygenState.NotKnown && lake.Profile.Count > 0) worth.Add((OxygenShare, Meter(lake.Profile[^1].DepthM, units)));
        if (!KnowsClarity(folder)) worth.Add((SecchiShare, Disc(units)));
        foreach ((double share, string words) in worth.OrderByDescending(w => w.Share))
            if (share > LeastShare) yield return words;
    }

    private static bool KnowsClarity(LakeFolder folder) =>
        folder.Readings.Concat(folder.Secchi).Any(r => r.Kind == ReadingKind.Secchi)
        || folder.SiteOrNull?.SecchiM is not null || folder.Document.LightExtinctionPerM is not null;

    private static string Disc(UnitSystem units) =>
        units.Speech.Plain("A Secchi depth: clarity sets how deep light and warmth go and which colours show, and none is on file.");

    private static string Meter(double depthM, UnitSystem units) => units.Speech.Say($"An oxygen reading at {units.Depth(depthM)}, over the deepest water, while the lake is layered: nothing measured says yet whether oxygen reaches the bottom.");

    private static string Say(ReadingWorth w, UnitSystem units) => (w.Kind, w.Narrows) switch
    {
        (ReadingKind.HazeDepth, WorthOf.Thermocline) => units.Speech.Say($"The depth of the haze on the sounder over deep water, in a calm hour of the next days: it would narrow the thermocline from {Half(w.NowSd, units)} either way to about {Half(w.AfterSd, units)}, and the belt with it."),
        (ReadingKind.HazeDepth, _) => units.Speech.Say($"The depth of the haze on the sounder over deep water, in a calm hour of the next days: it would narrow the date of turnover from {1.28 * w.NowSd:0} days either way to about {1.28 * w.AfterSd:0}."),
        (ReadingKind.Oxygen, _) => units.Speech.Say($"An oxygen reading at {units.Depth(w.DepthM)}, just under the thermocline, in the next days: it would narrow the depth where oxygen runs out from {Half(w.NowSd, units)} either way to about {Half(w.AfterSd, units)}."),
        _ => units.Speech.Say($"A thermometer lowered to {units.Depth(w.DepthM)}, while the lake is layered: the deep water sets when the lake turns, and it would narrow that date from {1.28 * w.NowSd:0} days either way to about {1.28 * w.AfterSd:0}."),
    };

    /// <summary>Trials worth making: the choices that are nearest to being settled and are not.</summary>
    public static IEnumerable<string> Trials(IReadOnlyList<FactorRates> tables, UnitSystem units)
    {
        foreach (FactorRates table in tables.Where(t => t.Factor is "trailer" or "colour" or "weight" or "layer" or "speed" && !t.Settled).OrderByDescending(t => Doubt(t)).Take(1))
        {
            LevelRate first = table.Rows[0], second = table.Rows[1];
            LevelRate less = first.Rate.HoursH <= second.Rate.HoursH ? first : second, more = less == first ? second : first;
            Speech speech = units.Speech;
            string what = speech.Language == "en" ? table.Heading.ToLowerInvariant() : table.Heading;
            yield return speech.Say($"Fishing {what} '{less.Words}' and '{more.Words}' by turns at one place: they lead, have {LearnWords.Hours(less.Rate.HoursH, speech)} and {LearnWords.Hours(more.Rate.HoursH, speech)} behind them, and the log cannot tell them apart yet.");
        }
    }

    // The spread between the leading choices that a trial could still turn into bites.
    private static double Doubt(FactorRates table) =>
        (table.Rows[0].Rate.RatePerH.P90 - table.Rows[0].Rate.RatePerH.P10 + table.Rows[1].Rate.RatePerH.P90 - table.Rows[1].Rate.RatePerH.P10) * (1 - table.Rows[0].Rate.BestChance);

    private static string Half(double sdM, UnitSystem units) => units.Depth(1.28 * sdM);
}
