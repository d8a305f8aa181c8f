using System.Text;
using System.Text.Json;
using SecondShore.App.Compute;
using SecondShore.App.Compute.Views;
using SecondShore.App.Store;
using SecondShore.Engine.Basin;

namespace SecondShore.App.Tests;

public class LakeDeskTests
{
    [Fact]
    public void A_survey_with_a_place_is_enough_for_a_first_answer_and_a_haze_moves_it()
    {
        Tray tray = new();
        LakeDesk desk = new(tray);
        Dictionary<string, byte[]> files = Bowl();
        LakeView view = Ask(desk, "open", new AskAbout(), files, ViewsJson.Default.LakeView);
        Assert.Equal("Test Bowl", view.Name);
        Assert.NotNull(view.Chart);
        Assert.InRange(view.Chart.MaxDepthM, 19, 21);
        Assert.NotNull(tray.LastGrid);
        OutlookView before = Ask(desk, "outlook", new AskAbout(), files, ViewsJson.Default.OutlookView);
        Assert.NotEmpty(before.Assumed);
        Assert.Equal(before.DepthM.Length, before.TempC.Length);
    }

    [Fact]
    public void A_depth_that_is_tried_moves_the_second_shore_and_keeps_the_doubt()
    {
        Tray tray = new();
        LakeDesk desk = new(tray);
        Dictionary<string, byte[]> files = Bowl();
        RecordRow haze = new Entry { Value = 8 }.ToRow("x", RecordKinds.Haze, new DateTimeOffset(2026, 8, 20, 12, 0, 0, TimeSpan.Zero));
        AskAbout about = new(At: new DateTimeOffset(2026, 8, 21, 12, 0, 0, TimeSpan.Zero), Records: [haze]);
        Ask(desk, "open", about, files, ViewsJson.Default.LakeView);
        OutlookView outlook = Ask(desk, "outlook", about, files, ViewsJson.Default.OutlookView);
        if (outlook.ThermoclineM is null) Assert.Skip("The lake is mixed without weather.");
        ShoreView at = Ask(desk, "shore", about, files, ViewsJson.Default.ShoreView);
        ShoreView deeper = Ask(desk, "slice", about with { ThermoclineM = at.ThermoclineM!.Value.P50 + 3 }, files, ViewsJson.Default.ShoreView);
        Assert.True(deeper.WhatIf);
        Assert.False(at.WhatIf);
        Assert.True(deeper.LengthM < at.LengthM, "in a bowl a deeper line is shorter");
        Assert.Equal(at.ThermoclineM.Value.P90 - at.ThermoclineM.Value.P50, deeper.ThermoclineM!.Value.P90 - deeper.ThermoclineM.Value.P50, 6);
        Assert.Contains("second-shore.points", tray.Names);
    }

    [Fact]
    public void Files_that_are_no_lake_are_told_in_a_sentence()
    {
        Dictionary<string, byte[]> files = new() { ["holiday.jpg"] = [1, 2, 3, 4, 5] };
        InspectView view = Ask(new LakeDesk(new Tray()), "inspect", new AskAbout(), files, ViewsJson.Default.InspectView);
        Assert.False(view.HasSite);
    }

    private static T Ask<T>(LakeDesk desk, string verb, AskAbout about, Dictionary<string, byte[]> files, System.Text.Json.Serialization.Metadata.JsonTypeInfo<T> type) =>
        JsonSerializer.Deserialize(desk.Answer(verb, JsonSerializer.Serialize(about, ViewsJson.Default.AskAbout), files), type)!;

    private static Dictionary<string, byte[]> Bowl()
    {
        StringBuilder xyz = new("lat,lon,depth_m\n");
        for (int i = -20; i <= 20; i++)
        {
            for (int j = -20; j <= 20; j++)
            {
                double r = Math.Sqrt((i * i) + (j * j)) / 20;
                xyz.Append(FormattableString.Invariant($"{45 + (i * 0.0006):0.00000},{-90 + (j * 0.0008):0.00000},{Math.Max(0, 20 * (1 - (r * r))):0.00}\n"));
            }
        }

        return new()
        {
            ["survey.csv"] = Encoding.UTF8.GetBytes(xyz.ToString()),
            ["lake.json"] = Encoding.UTF8.GetBytes("""{"name":"Test Bowl","latitude_deg":45,"longitude_deg":-90,"time_zone":"UTC","secchi_m":3}"""),
        };
    }

    private sealed class Tray : ITray
    {
        public HashSet<string> Names { get; } = [];

        public DepthGrid? LastGrid { get; private set; }

        public void Progress(double share, string what) => Assert.InRange(share, 0, 1.0001);

        public void Put(string name, ReadOnlySpan<byte> bytes) => Names.Add(name);

        public void Grid(DepthGrid grid) => LastGrid = grid;
    }
}
