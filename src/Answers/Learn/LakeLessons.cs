using SecondShore.Engine.Core.Words;
using SecondShore.Engine.Season;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Learn;

/// <summary>What the log taught about the lake and the season, in sentences no surer than the data.</summary>
internal static class LakeLessons
{
    public static IEnumerable<string> Of(IReadOnlyList<FactorRates> tables, LakeFolder folder, Outlook? outlook, UnitSystem units)
    {
        if (Layer(folder, units) is { } layer) yield return layer;
        if (Reckoned(folder, outlook, units) is { } reckoned) yield return reckoned;
        foreach (FactorRates table in tables)
        {
            if (table.Factor is not ("layer" or "form" or "spot" or "wind change")) continue;
            if (Best(table, units.Speech) is { } best) yield return best;
        }
    }

    // How the haze moved over the season, from first to last day it was seen.
    private static string? Layer(LakeFolder folder, UnitSystem units)
    {
        (DateOnly Day, double DepthM)[] days =
        [
            .. LogMapper.Haze(folder).GroupBy(h => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(h.At, folder.TimeZone).DateTime))
                .Select(g => (g.Key, Median([.. g.Select(h => h.DepthM)]))).OrderBy(d => d.Key),
        ];
        if (days.Length == 0) return null;
        if (days.Length == 1) return units.Speech.Say($"The haze was seen on one day, {Date(days[0].Day, units.Speech)}, at {units.Depth(days[0].DepthM)}: one day shows a depth, not a movement.");
        (DateOnly Day, double DepthM) first = days[0], last = days[^1];
        double movedM = last.DepthM - first.DepthM, weeks = (last.Day.DayNumber - first.Day.DayNumber) / 7.0;
        Speech speech = units.Speech;
        string from = units.Depth(first.DepthM), to = units.Depth(last.DepthM), began = Date(first.Day, speech), ended = Date(last.Day, speech);
        string only = days.Length == 2 ? speech.Plain("; two days are two days") : "";
        return speech.Say($"The haze was seen on {days.Length} days, from {from} on {began} to {to} on {ended}: {Moved(movedM, weeks, units)}{only}.");
    }

    private static string Moved(double movedM, double weeks, UnitSystem units)
    {
        Speech speech = units.Speech;
        if (Math.Abs(movedM) < 0.5) return speech.Plain("it held its depth within what a sounder shows");
        string by = units.Depth(Math.Abs(movedM)), way = movedM > 0 ? speech.Say($"deeper by {by}") : speech.Say($"shallower by {by}");
        return weeks >= 1 ? speech.Say($"{way}, {units.Depth(Math.Abs(movedM) / weeks)} a week") : way;
    }

    private static string? Reckoned(LakeFolder folder, Outlook? outlook, UnitSystem units)
    {
        if (outlook?.Lake.ThermoclineM is not { } law || LogMapper.Haze(folder) is not { Length: > 0 } haze) return null;
        (DateTimeOffset at, double depthM) = haze[^1];
        if ((outlook.At - at).Duration() > TimeSpan.FromDays(10)) return null;
        double below = law.ShareBelow(depthM);
        string depth = units.Depth(depthM), range = units.DepthRange(law.Spread.P10, law.Spread.P90);
        string day = Date(DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(at, folder.TimeZone).DateTime), units.Speech);
        return below is >= 0.1 and <= 0.9
            ? units.Speech.Say($"The last haze seen, {depth} on {day}, agrees with the outlook's range of {range}.")
            : units.Speech.Say($"The last haze seen, {depth} on {day}, lies outside the outlook's range of {range}.");
    }

    private static string? Best(FactorRates table, Speech speech)
    {
        LevelRate[] fished = [.. table.Rows.Where(r => r.Rate.HoursH > 0.2)];
        if (fished.Length < 2) return null;
        LevelRate best = fished[0];
        int bites = fished.Sum(r => r.Rate.BitesCount);
        string gave = LearnWords.Bites(best.Rate.BitesCount, speech), hours = LearnWords.Hours(best.Rate.HoursH, speech);
        string range = LearnWords.Range(best.Rate.RatePerH, speech), chance = LearnWords.Chance(best.Rate.BestChance, speech);
        string caution = bites < 6
            ? speech.Say($"; {LearnWords.Bites(bites, speech)} cannot say more than that")
            : best.Rate.BestChance < 0.6 ? speech.Plain("; the others are nearly as likely") : "";
        return speech.Say($"{table.Heading}: {best.Words} gave {gave} in {hours}, believed {range} an hour, the best of those fished with a chance of {chance}{caution}.");
    }

    private static double Median(double[] values)
    {
        Array.Sort(values);
        return values.Length % 2 == 1 ? values[values.Length / 2] : 0.5 * (values[(values.Length / 2) - 1] + values[values.Length / 2]);
    }

    internal static string Date(DateOnly day, Speech speech) => speech.Say($"{day:d MMM}");
}
