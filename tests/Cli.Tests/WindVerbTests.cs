using System.Text.Json;

namespace SecondShore.Cli.Tests;

public class WindVerbTests(DemoLake demo)
{
    [Fact]
    public void It_says_wind_tilt_and_waves_hour_by_hour_and_writes_lines_and_table()
    {
        using TempFolder folder = new();
        Terminal.Run run = Terminal.Do("wind", demo.Lake, "--hours", "6", "--members", "20", "--places", "60", "--out", folder.Path);
        Assert.Equal(ExitCodes.Done, run.Code);
        Assert.Contains("layer tips", run.Out, StringComparison.Ordinal);
        Assert.Contains("wind.geojson", run.Out, StringComparison.Ordinal);
        using JsonDocument lines = JsonDocument.Parse(File.ReadAllText(folder.File("wind.geojson")));
        Assert.Equal(7, lines.RootElement.GetProperty("features").GetArrayLength());
        Assert.All(lines.RootElement.GetProperty("features").EnumerateArray(), f =>
        {
            Assert.Equal("MultiLineString", f.GetProperty("geometry").GetProperty("type").GetString());
            Assert.True(f.GetProperty("properties").GetProperty("length_m").GetDouble() > 1000);
        });
        string[] rows = File.ReadAllLines(folder.File("wind.csv"));
        Assert.StartsWith("time,latitude_deg,longitude_deg,depth_m,thermocline_p10_m", rows[0], StringComparison.Ordinal);
        Assert.Equal(0, (rows.Length - 1) % 7);
        Assert.All(rows, r => Assert.Equal(14, r.Split(',').Length));
    }

    [Fact]
    public void Json_gives_every_hour_and_place_with_its_spread()
    {
        Terminal.Run run = Terminal.Do("wind", demo.Lake, "--hours", "3", "--members", "20", "--places", "40", "--json");
        Assert.Equal(ExitCodes.Done, run.Code);
        using JsonDocument document = JsonDocument.Parse(run.Out);
        JsonElement root = document.RootElement;
        foreach (string key in (string[])["at", "thermocline_at_rest_m", "period_h", "places", "hours", "words", "cautions", "assumed"])
            Assert.True(root.TryGetProperty(key, out _), key);
        int places = root.GetProperty("places").GetArrayLength();
        Assert.InRange(places, 1, 40);
        Assert.Equal(4, root.GetProperty("hours").GetArrayLength());
        foreach (JsonElement hour in root.GetProperty("hours").EnumerateArray())
        {
            Assert.Equal(places, hour.GetProperty("thermocline_p50_m").GetArrayLength());
            for (int i = 0; i < places; i++)
            {
                Assert.True(hour.GetProperty("thermocline_p10_m")[i].GetDouble() <= hour.GetProperty("thermocline_p90_m")[i].GetDouble());
                Assert.InRange(hour.GetProperty("wave_height_m")[i].GetDouble(), 0, 2);
            }
        }
    }

    [Theory]
    [InlineData("--hours", "900")]
    [InlineData("--places", "0")]
    [InlineData("--depth", "deep")]
    [InlineData("--at", "yesterday")]
    public void Options_out_of_range_end_with_2_and_say_what_is_allowed(string option, string value)
    {
        Terminal.Run run = Terminal.Do("wind", demo.Lake, option, value);
        Assert.Equal(ExitCodes.BadUsage, run.Code);
        Assert.Contains(value, run.Err, StringComparison.Ordinal);
    }

    [Fact]
    public void A_time_without_weather_cannot_be_computed_and_says_what_would_help()
    {
        Terminal.Run run = Terminal.Do("wind", demo.Lake, "--at", "2019-10-01T08:00", "--members", "20");
        Assert.Equal(ExitCodes.CouldNotCompute, run.Code);
        Assert.Contains("weather.csv", run.Err, StringComparison.Ordinal);
    }

    [Fact]
    public void Help_teaches_what_it_needs()
    {
        Terminal.Run run = Terminal.Do("wind", "--help");
        Assert.Equal(ExitCodes.Done, run.Code);
        Assert.Contains("rocks back", run.Out, StringComparison.Ordinal);
        Assert.Contains("--hours", run.Out, StringComparison.Ordinal);
    }
}
