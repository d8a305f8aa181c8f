using System.Globalization;
using System.Text;
using SecondShore.Engine.Season;

namespace SecondShore.Demo.Weather;

/// <summary>Writes weather as the lake folder's CSV.</summary>
internal static class WeatherText
{
    private static readonly CultureInfo Plain = CultureInfo.InvariantCulture;

    /// <summary>Every column: this season.</summary>
    public static byte[] Full(WeatherSeries weather)
    {
        StringBuilder text = new("time,air_temp_c,relative_humidity_pct,wind_speed_m_s,wind_dir_deg,wind_gust_m_s,shortwave_w_m2,longwave_w_m2,cloud_fraction,precip_mm_h\n");
        for (int i = 0; i < weather.Count; i++)
        {
            Common(text, weather, i);
            text.Append(Plain, $",{weather.GustMps[i]:0.#},{weather.ShortwaveWPerM2[i]:0},{weather.LongwaveWPerM2[i]:0},{weather.CloudFraction[i]:0.##},{weather.PrecipitationMmPerH[i]:0.#}\n");
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    /// <summary>What a lake column needs, rounded short: past years.</summary>
    public static byte[] Short(WeatherSeries weather)
    {
        StringBuilder text = new("time,air_temp_c,relative_humidity_pct,wind_speed_m_s,wind_dir_deg,shortwave_w_m2,longwave_w_m2\n");
        for (int i = 0; i < weather.Count; i++)
        {
            Common(text, weather, i);
            text.Append(Plain, $",{weather.ShortwaveWPerM2[i]:0},{weather.LongwaveWPerM2[i]:0}\n");
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private static void Common(StringBuilder text, WeatherSeries weather, int i) => text
        .Append(weather.TimeAt(i).UtcDateTime.ToString("yyyy-MM-ddTHH:mm", Plain))
        .Append(Plain, $"Z,{Math.Round(weather.AirTempC[i], 1) + 0.0:0.#},{weather.RelativeHumidity[i] * 100:0},{weather.WindMps[i]:0.#},{weather.WindFromDeg[i]:0}");
}
