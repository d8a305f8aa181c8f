using System.Globalization;
using System.Text.Json;
using SecondShore.Answers.Scoring;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Season;

namespace SecondShore.Bench;

/// <summary>Reads the measured lakes' plain CSV.</summary>
internal static class SeasonLakes
{
    public static List<ScoredLake> ReadAll(string folder) =>
        [.. Directory.GetDirectories(folder).Order(StringComparer.Ordinal).Where(d => File.Exists(Path.Combine(d, "lake.json"))).Select(Read)];

    public static ScoredLake Read(string folder)
    {
        using JsonDocument json = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "lake.json")));
        double? Number(string key) => json.RootElement.TryGetProperty(key, out JsonElement e) && e.ValueKind == JsonValueKind.Number ? e.GetDouble() : null;
        Table shape = Table.Read(folder, "hypsography.csv")!;
        Hypsography basin = new(shape.Column("depth_m")!, shape.Column("area_m2")!);
        LakeSite site = new()
        {
            Name = json.RootElement.GetProperty("name").GetString()!,
            Position = new GeoPoint(Number("latitude_deg")!.Value, Number("longitude_deg")!.Value),
            TimeZoneId = "UTC",
            ElevationM = Number("elevation_m") ?? 0,
            SurfaceAreaM2 = Number("surface_area_m2"),
            MaxDepthM = Number("max_depth_m"),
            SecchiM = Number("secchi_m"),
            LightExtinctionPerM = Number("light_extinction_per_m"),
            WindHeightM = Number("wind_measurement_height_m"),
        };
        Table w = Table.Read(folder, "weather.csv")!;
        RawWeather raw = new()
        {
            TimeUtc = w.Times,
            AirTempC = w.Column("air_temp_c"),
            RelativeHumidity = w.Column("relative_humidity_pct")?.Select(v => v / 100).ToArray(),
            WindMps = w.Column("wind_speed_m_s"),
            WindFromDeg = w.Column("wind_dir_deg"),
            ShortwaveWPerM2 = w.Column("shortwave_w_m2"),
            LongwaveWPerM2 = w.Column("longwave_w_m2"),
            CloudFraction = w.Column("cloud_fraction"),
            PrecipitationMmPerH = w.Column("precip_mm_h"),
            WindHeightM = site.WindHeightM,
        };
        return new ScoredLake
        {
            Name = Path.GetFileName(folder),
            Site = site,
            Basin = basin,
            Weather = WeatherPreparation.Prepare(raw, site),
            Profiles = Profiles(Table.Read(folder, "profiles.csv")!),
            Overturns = Overturns(folder),
            Levels = Table.Read(folder, "level.csv") is { } l ? [.. l.Times.Zip(l.Column("below_reference_m")!, (t, v) => new PoolLevel(t, v)).Where(p => double.IsFinite(p.BelowFullPoolM))] : [],
            Flows = Flows(folder),
            Secchi = Table.Read(folder, "secchi.csv") is { } s ? [.. s.Times.Zip(s.Column("secchi_m")!).Where(p => p.Second > 0)] : [],
        };
    }

    private static List<WaterProfile> Profiles(Table table)
    {
        double[] depth = table.Column("depth_m")!, temp = table.Column("temp_c")!;
        double[]? oxygen = table.Column("oxygen_mg_l");
        List<WaterProfile> profiles = [];
        for (int i = 0; i < depth.Length;)
        {
            int j = i;
            while (j < depth.Length && table.Times[j] == table.Times[i]) j++;
            profiles.Add(new WaterProfile(table.Times[i], depth[i..j], temp[i..j], oxygen?[i..j], "profiles.csv"));
            i = j;
        }

        return profiles;
    }

    private static List<MeasuredOverturn> Overturns(string folder)
    {
        List<MeasuredOverturn> list = [];
        foreach (string line in File.ReadLines(Path.Combine(folder, "overturn.csv")).Skip(1))
        {
            string[] c = line.Split(',');
            if (c[2].Length == 0) continue;
            list.Add(new MeasuredOverturn(int.Parse(c[0], CultureInfo.InvariantCulture), DateOnly.Parse(c[2], CultureInfo.InvariantCulture),
                c[3].Length > 0 ? DateOnly.Parse(c[3], CultureInfo.InvariantCulture) : null));
        }

        return list;
    }

    private static List<DailyFlow> Flows(string folder)
    {
        if (Table.Read(folder, "flows.csv") is not { } t) return [];
        double[] q = t.Column("inflow_m3_s")!, c = t.Column("inflow_temp_c")!;
        double[]? o = t.Column("outflow_m3_s");
        return [.. t.Times.Select((at, i) => new DailyFlow(at, q[i], c[i], o?[i] ?? double.NaN))];
    }

    private sealed class Table(string[] header, List<DateTimeOffset> times, List<double[]> columns)
    {
        public List<DateTimeOffset> Times => times;

        public double[]? Column(string name) => Array.IndexOf(header, name) is var i and >= 0 ? columns[i] : null;

        public static Table? Read(string folder, string file)
        {
            string path = Path.Combine(folder, file);
            if (!File.Exists(path)) return null;
            string[] lines = File.ReadAllLines(path);
            string[] header = lines[0].Split(',');
            List<DateTimeOffset> times = [];
            List<double[]> columns = [.. header.Select(_ => new double[lines.Length - 1])];
            for (int r = 1; r < lines.Length; r++)
            {
                string[] c = lines[r].Split(',');
                if (header[0] == "time") times.Add(DateTimeOffset.Parse(c[0], CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal));
                for (int k = 0; k < header.Length; k++)
                    columns[k][r - 1] = k < c.Length && double.TryParse(c[k], NumberStyles.Float, CultureInfo.InvariantCulture, out double v) ? v : double.NaN;
            }

            return new Table(header, times, columns);
        }
    }
}
