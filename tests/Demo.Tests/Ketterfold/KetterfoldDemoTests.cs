using System.Globalization;
using System.Text;
using System.Text.Json;
using SecondShore.Demo.Ketterfold;

namespace SecondShore.Demo.Tests.Ketterfold;

public class KetterfoldDemoTests
{
    private static readonly Lazy<KetterfoldLake> Built = new(() => KetterfoldDemo.Build(KetterfoldDemo.UsualSeed));

    [Fact]
    public void The_folder_holds_every_file_and_stays_small()
    {
        IReadOnlyDictionary<string, byte[]> files = Built.Value.Files;
        foreach (string name in (string[])["lake.json", "survey.asc", "shoreline.geojson", "weather.csv", "level.csv", "readings.csv", "profiles.csv", "cover.csv", "tackle.json", "log.csv", "truth.geojson"])
            Assert.True(files.ContainsKey(name), name);
        Assert.Equal(15, files.Keys.Count(k => k.StartsWith("climate/", StringComparison.Ordinal)));
        Assert.InRange(files.Values.Sum(b => (long)b.Length), 1_000_000, 6_500_000);
    }

    [Fact]
    public void The_lake_is_as_long_and_deep_as_told_and_says_that_it_is_invented()
    {
        using JsonDocument json = JsonDocument.Parse(Built.Value.Files["lake.json"]);
        Assert.True(json.RootElement.GetProperty("invented").GetBoolean());
        Assert.InRange(json.RootElement.GetProperty("max_depth_m").GetDouble(), 54, 64);
        Assert.InRange(json.RootElement.GetProperty("surface_area_m2").GetDouble(), 8e6, 25e6);
        Assert.Equal(3, json.RootElement.GetProperty("ramps").GetArrayLength());
        foreach (string name in (string[])["shoreline.geojson", "truth.geojson", "tackle.json"]) JsonDocument.Parse(Built.Value.Files[name]).Dispose();
    }

    [Fact]
    public void Weather_is_hourly_warm_in_July_cool_in_March_and_dark_at_midnight()
    {
        string[] rows = Encoding.UTF8.GetString(Built.Value.Files["weather.csv"]).Split('\n', StringSplitOptions.RemoveEmptyEntries)[1..];
        double Mean(string month, int column) => rows.Where(r => r.StartsWith(month, StringComparison.Ordinal)).Average(r => double.Parse(r.Split(',')[column], CultureInfo.InvariantCulture));
        Assert.InRange(Mean("2026-03", 1), 0, 12);
        Assert.InRange(Mean("2026-07", 1), 20, 30);
        Assert.InRange(Mean("2026-07", 6), 180, 340);
        Assert.InRange(Mean("2026-03", 2), 35, 85);
        Assert.InRange(Mean("2026-09", 3), 1.5, 6);
        Assert.All(rows.Where(r => r.Contains("T06:00Z", StringComparison.Ordinal)), r => Assert.Equal("0", r.Split(',')[6]));
        DateTimeOffset first = DateTimeOffset.Parse(rows[0].Split(',')[0], CultureInfo.InvariantCulture), last = DateTimeOffset.Parse(rows[^1].Split(',')[0], CultureInfo.InvariantCulture);
        Assert.Equal(rows.Length - 1, (last - first).TotalHours);
        Assert.Equal(10, (last.AddHours(1) - KetterfoldDemo.MeasuredUntil).TotalDays);
    }

    [Fact]
    public void The_water_is_layered_in_autumn_and_its_haze_deepens_from_July_to_October()
    {
        string[][] Rows(string name) => [.. Encoding.UTF8.GetString(Built.Value.Files[name]).Split('\n', StringSplitOptions.RemoveEmptyEntries)[1..].Select(r => r.Split(','))];
        double[][] cast = [.. Rows("profiles.csv").Select(r => new[] { double.Parse(r[1], CultureInfo.InvariantCulture), double.Parse(r[2], CultureInfo.InvariantCulture) })];
        Assert.True(cast[0][1] - cast[^1][1] > 8, "a warm top over cold depths in late September");
        double[] haze = [.. Rows("readings.csv").Select(r => double.Parse(r[3], CultureInfo.InvariantCulture))];
        Assert.InRange(haze[^1], 7, 12);
        Assert.True(haze[^1] > haze[1] + 2, "the thermocline sinks as the lake cools");
        double step = cast.Skip(1).Zip(cast, (b, a) => (DepthM: 0.5 * (a[0] + b[0]), Fall: (a[1] - b[1]) / (b[0] - a[0]))).MaxBy(s => s.Fall).DepthM;
        Assert.Equal(step, haze[^3], 2.0);
    }

    [Fact]
    public void The_same_seed_gives_the_same_bytes()
    {
        KetterfoldLake again = KetterfoldDemo.Build(KetterfoldDemo.UsualSeed, null, TestContext.Current.CancellationToken);
        foreach ((string name, byte[] bytes) in Built.Value.Files) Assert.True(bytes.AsSpan().SequenceEqual(again.Files[name]), name);
    }
}
