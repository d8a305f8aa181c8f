using SecondShore.Formats.Text;

namespace SecondShore.Formats.Lake;

/// <summary>Reads weather.csv and climate/YYYY.csv.</summary>
internal static class WeatherReader
{
    public static WeatherTable? Read(string file, byte[] bytes, ReadContext context, bool windOnly = false)
    {
        TimedRows? rows = TimedRows.Open(file, bytes, context, TimeSpan.Zero);
        if (rows is null) return null;
        CsvSheet sheet = rows.Sheet;
        CsvColumn?[] columns =
        [
            sheet.Find(Quantity.Temperature, -65, 60, "air_temp", "air_temperature"),
            Humidity(sheet),
            sheet.Find(Quantity.Speed, 0, 90, "wind_speed", "wind"),
            sheet.Find(Quantity.Angle, 0, 360, "wind_dir", "wind_direction", "wind_from"),
            sheet.Find(Quantity.Speed, 0, 120, "wind_gust", "gust"),
            sheet.Find(Quantity.Flux, -10, 1500, "shortwave"),
            sheet.Find(Quantity.Flux, 40, 750, "longwave"),
            Cloud(sheet),
            sheet.Find(Quantity.RainRate, 0, 400, "precip", "rain"),
        ];
        if (windOnly && (columns[2] is null || columns[3] is null))
            context.Log.Error(file, "the file needs the columns time, wind_speed_m_s (or wind_speed_mph) and wind_dir_deg.");
        else if (!windOnly && columns[0] is null) context.Log.Warn(file, "the file has no air_temp_c (or air_temp_f) column; the season cannot be run on it.");
        List<DateTimeOffset> times = new(sheet.Count);
        List<double>?[] values = [.. columns.Select(c => c is null ? null : new List<double>(sheet.Count))];
        bool sorted = true;
        foreach ((int row, DateTimeOffset at) in rows.Rows())
        {
            if (times.Count > 0 && at <= times[^1]) sorted = false;
            times.Add(at);
            for (int c = 0; c < columns.Length; c++) values[c]?.Add(sheet.Number(row, columns[c]));
        }

        double[]?[] arrays = [.. values.Select(v => v?.ToArray())];
        DateTimeOffset[] stamps = [.. times];
        if (!sorted) Sort(file, ref stamps, arrays, context);
        if (stamps.Length == 0) context.Log.Error(file, "no row of the file can be used.");
        if (arrays[5] is double[] shortwave) for (int i = 0; i < shortwave.Length; i++) if (shortwave[i] < 0) shortwave[i] = 0;
        if (arrays[1] is double[] humidity) for (int i = 0; i < humidity.Length; i++) if (humidity[i] > 1) humidity[i] = 1;
        return stamps.Length == 0 ? null : new WeatherTable
        {
            File = file,
            TimesUtc = stamps,
            AirTempC = arrays[0],
            RelativeHumidity = arrays[1],
            WindMps = arrays[2],
            WindFromDeg = arrays[3],
            GustMps = arrays[4],
            ShortwaveWPerM2 = arrays[5],
            LongwaveWPerM2 = arrays[6],
            CloudFraction = arrays[7],
            PrecipitationMmPerH = arrays[8],
        };
    }

    private static CsvColumn? Humidity(CsvSheet sheet) => sheet.Find(Quantity.Share, 0, 1.06, "relative_humidity", "humidity");

    private static CsvColumn? Cloud(CsvSheet sheet) => sheet.Find(Quantity.Share, 0, 1, "cloud", "cloud_cover", "cloud_fraction");

    private static void Sort(string file, ref DateTimeOffset[] times, double[]?[] arrays, ReadContext context)
    {
        DateTimeOffset[] seen = times;
        int[] order = [.. Enumerable.Range(0, seen.Length).OrderBy(i => seen[i])];
        List<int> kept = new(order.Length);
        foreach (int i in order)
            if (kept.Count == 0 || seen[i] > seen[kept[^1]]) kept.Add(i);
        int twice = order.Length - kept.Count;
        if (twice > 0) context.Log.Warn(file, $"the rows are not in order of time or repeat it; they were sorted, and {twice} rows with a time already given are not used.");
        else context.Log.Warn(file, "the rows are not in order of time; they were sorted.");
        times = [.. kept.Select(i => seen[i])];
        for (int c = 0; c < arrays.Length; c++)
            if (arrays[c] is double[] values) arrays[c] = [.. kept.Select(i => values[i])];
    }
}
