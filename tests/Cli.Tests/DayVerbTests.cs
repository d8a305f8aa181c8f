using System.Globalization;
using System.Text.Json;
using System.Xml.Linq;
using SecondShore.Answers.Lake;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Lake;

namespace SecondShore.Cli.Tests;

/// <summary>The main job at the terminal, on the demo lake.</summary>
public class DayVerbTests(DemoDay demo) : IClassFixture<DemoDay>
{
    private JsonElement Root => demo.Answer.RootElement;

    [Fact]
    public void The_plan_holds_every_key_that_scripts_rely_on_and_its_stops_follow_one_another_until_home()
    {
        foreach (string key in (string[])["date", "launch", "home", "stops", "route_length_m", "cautions", "files"])
            Assert.True(Root.TryGetProperty(key, out _), key);
        Assert.Equal("2026-10-07", Root.GetProperty("date").GetString());
        DateTimeOffset last = Root.GetProperty("launch").GetProperty("time").GetDateTimeOffset();
        Assert.NotEqual(0, Root.GetProperty("stops").GetArrayLength());
        foreach (JsonElement stop in Root.GetProperty("stops").EnumerateArray())
        {
            Assert.InRange(stop.GetProperty("depth_m").GetDouble(), 0.5, 65);
            Assert.True(stop.GetProperty("arrive").GetDateTimeOffset() >= last, "a stop begins after the one before");
            last = stop.GetProperty("leave").GetDateTimeOffset();
            Assert.NotEmpty(stop.GetProperty("rig").GetString()!);
            Assert.NotEmpty(stop.GetProperty("why").GetString()!);
        }

        DateTimeOffset home = Root.GetProperty("home").GetProperty("time").GetDateTimeOffset();
        Assert.True(home >= last, "home comes after the last stop");
        Assert.True(home.TimeOfDay <= new TimeSpan(15, 0, 0), $"home by 15:00 where nothing else is asked, not {home}");
        Assert.NotEqual(0, Root.GetProperty("cautions").GetArrayLength());
    }

    [Fact]
    public void Every_file_that_the_plan_names_stands_in_the_folder_asked_for()
    {
        string[] named = [.. Root.GetProperty("files").EnumerateArray().Select(f => Path.GetFileName(f.GetString()!)!)];
        Assert.Superset(new HashSet<string> { "day.html", "day.gpx", "day.geojson", "day.ics" }, named.ToHashSet());
        Assert.All(named, name => Assert.True(new FileInfo(Path.Combine(demo.Plan, name)).Length > 100, name));
    }

    [Fact]
    public void Every_waypoint_and_pass_of_the_gpx_lies_in_water_at_the_days_level()
    {
        PreparedLake lake = PreparedLake.From(LakeFolderReader.ReadPath(demo.Lake), null, TestContext.Current.CancellationToken);
        DepthGrid grid = lake.GridAt(Terminal.Now);
        XNamespace gpx = "http://www.topografix.com/GPX/1/1";
        XElement root = XDocument.Load(Path.Combine(demo.Plan, "day.gpx")).Root!;
        Assert.Equal(gpx + "gpx", root.Name);
        XElement[] points = [.. root.Descendants().Where(e => e.Name == gpx + "wpt" || e.Name == gpx + "rtept" || e.Name == gpx + "trkpt")];
        Assert.True(points.Count(p => p.Name == gpx + "wpt") >= Root.GetProperty("stops").GetArrayLength(), "each stop is a waypoint");
        Assert.All(points, point =>
        {
            GeoPoint place = new(Number(point, "lat"), Number(point, "lon"));
            Assert.True(grid.DepthAtM(grid.Projection.ToPlane(place)) > 0, $"{point.Name.LocalName} {place.LatDeg}, {place.LonDeg} is on land");
        });

        static double Number(XElement point, string name) => double.Parse(point.Attribute(name)!.Value, CultureInfo.InvariantCulture);
    }

    [Fact]
    public void The_sheet_is_one_page_of_the_stops_with_map_rigs_and_cautions_and_fetches_nothing()
    {
        string html = File.ReadAllText(Path.Combine(demo.Plan, "day.html"));
        Assert.Contains("<svg", html, StringComparison.Ordinal);
        Assert.DoesNotContain("http://", html.Replace("http://www.w3.org/", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.DoesNotContain("https://", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", html, StringComparison.Ordinal);
        Assert.Contains("invented", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Shore_ranks_at_least_eight_spots_each_with_its_reasons_and_chance()
    {
        string folder = Path.Combine(demo.Plan, "shore");
        Terminal.Run run = Terminal.Do("shore", demo.Lake, "--json", "--members", "20", "--out", folder);
        Assert.True(run.Code == ExitCodes.Done, run.Err);
        using JsonDocument document = JsonDocument.Parse(run.Out);
        JsonElement root = document.RootElement;
        Assert.True(root.GetProperty("second_shore_length_m").GetDouble() > 1000);
        Assert.True(root.GetProperty("belt_area_m2").GetDouble() > 1e4);
        JsonElement[] spots = [.. root.GetProperty("spots").EnumerateArray()];
        Assert.InRange(spots.Length, 8, 16);
        Assert.Equal(Enumerable.Range(1, spots.Length), spots.Select(s => s.GetProperty("rank").GetInt32()));
        foreach (JsonElement spot in spots)
        {
            Assert.NotEqual(0, spot.GetProperty("reasons").GetArrayLength());
            Assert.InRange(spot.GetProperty("depth_m").GetDouble(), 0.5, 65);
            Assert.InRange(spot.GetProperty("chance_in_reach").GetDouble(), 0, 1);
            foreach (string key in (string[])["id", "lat", "lon", "value", "form"]) Assert.True(spot.TryGetProperty(key, out _), key);
        }

        Assert.Equal(2, Directory.GetFiles(folder).Length);
    }

    [Theory]
    [InlineData("--launch", "dawn")]
    [InlineData("--date", "someday")]
    [InlineData("--ramp", "No Such Ramp")]
    public void Wishes_that_cannot_be_met_end_with_2_and_say_what_can(string option, string value)
    {
        Terminal.Run run = Terminal.Do("day", demo.Lake, option, value, "--members", "20");
        Assert.Equal(ExitCodes.BadUsage, run.Code);
        Assert.Contains(value, run.Err, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", run.Err, StringComparison.Ordinal);
    }
}
