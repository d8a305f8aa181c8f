using System.Text.Json;

namespace SecondShore.Cli.Tests;

public class RigVerbTests(DemoLake demo)
{
    private static readonly string[] Keys = ["weight_g", "weight_oz", "line_out_m", "fall_s", "line_angle_deg", "table"];

    [Fact]
    public void By_hand_it_prints_the_weight_the_reason_the_line_the_tables_and_the_cautions()
    {
        Terminal.Run run = Terminal.Do("rig", "--depth", "27ft", "--speed", "0.6mph");
        Assert.Equal(ExitCodes.Done, run.Code);
        Assert.StartsWith("Tie on ", run.Out, StringComparison.Ordinal);
        Assert.Contains("Because at 0.6 mph in 27 ft", run.Out, StringComparison.Ordinal);
        Assert.Contains("o jig,", run.Out, StringComparison.Ordinal);
        Assert.Contains("Each weight at 27 ft and 0.6 mph", run.Out, StringComparison.Ordinal);
        Assert.Contains("Lead is not allowed everywhere", run.Out, StringComparison.Ordinal);
        Assert.Contains("No current is known", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Json_carries_the_keys_that_scripts_rely_on_and_the_table_agrees_with_the_weight()
    {
        Terminal.Run run = Terminal.Do("rig", "--depth", "27ft", "--speed", "0.6mph", "--json");
        Assert.Equal(ExitCodes.Done, run.Code);
        using JsonDocument document = JsonDocument.Parse(run.Out);
        JsonElement root = document.RootElement;
        Assert.All(Keys, key => Assert.True(root.TryGetProperty(key, out _), key));
        JsonElement same = root.GetProperty("table").EnumerateArray().Single(c =>
            Math.Abs(c.GetProperty("depth_m").GetDouble() - (27 * 0.3048)) < 0.01 && Math.Abs(c.GetProperty("speed_mps").GetDouble() - (0.6 * 0.44704)) < 0.001);
        Assert.Equal(root.GetProperty("weight_g").GetDouble(), same.GetProperty("weight_g").GetDouble());
        Assert.Equal(root.GetProperty("needed_g").GetDouble(), same.GetProperty("needed_g").GetDouble());
    }

    [Theory]
    [InlineData("--depth", "rig")]
    [InlineData("deep", "rig", "--depth", "deep")]
    [InlineData("The depth is 2952.8 ft", "rig", "--depth", "900m")]
    [InlineData("quickly", "rig", "--depth", "27ft", "--speed", "quickly")]
    [InlineData("rope", "rig", "--depth", "27ft", "--line", "rope")]
    [InlineData("0.2", "rig", "--depth", "27ft", "--confidence", "0.2")]
    [InlineData("mithril", "rig", "--depth", "27ft", "--material", "mithril")]
    [InlineData("lava", "rig", "--depth", "27ft", "--bottom", "lava")]
    [InlineData("--stop", "rig", "--stop", "1")]
    public void Bad_usage_ends_with_2_and_says_what_was_seen(string said, params string[] args)
    {
        Terminal.Run run = Terminal.Do(args);
        Assert.Equal(ExitCodes.BadUsage, run.Code);
        Assert.Contains(said, run.Err, StringComparison.Ordinal);
        Assert.Empty(run.Out);
        Assert.DoesNotContain("   at ", run.Err, StringComparison.Ordinal);
    }

    [Fact]
    public void Tackle_that_cannot_be_read_ends_with_3_and_names_file_and_line()
    {
        using TempFolder folder = new();
        folder.Write("lake.json", """{ "name": "x", "latitude_deg": 41.5, "longitude_deg": -81.25 }""");
        folder.Write("tackle.json", "{\n  \"jigs\": [ {\n");
        Terminal.Run run = Terminal.Do("rig", folder.Path, "--depth", "27ft");
        Assert.Equal(ExitCodes.BadInput, run.Code);
        Assert.Contains("tackle.json line 3: the file is not JSON that can be read", run.Err, StringComparison.Ordinal);
        Assert.Empty(run.Out);
    }

    [Fact]
    public void Owned_tackle_is_chosen_from_and_its_observations_are_said()
    {
        using TempFolder folder = new();
        folder.Write("lake.json", """{ "name": "x", "latitude_deg": 41.5, "longitude_deg": -81.25, "units": "us" }""");
        folder.Write("tackle.json", """
            { "jigs": [ { "name": "mine", "weight_oz": 0.75,
              "observations": [ { "kind": "fall", "depth_ft": 30, "seconds": 14 }, { "kind": "fell" } ] } ],
              "lines": [ { "name": "deep reel", "kind": "fluorocarbon", "strength_lb": 12,
                "diameter_mm": 0.31, "diameter_measured": true } ] }
            """);
        Terminal.Run run = Terminal.Do("rig", folder.Path, "--depth", "20ft", "--speed", "0.4mph");
        Assert.Equal(ExitCodes.Done, run.Code);
        Assert.StartsWith("Tie on 3/4 oz", run.Out, StringComparison.Ordinal);
        Assert.Contains("Jig mine: 1 observation of yours put its own drag at ", run.Out, StringComparison.Ordinal);
        Assert.Contains("deep reel, 0.31 mm.", run.Out, StringComparison.Ordinal);
        Assert.Contains("kind is 'fell' where one of", run.Err, StringComparison.Ordinal);
    }

    [Fact]
    public void A_stop_of_the_plan_brings_its_depth_water_and_current_and_the_card_is_written()
    {
        using TempFolder folder = new();
        Terminal.Run run = Terminal.Do("rig", demo.Lake, "--stop", "1", "--members", "20", "--out", folder.Path);
        Assert.Equal(ExitCodes.Done, run.Code);
        Assert.Contains(", stop 1: ", run.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("No current is known", run.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("Fresh water of", run.Out, StringComparison.Ordinal);
        string card = File.ReadAllText(folder.File("rig-card.html"));
        Assert.Contains("<svg", card, StringComparison.Ordinal);
        Assert.Contains("Weight by depth and speed", card, StringComparison.Ordinal);
        System.Xml.Linq.XDocument.Parse(card[card.IndexOf("<svg", StringComparison.Ordinal)..(card.IndexOf("</svg>", StringComparison.Ordinal) + 6)]);
    }
}
