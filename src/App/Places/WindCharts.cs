using System.Text.Json;
using SecondShore.Answers.Documents;
using SecondShore.Answers.Wind;
using SecondShore.App.Shell;
using SecondShore.App.Words;
using SecondShore.Desk.Views;

namespace SecondShore.App.Places;

/// <summary>Chart data of the Wind place, in the user's units.</summary>
internal static class WindCharts
{
    private static readonly int MostBars = 30;

    /// <summary>The thermocline at a place; empty without layers.</summary>
    public static string Hours(PointSeries point, int chosen, Wording w)
    {
        if (point.AtRestM is not { } rest) return "";
        string bottom = w.Depth(point.DepthM), atRest = w.Depth(rest.P50);
        SpreadDocument[] depths = [.. point.Hours.Select(h => h.ThermoclineM!)];
        HoursChart chart = new(
            w["wind.point.aria", w.Depth(depths.Min(d => d.P50)), w.Depth(depths.Max(d => d.P50)), bottom],
            w.Units.DepthFrom(point.DepthM), w["wind.point.bottom", bottom], w.Units.DepthFrom(rest.P50), w["wind.against", atRest],
            [.. point.Hours.Select((h, i) => new DepthHour(w.Hour(h.Time, i == 0 || w.AtLake(h.Time).Hour == 12), w.Units.DepthFrom(depths[i].P10), w.Units.DepthFrom(depths[i].P50),
                w.Units.DepthFrom(depths[i].P90), i == chosen))]);
        return JsonSerializer.Serialize(chart, PageJson.Default.HoursChart);
    }

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
        return JsonSerializer.Serialize(chart, PageJson.Default.WindChart);
    }
}
