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
    public void A_point_is_told_hour_by_hour_with_its_currents_and_written_as_a_table()
    {
        Terminal.Run whole = Terminal.Do("wind", demo.Lake, "--hours", "0", "--members", "20", "--places", "40", "--json");
        JsonElement place = JsonDocument.Parse(whole.Out).RootElement.GetProperty("places")[0];
        string point = FormattableString.Invariant($"{place.GetProperty("lat").GetDouble()},{place.GetProperty("lon").GetDouble()}");
        using TempFolder folder = new();
        Terminal.Run run = Terminal.Do("wind", demo.Lake, "--hours", "3", "--members", "20", "--point", point, "--point", point, "--out", folder.Path, "--json");
        Assert.Equal(ExitCodes.Done, run.Code);
        using JsonDocument document = JsonDocument.Parse(run.Out);
        JsonElement points = document.RootElement.GetProperty("points");
        Assert.Equal(2, points.GetArrayLength());
        Assert.Equal(points[0].ToString(), points[1].ToString());
        Assert.True(points[0].GetProperty("layer_strength_kg_per_m3").GetDouble() > 0.1);
        JsonElement hours = points[0].GetProperty("hours");
        Assert.Equal(4, hours.GetArrayLength());
        int currents = 0;
        foreach (JsonElement hour in hours.EnumerateArray())
        {
            foreach (string key in (string[])["thermocline_m", "displacement_m"])
                Assert.True(hour.GetProperty(key).GetProperty("p10").GetDouble() <= hour.GetProperty(key).GetProperty("p90").GetDouble(), key);
            currents += hour.GetProperty("currents").GetArrayLength();
        }

        Assert.Equal(1 + (2 * currents), File.ReadAllLines(folder.File("points.csv")).Length);
        Assert.Contains("at the thermocline", Terminal.Do("wind", demo.Lake, "--hours", "1", "--members", "20", "--point", point).Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_point_on_land_and_text_that_is_no_point_are_refused_in_a_sentence()
    {
        Terminal.Run land = Terminal.Do("wind", demo.Lake, "--hours", "0", "--members", "20", "--point", "0,0");
        Assert.Equal(ExitCodes.CouldNotCompute, land.Code);
        Assert.Contains("not on the water", land.Err, StringComparison.Ordinal);
        Terminal.Run odd = Terminal.Do("wind", demo.Lake, "--hours", "0", "--members", "20", "--point", "north");
        Assert.Equal(ExitCodes.BadUsage, odd.Code);
        Assert.Contains("--point north", odd.Err, StringComparison.Ordinal);
    }

    [Fact]
    public void A_chain_is_scored_window_by_window_and_a_missing_file_is_a_sentence()
    {
        Terminal.Run whole = Terminal.Do("wind", demo.Lake, "--hours", "0", "--members", "20", "--places", "40", "--json");
        JsonElement root = JsonDocument.Parse(whole.Out).RootElement, place = root.GetProperty("places")[0];
        string point = FormattableString.Invariant($"{place.GetProperty("lat").GetDouble()},{place.GetProperty("lon").GetDouble()}");
        DateTimeOffset end = root.GetProperty("at").GetDateTimeOffset();
        System.Text.StringBuilder chain = new("time,depth_m,temp_c\n");
        for (int h = -48; h < 0; h++)
            for (int z = 1; z < 16; z++) chain.Append(System.Globalization.CultureInfo.InvariantCulture, $"{end.AddHours(h).UtcDateTime:yyyy-MM-ddTHH:mm}Z,{z},{15 - (6 * Math.Tanh((z - 8 - Math.Sin(h / 3.0)) / 1.5)):0.00}\n");
        using TempFolder folder = new();
        File.WriteAllText(folder.File("chain.csv"), chain.ToString());
        Terminal.Run run = Terminal.Do("score-wind", demo.Lake, "--chain", folder.File("chain.csv"), "--point", point, "--json");
        Assert.Equal(ExitCodes.Done, run.Code);
        JsonElement site = JsonDocument.Parse(run.Out).RootElement.GetProperty("windows")[0].GetProperty("sites")[0];
        Assert.Equal(Math.Sqrt(0.5), site.GetProperty("whole").GetProperty("none_m").GetDouble(), 0.1);
        Assert.InRange(site.GetProperty("whole").GetProperty("r").GetDouble(), -1, 1);
        Terminal.Run missing = Terminal.Do("score-wind", demo.Lake, "--chain", folder.File("none.csv"));
        Assert.Equal(ExitCodes.BadInput, missing.Code);
        Assert.Contains("time, depth_m", missing.Err, StringComparison.Ordinal);
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
