using System.Text.Json;

namespace SecondShore.Cli.Tests;

public class OutlookVerbTests(DemoLake demo)
{
    [Fact]
    public void The_demo_lake_is_checked_without_an_error()
    {
        Terminal.Run run = Terminal.Do("check", demo.Lake, "--json");
        Assert.Equal(ExitCodes.Done, run.Code);
        using JsonDocument document = JsonDocument.Parse(run.Out);
        Assert.True(document.RootElement.GetProperty("usable").GetBoolean());
        Assert.DoesNotContain(document.RootElement.GetProperty("problems").EnumerateArray(),
            p => p.GetProperty("severity").GetString() is "error" or "warning");
        Assert.InRange(document.RootElement.GetProperty("surveys")[0].GetProperty("max_depth_m").GetDouble(), 50, 65);
    }

    [Fact]
    public void The_outlook_carries_its_spread_and_every_key_that_scripts_rely_on()
    {
        Terminal.Run run = Terminal.Do("outlook", demo.Lake, "--json", "--members", "20");
        Assert.Equal(ExitCodes.Done, run.Code);
        using JsonDocument document = JsonDocument.Parse(run.Out);
        JsonElement root = document.RootElement;
        foreach (string key in (string[])["at", "state", "thermocline_m", "oxygen_floor_m", "turnover", "profile", "arms", "assumed"])
            Assert.True(root.TryGetProperty(key, out _), key);
        Assert.Equal("stratified", root.GetProperty("state").GetString());
        JsonElement depth = root.GetProperty("thermocline_m");
        Assert.InRange(depth.GetProperty("p50").GetDouble(), depth.GetProperty("p10").GetDouble(), depth.GetProperty("p90").GetDouble());
        Assert.InRange(depth.GetProperty("p50").GetDouble(), 5, 15);
    }

    [Fact]
    public void The_same_seed_gives_the_same_answer_and_progress_stays_off_standard_output()
    {
        Terminal.Run first = Terminal.Do("outlook", demo.Lake, "--members", "20", "--seed", "5");
        Terminal.Run second = Terminal.Do("outlook", demo.Lake, "--members", "20", "--seed", "5");
        Assert.Equal(first.Out, second.Out);
        Assert.Contains("Running the season", first.Err, StringComparison.Ordinal);
        Assert.DoesNotContain("Running the season", first.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--at", "yesterday")]
    [InlineData("--members", "3")]
    [InlineData("--units", "cubits")]
    public void Options_out_of_range_end_with_2_and_say_what_is_allowed(string option, string value)
    {
        Terminal.Run run = Terminal.Do("outlook", demo.Lake, option, value);
        Assert.Equal(ExitCodes.BadUsage, run.Code);
        Assert.Contains(value, run.Err, StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_that_holds_a_lake_is_not_written_over()
    {
        Terminal.Run run = Terminal.Do("demo", demo.Lake);
        Assert.Equal(ExitCodes.BadUsage, run.Code);
        Assert.Contains("holds a lake already", run.Err, StringComparison.Ordinal);
    }
}
