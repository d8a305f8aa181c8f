using System.Text.Json;
using SecondShore.App.Shell;
using SecondShore.App.Words;
using SecondShore.Desk.Views;

namespace SecondShore.App.Places;

/// <summary>Chart data of the Day place, in the user's units.</summary>
internal static class DayCharts
{
    /// <summary>Wind by hour, with the time on stops.</summary>
    public static string Wind(DayView day, Wording w)
    {
        if (day.Hours.Count == 0) return "";
        DateTimeOffset first = day.Hours[0].At;
        double most = day.Hours.Max(h => h.GustMps ?? h.WindMps);
        WindChart chart = new(
            w["day.wind.aria", w.Wind(day.Hours.Min(h => h.WindMps)), w.Wind(day.Hours.Max(h => h.WindMps)), w.Wind(most)],
            [.. day.Hours.Select((h, i) => new WindHour(w.Hour(h.At, i == 0 || w.AtLake(h.At).Hour == 12), w.WindFrom(h.WindMps), h.GustMps is { } g ? w.WindFrom(g) : null, h.FromDeg, h.Dark, false))],
            [.. day.Stops.Select(s => new StayBar(Math.Max(0, (s.Arrive - first).TotalHours), Math.Max(0, (s.Leave - first).TotalHours)))], false);
        return JsonSerializer.Serialize(chart, PageJson.Default.WindChart);
    }
}
