using System.Text.Json;
using SecondShore.App.Shell;
using SecondShore.App.Words;
using SecondShore.Desk.Views;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Season;

namespace SecondShore.App.Places;

/// <summary>Chart data of the Lake place, in the user's units.</summary>
internal static class LakeCharts
{
    /// <summary>Temperature by depth.</summary>
    public static string Profile(OutlookView o, Wording w)
    {
        double[] p10 = [.. o.TempC.Select(t => Temp(t.P10))], p50 = [.. o.TempC.Select(t => Temp(t.P50))], p90 = [.. o.TempC.Select(t => Temp(t.P90))];
        double[] depth = [.. o.DepthM.Select(w.Units.DepthFrom)];
        ProfileChart chart = new(
            Aria(o, w), w.Units.TemperatureUnit, Math.Min(depth[^1], ShownDepth(o, w)), depth, p10, p50, p90,
            [.. o.Measured.Select(m => new ReadingDot(w.Units.DepthFrom(m.DepthM), Temp(m.TempC)))],
            o.State != LayerState.Mixed && o.ThermoclineM is { } t ? Band(t, $"{w.DepthFine(t.P50)} {w.Units.DepthUnit}", w.DepthRange(t.P10, t.P90), w) : null,
            o.OxygenFloorM is { } x ? Band(x, w["chart.oxygen"], w["chart.oxygen.below", w.Depth(x.P50), w.DepthNumber(x.P10), w.DepthNumber(x.P90)], w) : null);
        return JsonSerializer.Serialize(chart, PageJson.Default.ProfileChart);

        double Temp(double tempC) => w.Units.TemperatureFrom(tempC);
    }

    /// <summary>The season by depth and date.</summary>
    public static string Season(OutlookView o, Wording w)
    {
        int days = o.SeasonThermoclineM.Length;
        if (days < 2) return "";
        int today = Math.Clamp(DateOnly.FromDateTime(w.AtLake(o.At).DateTime).DayNumber - o.FirstDay.DayNumber, 0, days - 1);
        (double low, double high) = SeasonRange(o);
        double[] depth = [.. o.DepthM.Select(w.Units.DepthFrom)];
        double[] temps = new double[o.SeasonTempC.Length];
        for (int i = 0; i < temps.Length; i++) temps[i] = Math.Round(w.Units.TemperatureFrom(o.SeasonTempC[i]), 2);
        BandDay?[] course = [.. o.SeasonThermoclineM.Select(s => s is { } m
            ? new BandDay(w.Units.DepthFrom(m.P10), w.Units.DepthFrom(m.P50), w.Units.DepthFrom(m.P90)) : null)];
        (List<TurnoverBar> bars, int from, int to) = Turnover(o, today);
        Spread? turns = o.TurnoverInDays;
        SeasonChart chart = new(
            w["chart.season.aria"], today, w["chart.today"], w["chart.forecast"], "", w[bars.Count > 0 ? "chart.turnover" : "chart.turnover.unseen"],
            days, depth, Math.Min(depth[^1], ShownDepth(o, w)), temps, w.Units.TemperatureFrom(low), w.Units.TemperatureFrom(high), course,
            Months(o, days, w), bars, from, to, turns is { } t && !o.IsRoughGuess ? LakeWords.Day(o, t.P50, w) : "",
            turns is { } r ? w["number.range", LakeWords.Day(o, r.P10, w), LakeWords.Day(o, r.P90, w)] : "");
        return JsonSerializer.Serialize(chart, PageJson.Default.SeasonChart);
    }

    /// <summary>Coldest and warmest of the course, degC.</summary>
    public static (double LowC, double HighC) SeasonRange(OutlookView o)
    {
        float low = float.MaxValue, high = float.MinValue;
        foreach (float t in o.SeasonTempC)
        {
            low = Math.Min(low, t);
            high = Math.Max(high, t);
        }

        return low <= high ? (Math.Floor(low), Math.Ceiling(high)) : (0, 1);
    }

    // Below twice the thermocline (or its spread) nothing changes: the chart ends there.
    private static double ShownDepth(OutlookView o, Wording w)
    {
        double deepestM = o.DepthM[^1];
        double wantedM = Math.Max(12, Math.Max(2.2 * (o.ThermoclineM?.P90 ?? 0), 1.25 * (o.OxygenFloorM?.P90 ?? 0)));
        double unit = w.Units.IsMetric ? 5 : 10;
        return Math.Ceiling(w.Units.DepthFrom(Math.Min(deepestM, wantedM)) / unit) * unit;
    }

    private static BandLabel Band(Spread m, string label, string range, Wording w) =>
        new(w.Units.DepthFrom(m.P10), w.Units.DepthFrom(m.P50), w.Units.DepthFrom(m.P90), label, range);

    private static string Aria(OutlookView o, Wording w) => o.State != LayerState.Mixed && o.ThermoclineM is { } m
        ? w["chart.profile.aria", w.TempNumber(o.TempC[0].P50), w.Units.TemperatureUnit, w.TempNumber(o.TempC[^1].P50), w.SpokenDepths(m)]
        : w["chart.profile.aria.mixed", w.TempNumber(o.TempC[0].P50), w.Units.TemperatureUnit, w.TempNumber(o.TempC[^1].P50)];

    private static (List<TurnoverBar> Bars, int From, int To) Turnover(OutlookView o, int today)
    {
        SortedDictionary<int, int> counts = [];
        foreach (double day in o.TurnoverDays)
        {
            int at = today + (int)Math.Round(day);
            counts[at] = counts.GetValueOrDefault(at) + 1;
        }

        List<TurnoverBar> bars = [.. counts.Select(c => new TurnoverBar(c.Key, c.Value / (double)o.TurnoverDays.Count))];
        return o.TurnoverInDays is { } t ? (bars, today + (int)Math.Round(t.P10), today + (int)Math.Round(t.P90)) : (bars, 0, 0);
    }

    private static List<MonthTick> Months(OutlookView o, int days, Wording w)
    {
        List<MonthTick> months = [];
        for (int day = 0; day < days; day++)
        {
            DateOnly date = o.FirstDay.AddDays(day);
            if (date.Day == 1) months.Add(new MonthTick(day, w.Locale.Months[date.Month - 1].TrimEnd('.')));
        }

        return months;
    }
}
