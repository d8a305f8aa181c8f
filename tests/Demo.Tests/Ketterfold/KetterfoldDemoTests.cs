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
        Assert.InRange(files.Values.Sum(b => (long)b.Length), 1_000_000, 6_000_000);
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
    public void The_same_seed_gives_the_same_bytes()
    {
        KetterfoldLake again = KetterfoldDemo.Build(KetterfoldDemo.UsualSeed, null, TestContext.Current.CancellationToken);
        foreach ((string name, byte[] bytes) in Built.Value.Files) Assert.True(bytes.AsSpan().SequenceEqual(again.Files[name]), name);
    }
}
