using System.Text.Json;
using SecondShore.TestKit;

namespace SecondShore.Cli.Tests;

public class ScoreVerbTests
{
    private static readonly string[] Figures = ["temperature_rmse_c", "surface_rmse_c", "thermocline_mae_m", "overturn_mae_days"];

    [Fact]
    public void A_lake_whose_casts_allow_no_figure_gets_null_and_the_reason()
    {
        using DemoLake demo = new();
        Terminal.Run run = Terminal.Do("score", demo.Lake, "--json");
        Assert.True(run.Code == ExitCodes.Done, run.Err);
        using JsonDocument document = JsonDocument.Parse(run.Out);
        JsonElement lake = Assert.Single(document.RootElement.GetProperty("lakes").EnumerateArray());
        Assert.Equal(JsonValueKind.Null, lake.GetProperty("overturn_mae_days").ValueKind);
        Assert.NotEqual(0, lake.GetProperty("why").GetArrayLength());
    }

    [Fact]
    public void A_measured_lake_gets_every_figure_and_a_summary()
    {
        Terminal.Run run = Terminal.Do("score", SharedData.Copy("lakes", "pleasant-lake-2019"), "--json");
        Assert.True(run.Code == ExitCodes.Done, run.Err);
        using JsonDocument document = JsonDocument.Parse(run.Out);
        JsonElement lake = Assert.Single(document.RootElement.GetProperty("lakes").EnumerateArray());
        foreach (string key in Figures) Assert.InRange(lake.GetProperty(key).GetDouble(), 0, 12);
        // The copy lies where a lake lay that the priors were learned from, so the figures are said to be in sample.
        Assert.True(lake.GetProperty("in_sample").GetBoolean());
        JsonElement[] summary = [.. document.RootElement.GetProperty("summary").EnumerateArray()];
        Assert.Equal(["lakes", "regions"], summary.Select(s => s.GetProperty("over").GetString()));
        foreach (string key in Figures) Assert.All(summary, s => Assert.Equal(lake.GetProperty(key).GetDouble(), s.GetProperty(key).GetDouble()));
    }

    [Fact]
    public void A_folder_without_lakes_ends_with_3()
    {
        using TempFolder folder = new();
        Directory.CreateDirectory(folder.File("empty"));
        Terminal.Run run = Terminal.Do("score", folder.File("empty"));
        Assert.Equal(ExitCodes.BadInput, run.Code);
        Assert.Contains("profiles.csv", run.Err, StringComparison.Ordinal);
    }
}
