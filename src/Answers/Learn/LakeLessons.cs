using System.Globalization;
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
            if (Best(table) is { } best) yield return best;
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
        if (days.Length == 1) return $"The haze was seen on one day, {Date(days[0].Day)}, at {units.Depth(days[0].DepthM)}: one day shows a depth, not a movement.";
        (DateOnly Day, double DepthM) first = days[0], last = days[^1];
        double movedM = last.DepthM - first.DepthM, weeks = (last.Day.DayNumber - first.Day.DayNumber) / 7.0;
        string how = Math.Abs(movedM) < 0.5
            ? "it held its depth within what a sounder shows"
            : $"{(movedM > 0 ? "deeper" : "shallower")} by {units.Depth(Math.Abs(movedM))}{(weeks >= 1 ? $", {units.Depth(Math.Abs(movedM) / weeks)} a week" : "")}";
        string only = days.Length == 2 ? "; two days are two days" : "";
        return $"The haze was seen on {days.Length} days, from {units.Depth(first.DepthM)} on {Date(first.Day)} to {units.Depth(last.DepthM)} on {Date(last.Day)}: {how}{only}.";
    }

    private static string? Reckoned(LakeFolder folder, Outlook? outlook, UnitSystem units)
    {
        if (outlook?.Lake.ThermoclineM is not { } law || LogMapper.Haze(folder) is not { Length: > 0 } haze) return null;
        (DateTimeOffset at, double depthM) = haze[^1];
        if ((outlook.At - at).Duration() > TimeSpan.FromDays(10)) return null;
        double below = law.ShareBelow(depthM);
        string agrees = below is >= 0.1 and <= 0.9 ? "agrees with" : "lies outside";
        return $"The last haze seen, {units.Depth(depthM)} on {Date(DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(at, folder.TimeZone).DateTime))}, {agrees} the outlook's range of {units.DepthRange(law.Spread.P10, law.Spread.P90)}.";
    }

    private static string? Best(FactorRates table)
    {
        LevelRate[] fished = [.. table.Rows.Where(r => r.Rate.HoursH > 0.2)];
        if (fished.Length < 2) return null;
        LevelRate best = fished[0];
        int bites = fished.Sum(r => r.Rate.BitesCount);
        string odds = $"the best of those fished with a chance of {LearnWords.Chance(best.Rate.BestChance)}";
        string heading = table.Heading;
        string caution = bites < 6
            ? $"; {LearnWords.Bites(bites)} cannot say more than that"
            : best.Rate.BestChance < 0.6 ? "; the others are nearly as likely" : "";
        return string.Create(CultureInfo.InvariantCulture,
            $"{heading}: {best.Words} gave {LearnWords.Bites(best.Rate.BitesCount)} in {LearnWords.Hours(best.Rate.HoursH)}, believed {LearnWords.Range(best.Rate.RatePerH)} an hour, {odds}{caution}.");
    }

    private static double Median(double[] values)
    {
        Array.Sort(values);
        return values.Length % 2 == 1 ? values[values.Length / 2] : 0.5 * (values[(values.Length / 2) - 1] + values[values.Length / 2]);
    }

    internal static string Date(DateOnly day) => day.ToString("d MMM", CultureInfo.InvariantCulture);
}
