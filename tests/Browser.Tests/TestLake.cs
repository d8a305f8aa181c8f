using System.Globalization;
using System.Text;
using Microsoft.Playwright;

namespace SecondShore.Browser.Tests;

/// <summary>An invented bowl with a point and a hump, as what a newcomer may drop: soundings in feet, a summer's weather, and where it was measured until.</summary>
/// <remarks>The weather fixes the day, so that the lake is layered whenever the tests run, and blows in the afternoon, so that the layer tips.</remarks>
internal static class TestLake
{
    private static readonly DateTimeOffset First = new(2026, 5, 1, 0, 0, 0, TimeSpan.Zero);
    private static readonly int Days = 146;

    /// <summary>Its name, as the tests give it.</summary>
    public static readonly string Name = "Test Bowl";

    /// <summary>Its files.</summary>
    public static FilePayload[] Files() =>
    [
        File("bowl.csv", Survey()),
        File("weather.csv", Weather()),
        File("lake.json", """{ "time_zone": "America/Chicago", "measured_until": "2026-09-15T12:00:00Z", "secchi_m": 3 }"""),
    ];

    private static FilePayload File(string name, string text) => new() { Name = name, MimeType = "text/plain", Buffer = Encoding.UTF8.GetBytes(text) };

    private static string Survey()
    {
        StringBuilder text = new("lat,lon,depth_ft\n");
        for (int i = -24; i <= 24; i++)
        {
            for (int j = -24; j <= 24; j++)
            {
                double r = Math.Sqrt((i * i) + (j * j)) / 24.0;
                if (r > 1) continue;
                double bowl = 68 * (1 - (r * r));
                double hump = 30 * Math.Exp(-(((i - 6) * (i - 6)) + ((j - 5) * (j - 5))) / 14.0);
                double point = i < 0 ? 24 * Math.Exp(-(j * j) / 10.0) * Math.Min(1, -i / 14.0) : 0;
                text.Append(string.Create(CultureInfo.InvariantCulture, $"{39.5 + (i * 0.0004):0.000000},{-97.2 + (j * 0.0005):0.000000},{Math.Max(0, bowl - hump - point):0.0}\n"));
            }
        }

        return text.ToString();
    }

    private static string Weather()
    {
        StringBuilder text = new("time,air_temp_c,relative_humidity_pct,wind_speed_m_s,wind_dir_deg,shortwave_w_m2,cloud_fraction\n");
        for (int hour = 0; hour < 24 * Days; hour++)
        {
            DateTimeOffset at = First.AddHours(hour);
            double day = hour / 24.0, season = Math.Sin(Math.PI * (day + 15) / 190), sun = Math.Cos(2 * Math.PI * (at.Hour - 19) / 24.0);
            double airC = 13 + (13 * season) + (5 * sun), windMps = 2.5 + (2 * Math.Sin(day * 1.7)) + Math.Max(0, 4.5 * sun), shortwave = Math.Max(0, sun) * (520 + (280 * season));
            text.Append(string.Create(CultureInfo.InvariantCulture, $"{at:yyyy-MM-ddTHH:mm}Z,{airC:0.0},62,{Math.Max(0.4, windMps):0.0},{(230 + (40 * Math.Sin(day))) % 360:0},{shortwave:0},0.3\n"));
        }

        return text.ToString();
    }
}
