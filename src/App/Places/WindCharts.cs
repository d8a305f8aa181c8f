using System.Text.Json;
using SecondShore.App.Compute.Views;
using SecondShore.App.Words;

namespace SecondShore.App.Places;

/// <summary>Chart data of the Wind place, in the user's units.</summary>
internal static class WindCharts
{
    private static readonly int MostBars = 30;

    /// <summary>Wind by hour about the chosen hour, at most thirty bars.</summary>
    public static string Strip(WindView wind, int chosen, Wording w)
    {
        int every = Math.Max(1, (int)Math.Ceiling((double)wind.Hours.Count / MostBars));
        List<WindHour> bars = [];
        for (int i = 0; i < wind.Hours.Count; i += every)
        {
            WindHourView hour = wind.Hours[i];
            bars.Add(new WindHour(w.Hour(hour.At, i == 0 || w.AtLake(hour.At).Hour == 12), w.WindFrom(hour.WindMps), w.WindFrom(hour.GustMps), hour.FromDeg, hour.Dark,
                chosen >= i && chosen < i + every));
        }

        WindChart chart = new(
            w["day.wind.aria", w.Wind(wind.Hours.Min(h => h.WindMps)), w.Wind(wind.Hours.Max(h => h.WindMps)), w.Wind(wind.Hours.Max(h => h.GustMps))], bars, [], false);
        return JsonSerializer.Serialize(chart, ViewsJson.Default.WindChart);
    }
}
