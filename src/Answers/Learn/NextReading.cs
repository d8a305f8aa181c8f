using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Core.Words;
using SecondShore.Engine.Season;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Learn;

/// <summary>Which reading would teach most next time: the one that takes away the greatest share of a doubt that matters.</summary>
public static class NextReading
{
    // What one reading is good for, as the outlook weighs it (docs/science/season.md).
    private static readonly double HazeSdM = 1.0;
    private static readonly double DeepTempSdC = 0.6;
    private static readonly double OxygenSdM = 1.5;

    /// <summary>Readings worth taking, best first.</summary>
    public static IEnumerable<string> Of(Outlook? outlook, LakeFolder folder, UnitSystem units)
    {
        if (outlook is null) yield break;
        List<(double Share, string Words)> worth = [];
        ArmOutlook lake = outlook.Lake;
        if (lake.ThermoclineM is { Sd: > 0.1 } layer)
        {
            double after = After(layer.Sd, HazeSdM);
            worth.Add((Gain(layer.Sd, HazeSdM), units.Speech.Say($"The depth of the haze on the sounder over deep water: it would narrow the thermocline from {Half(layer.Sd, units)} either way to about {Half(after, units)}, and the belt with it.")));
        }

        if (lake.OxygenFloorM is { Sd: > 0.1 } floor && !folder.Readings.Any(r => r.Kind == ReadingKind.Oxygen))
            worth.Add((Gain(floor.Sd, OxygenSdM), units.Speech.Say($"An oxygen reading just under the thermocline: nothing measured says yet where it runs out, and the reckoned depth is good to {Half(floor.Sd, units)} either way.")));
        if (lake.TurnoverInDays is { Sd: > 1 } turn && lake.Profile.Count > 0)
        {
            Spread deepC = lake.Profile[^1].TempC;
            double sdC = (deepC.P90 - deepC.P10) / 2.563;
            worth.Add((Gain(sdC, DeepTempSdC), units.Speech.Say(
                $"A thermometer lowered to the deep water: its temperature sets when the lake turns, which is open by {1.28 * turn.Sd:0} days either way; the deep water is known to {DegreesText(1.28 * sdC, units)} either way.")));
        }

        if (!folder.Readings.Concat(folder.Secchi).Any(r => r.Kind == ReadingKind.Secchi) && folder.SiteOrNull?.SecchiM is null)
            worth.Add((0.4, units.Speech.Plain("A Secchi depth: clarity sets how deep light and warmth go and which colours show, and none is on file.")));
        foreach ((double share, string words) in worth.OrderByDescending(w => w.Share))
            if (share > 0.1) yield return words;
    }

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

    private static double After(double sd, double readingSd) => sd * readingSd / Math.Sqrt((sd * sd) + (readingSd * readingSd));

    private static double Gain(double sd, double readingSd) => 1 - (After(sd, readingSd) / sd);

    private static string Half(double sdM, UnitSystem units) => units.Depth(1.28 * sdM);

    private static string DegreesText(double rangeC, UnitSystem units) => units.IsMetric
        ? units.Speech.Number(rangeC, "0.0") + " °C"
        : units.Speech.Number(1.8 * rangeC, "0.0") + " °F";
}
