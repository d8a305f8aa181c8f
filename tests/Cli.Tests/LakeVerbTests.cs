using System.Text.Json;
using SecondShore.TestKit;

namespace SecondShore.Cli.Tests;

/// <summary>From a name to an outlook, against stand-ins of the services.</summary>
public sealed class LakeVerbTests : IDisposable
{
    private readonly TempFolder _folder = new();
    private readonly ServiceStandIn _map = OpenMapStandIn.Start();
    private readonly WeatherStandIn _weather = new(DateOnly.FromDateTime(Terminal.Now.UtcDateTime));

    private string Dir => _folder.File("lake");

    public void Dispose()
    {
        _weather.Dispose();
        _map.Dispose();
        _folder.Dispose();
    }

    private string[] Asking(string place, params string[] more) =>
        ["lake", place, Dir, "--years", "0", "--geocoder", _map.At("search").AbsoluteUri,
        "--map", _map.At("map").AbsoluteUri, "--service", _weather.Forecast.AbsoluteUri, "--archive", _weather.Archive.AbsoluteUri,
            .. more];

    [Fact]
    public void A_name_a_choice_and_a_depth_give_a_lake_and_its_outlook()
    {
        Terminal.Run run =
            Terminal.Do(Asking("Ferncombe", "--choose", "1", "--deepest", "62ft", "--clarity", "stained", "--dam", "44.722,-84.299"));
        Assert.True(run.Code == ExitCodes.Done, run.Err);
        Assert.Contains("Ferncombe Water, ", run.Out, StringComparison.Ordinal);
        Assert.Contains("The water is told of as stained", run.Out, StringComparison.Ordinal);
        Assert.Contains("OpenStreetMap contributors", run.Out, StringComparison.Ordinal);
        foreach (string sent in (string[])["goes: the name 'Ferncombe'.", "goes: waters within 3 km of 44.73, -84.30",
            "goes: the number of the water, relation/7100", "goes: the place 44.73, -84.30 (two decimals), for its weather."])
            Assert.Contains(sent, run.Err, StringComparison.Ordinal);
        Assert.Equal(["lake.json", "shoreline.geojson", "sources.md", "weather.csv"], Directory.GetFiles(Dir).Select(Path.GetFileName)
            .Order(StringComparer.Ordinal));
        Assert.Equal(ExitCodes.Done, Terminal.Do("check", Dir).Code);
        Assert.Equal(["lake"], Directory.GetFileSystemEntries(_folder.Path).Select(Path.GetFileName));
    }

    [Fact]
    public void Several_places_are_numbered_on_a_terminal_and_the_three_questions_asked()
    {
        Terminal.Run run = Terminal.Answering("7\n1\n62 yards of rope\n62\nno\nmuddy\n", Asking("Ferncombe"));
        Assert.True(run.Code == ExitCodes.Done, run.Err);
        Assert.Contains("  1  Ferncombe Water, North Shire, Nowhere (44.73, -84.30)", run.Err, StringComparison.Ordinal);
        Assert.Contains("  2  Ferncombe (no lake itself)", run.Err, StringComparison.Ordinal);
        using JsonDocument lake = JsonDocument.Parse(File.ReadAllText(Path.Combine(Dir, "lake.json")));
        Assert.Equal(62 * 0.3048, lake.RootElement.GetProperty("max_depth_m").GetDouble(), 0.01);
        Assert.False(lake.RootElement.GetProperty("reservoir").GetBoolean());
        Assert.Equal("muddy", lake.RootElement.GetProperty("clarity").GetString());
    }

    [Fact]
    public void A_script_that_does_not_choose_is_told_how_and_nothing_is_written()
    {
        Terminal.Run run = Terminal.Do(Asking("Ferncombe"));
        Assert.Equal(ExitCodes.BadUsage, run.Code);
        Assert.Contains("--choose 1", run.Err, StringComparison.Ordinal);
        Assert.Equal(ExitCodes.BadUsage, Terminal.Do(Asking("Ferncombe", "--choose", "3")).Code);
        Assert.False(Directory.Exists(Dir));
    }

    [Fact]
    public void Without_a_map_and_without_weather_the_lake_goes_on_by_hand()
    {
        _map.Faults.Enqueue(ServiceReply.Of("<html>", status: 400));
        for (int i = 0; i < 2; i++) _weather.Faults.Enqueue(WeatherStandIn.Error(400, "No."));
        Terminal.Run run = Terminal.Do(Asking("44.7601,-84.2501", "--area", "320acres", "--deepest", "30ft", "--natural", "--json"));
        Assert.True(run.Code == ExitCodes.Done, run.Err);
        Assert.Contains("Or give the area alone, or an outline of your own", run.Err, StringComparison.Ordinal);
        Assert.Contains("The outline is only a round one", run.Err, StringComparison.Ordinal);
        Assert.Contains($"'secondshore weather {Dir}' fetches it later.", run.Err, StringComparison.Ordinal);
        using JsonDocument outlook = JsonDocument.Parse(run.Out);
        Assert.NotEmpty(outlook.RootElement.GetProperty("assumed").EnumerateArray());
        Assert.False(File.Exists(Path.Combine(Dir, "weather.csv")));
    }

    [Fact]
    public void Offline_nobody_is_asked()
    {
        string outline = _folder.Write("mine.geojson", """{"type":"Polygon","coordinates":[[[-84.26,44.75],[-84.24,44.75],[-84.24,44.77],[-84.26,44.77],[-84.26,44.75]]]}""");
        Terminal.Run run = Terminal.Do(Asking("44.7601,-84.2501", "--offline", "--outline", outline));
        Assert.True(run.Code == ExitCodes.Done, run.Err);
        Assert.Empty(_map.Asked);
        Assert.Empty(_weather.Asked);
        Assert.Contains("The deepest water is not known", run.Out, StringComparison.Ordinal);
        Assert.Equal(ExitCodes.BadUsage, Terminal.Do("lake", "Ferncombe", _folder.File("other"), "--offline").Code);
    }

    [Theory]
    [InlineData("--deepest", "deep", "--deepest deep is no depth of a lake")]
    [InlineData("--clarity", "soup", "--clarity soup is neither clear, stained or muddy nor a depth")]
    [InlineData("--area", "3 shires", "--area 3 shires is no area of a lake")]
    [InlineData("--dam", "here", "--dam here is no place")]
    [InlineData("--map", "ftp://x", "--map ftp://x is no web address")]
    public void What_has_no_meaning_is_said_before_anybody_is_asked(string option, string value, string said)
    {
        Terminal.Run run = Terminal.Do("lake", "Ferncombe", Dir, option, value);
        Assert.Equal(ExitCodes.BadUsage, run.Code);
        Assert.Contains(said, run.Err, StringComparison.Ordinal);
        Assert.Empty(_map.Asked);
    }

    [Fact]
    public void A_folder_that_holds_something_is_left_alone()
    {
        string file = _folder.Write("lake/notes.txt", "mine");
        Terminal.Run run = Terminal.Do(Asking("Ferncombe", "--choose", "1"));
        Assert.Equal(ExitCodes.BadUsage, run.Code);
        Assert.Equal("mine", File.ReadAllText(file));
        Assert.Empty(_map.Asked);
    }

    [Fact]
    public void A_southern_place_is_no_option()
    {
        Terminal.Run run = Terminal.Do("lake", "-44.76,170.25", Dir, "--offline", "--area", "50ha");
        Assert.True(run.Code == ExitCodes.Done, run.Err);
        Assert.Contains("-44.76", File.ReadAllText(Path.Combine(Dir, "lake.json")), StringComparison.Ordinal);
    }
}
