using System.Globalization;
using SecondShore.Engine.Season;
using SecondShore.Formats.Lake;
using SecondShore.Formats.Text;

namespace SecondShore.Formats.Writers;

/// <summary>What the lake folder's CSV files say: weather, and the rows added to readings and log. Reading a text back gives the same values.</summary>
public static class LakeCsv
{
    /// <summary>Text of weather.csv or climate/YYYY.csv; columns that the table lacks are left out.</summary>
    public static string Weather(WeatherTable weather)
    {
        ArgumentNullException.ThrowIfNull(weather);
        (string Header, double[]? Values, double Scale)[] columns =
        [
            ("air_temp_c", weather.AirTempC, 1), ("relative_humidity_pct", weather.RelativeHumidity, 100), ("wind_speed_m_s", weather.WindMps, 1),
            ("wind_dir_deg", weather.WindFromDeg, 1), ("wind_gust_m_s", weather.GustMps, 1), ("shortwave_w_m2", weather.ShortwaveWPerM2, 1),
            ("longwave_w_m2", weather.LongwaveWPerM2, 1), ("cloud_fraction", weather.CloudFraction, 1), ("precip_mm_h", weather.PrecipitationMmPerH, 1),
        ];
        (string Header, double[]? Values, double Scale)[] held = [.. columns.Where(c => c.Values is not null)];
        CsvText text = new(["time", .. held.Select(c => c.Header)]);
        for (int i = 0; i < weather.Count; i++)
        {
            text.Cell(weather.TimesUtc[i]);
            // A share times a hundred picks up a stray last digit; ten digits are more than any instrument has.
            foreach (var column in held) text.Cell(column.Scale == 1 ? column.Values![i] : Math.Round(column.Values![i] * column.Scale, 10));
            text.End();
        }

        return text.ToString();
    }

    /// <summary>Text of log.csv.</summary>
    public static string Log(IEnumerable<LogRow> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        CsvText text = new(LogHeaders);
        foreach (LogRow row in rows)
        {
            foreach (string header in LogHeaders) text.Cell(LogCell(row, header));
            text.End();
        }

        return text.ToString();
    }

    /// <summary>Columns of a new readings.csv.</summary>
    internal static string[] ReadingHeaders { get; } =
        ["time", "latitude_deg", "longitude_deg", "haze_depth_m", "surface_temp_c", "secchi_m", "depth_m", "temp_c", "oxygen_mg_l", "note", "accuracy_m"];

    /// <summary>Columns of a new log.csv.</summary>
    internal static string[] LogHeaders { get; } =
    [
        "time", "kind", "effort_min", "count", "latitude_deg", "longitude_deg", "spot", "form", "bottom_depth_m", "step_depth_m", "surface_temp_c",
        "secchi_m", "wind_speed_m_s", "wind_dir_deg", "sky", "bait", "jig", "jig_weight_g", "trailer", "colour", "line", "presentation",
        "speed_m_s", "species", "fish_length_m", "fish_weight_g", "note", "id", "replaces",
        "bites", "pass", "layer_depth_m", "wind_change_h", "sighted", "sighted_depth_m", "sighted_where", "ate", "accuracy_m",
    ];

    /// <summary>What a reading says under a column; empty for a column it has nothing for.</summary>
    internal static string ReadingCell(Reading reading, string header)
    {
        return header switch
        {
            "time" => CsvText.TimeText(reading.At),
            "latitude_deg" => NumberText.Format(reading.Place?.LatDeg),
            "longitude_deg" => NumberText.Format(reading.Place?.LonDeg),
            "haze_depth_m" => If(ReadingKind.HazeDepth),
            "surface_temp_c" => If(ReadingKind.SurfaceTemperature),
            "secchi_m" => If(ReadingKind.Secchi),
            "temp_c" => If(ReadingKind.Temperature),
            "oxygen_mg_l" => If(ReadingKind.Oxygen),
            "depth_m" => NumberText.Format(reading.DepthM),
            _ => "",
        };

        string If(ReadingKind kind) => reading.Kind == kind ? NumberText.Format(reading.Value) : "";
    }

    /// <summary>What a log row says under a column; empty for a column it has nothing for.</summary>
    internal static string LogCell(LogRow row, string header) => header switch
    {
        "time" => CsvText.TimeText(row.At),
        "kind" => row.Kind.ToString().ToLowerInvariant(),
        "effort_min" => NumberText.Format(row.Minutes),
        "count" => row.Count.ToString(CultureInfo.InvariantCulture),
        "latitude_deg" => NumberText.Format(row.Place?.LatDeg),
        "longitude_deg" => NumberText.Format(row.Place?.LonDeg),
        "spot" => row.Spot,
        "form" => row.Form,
        "bottom_depth_m" => NumberText.Format(row.BottomDepthM),
        "step_depth_m" => NumberText.Format(row.StepDepthM),
        "surface_temp_c" => NumberText.Format(row.SurfaceTempC),
        "secchi_m" => NumberText.Format(row.SecchiM),
        "wind_speed_m_s" => NumberText.Format(row.WindMps),
        "wind_dir_deg" => NumberText.Format(row.WindFromDeg),
        "sky" => row.Sky,
        "bait" => row.Bait,
        "jig" => row.Jig,
        "jig_weight_g" => NumberText.Format(row.JigWeightG),
        "trailer" => row.Trailer,
        "colour" => row.Colour,
        "line" => row.FishingLine,
        "presentation" => row.Presentation,
        "speed_m_s" => NumberText.Format(row.SpeedMps),
        "species" => row.Species,
        "fish_length_m" => NumberText.Format(row.FishLengthM),
        "fish_weight_g" => NumberText.Format(row.FishWeightG),
        "note" => row.Note,
        "id" => row.Id,
        "replaces" => row.Replaces,
        "bites" => row.Bites?.ToString(CultureInfo.InvariantCulture) ?? "",
        "pass" => row.Pass?.ToString(CultureInfo.InvariantCulture) ?? "",
        "layer_depth_m" => NumberText.Format(row.LayerDepthM),
        "wind_change_h" => NumberText.Format(row.SinceWindChangeH),
        "sighted" => row.Sighted,
        "sighted_depth_m" => NumberText.Format(row.SightedDepthM),
        "sighted_where" => row.SightedWhere,
        "ate" => row.Ate,
        "accuracy_m" => NumberText.Format(row.AccuracyM),
        _ => "",
    };
}
