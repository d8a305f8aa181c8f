using System.Globalization;
using System.Text;
using SecondShore.Answers.Documents;
using SecondShore.Answers.Wind;
using SecondShore.Formats.Files;

namespace SecondShore.Answers.Files;

/// <summary>Series at places as a table other programs read.</summary>
public static class PointFiles
{
    /// <summary><c>points.csv</c>: every place, hour and depth; a row for each depth whose current is told.</summary>
    public static ILakeFiles Of(IReadOnlyList<PointSeries> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        StringBuilder text = new("time,latitude_deg,longitude_deg,water_depth_m,thermocline_at_rest_m,thermocline_p10_m,thermocline_p50_m,thermocline_p90_m,"
            + "displacement_p10_m,displacement_p50_m,displacement_p90_m,layer_strength_kg_m3,wind_speed_m_s,wind_dir_deg,wave_height_m,wave_period_s,comfort,depth_m,current_m_s,current_to_deg\n");
        foreach (PointSeries point in points)
        {
            foreach (PointHour hour in point.Hours)
            {
                string row = string.Create(CultureInfo.InvariantCulture,
                    $"{hour.Time:yyyy-MM-ddTHH:mm:sszzz},{point.Lat},{point.Lon},{point.DepthM},{hour.AtRestM?.P50},{Three(hour.ThermoclineM)},{Three(hour.DisplacementM)},{hour.LayerStrengthKgPerM3},")
                    + string.Create(CultureInfo.InvariantCulture, $"{hour.WindMps},{hour.WindFromDeg},{hour.WaveHeightM},{hour.WavePeriodS},{hour.Comfort}");
                foreach (PointCurrent current in hour.Currents)
                    text.Append(CultureInfo.InvariantCulture, $"{row},{current.DepthM},{current.Mps},{current.ToDeg}\n");
            }
        }

        return new MemoryFiles("points", [new("points.csv", Encoding.UTF8.GetBytes(text.ToString()))]);
    }

    private static string Three(SpreadDocument? spread) =>
        spread is null ? ",," : string.Create(CultureInfo.InvariantCulture, $"{spread.P10},{spread.P50},{spread.P90}");
}
