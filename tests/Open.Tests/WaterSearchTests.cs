using System.Text;
using System.Text.RegularExpressions;
using SecondShore.Engine.Core.Geo;
using SecondShore.Open.Asking;
using SecondShore.Open.Outlines;
using SecondShore.TestKit;

namespace SecondShore.Open.Tests;

public sealed partial class WaterSearchTests : IDisposable
{
    private static readonly GeoPoint Place = new(OpenMapStandIn.LatDeg, OpenMapStandIn.LonDeg);
    private readonly ServiceStandIn _service = OpenMapStandIn.Start();
    private readonly HttpClient _http = Quick.Http();
    private readonly List<string> _told = [];

    public void Dispose()
    {
        _http.Dispose();
        _service.Dispose();
    }

    private WaterSearch Search => new(Quick.Client(_http, told: _told), Quick.Services(_service));

    [Fact]
    public async Task The_water_around_the_place_comes_first_and_is_certain()
    {
        IReadOnlyList<FoundWater> waters = await Search.NearAsync(Place);
        Assert.Equal(["Ferncombe Water", ""], waters.Select(w => w.Name));
        Assert.Equal(0, waters[0].DistanceM);
        Assert.InRange(waters[1].DistanceM, 1700, 1900);
        Assert.True(waters[0].IsReservoir);
        Assert.Equal(waters[0], WaterSearch.Certain(waters));
    }

    [Fact]
    public async Task No_more_than_two_decimals_of_the_place_go_out_and_that_is_told()
    {
        await Search.NearAsync(new GeoPoint(44.73124567, -84.29876543));
        string form = Assert.Single(_service.Asked).Form;
        Assert.NotEmpty(Decimals().Matches(form));
        Assert.All(Decimals().Matches(form), m => Assert.True(m.Groups[1].Length <= 2, m.Value));
        Assert.Equal("To 127.0.0.1 goes: waters within 3 km of 44.73, -84.30 (two decimals).", Assert.Single(_told));
    }

    [Fact]
    public async Task Lines_out_of_order_and_turned_become_one_shore_with_its_islands()
    {
        LakeOutline outline = await Search.OutlineAsync((await Search.NearAsync(Place))[0]);
        Assert.Empty(outline.Notes);
        Engine.Basin.WaterPolygon water = Assert.Single(outline.Shore.Polygons);
        Assert.Equal(120, water.Outer.Count);
        Assert.Equal([24, 24], water.Islands.Select(i => i.Count));
        // An ellipse of 1111 m by 1108 m (0.01 deg of latitude, 0.014 deg of longitude at 44.73 deg north), less islands of 0.05 and 0.08
        // of it.
        double ellipseM2 = Math.PI * 1111.1 * (0.014 * 111_320 * Math.Cos(44.7312 * Math.PI / 180));
        Assert.Equal(1 - 0.0025 - 0.0064, outline.AreaM2 / ellipseM2, 0.006);
        Assert.True(outline.Holds(outline.Inside));
        Assert.Equal("relation/7100", outline.Source);
        Assert.Contains("ODbL", outline.Attribution, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_water_of_one_line_is_an_outline()
    {
        FoundWater tarn = Assert.Single(await Search.NearAsync(new GeoPoint(44.7601, -84.2501), "Lone Tarn, North Shire"));
        Assert.Equal(0, tarn.NameRank);
        LakeOutline outline = await Search.OutlineAsync(tarn);
        Assert.Equal(4, outline.Shore.Polygons[0].Outer.Count);
        Assert.Equal(222.2 * 237.2, outline.AreaM2, 400.0);
    }

    [Fact]
    public void Of_several_waters_the_name_decides_and_where_it_does_not_somebody_must()
    {
        static FoundWater Water(string name, double distanceM, int rank) =>
            new(false, name.Length + 1, name, new GeoBox(1, 1, 1.1, 1.1)) { DistanceM = distanceM, NameRank = rank };
        Assert.Equal("Long", WaterSearch.Certain([Water("Long", 900, 0), Water("Big", 0, 2)])!.Name);
        Assert.Equal("Long Water", WaterSearch.Certain([Water("Long Water", 0, 1), Water("Big", 0, 2)])!.Name);
        Assert.Null(WaterSearch.Certain([Water("Long", 900, 0), Water("Longer", 0, 0)]));
        Assert.Null(WaterSearch.Certain([Water("Long", 0, 2), Water("Longer", 0, 2)]));
        Assert.Null(WaterSearch.Certain([Water("Long", 20, 2), Water("Longer", 30, 2)]));
        Assert.Null(WaterSearch.Certain([]));
    }

    [Theory]
    [InlineData("""{"elements":[]}""", "another water than the one asked for")]
    [InlineData("""{"elements":[],"remark":"runtime error: Query timed out"}""", "stopped on its way: runtime error: Query timed out")]
    [InlineData("""{"elements":[{"type":"way","id":7200}]}""", "no closed line")]
    [InlineData("""{"elements":[{"type":"way","id":7200,"geometry":[{"lat":1,"lon":1},{"lat":1,"lon":2},{"lat":2,"lon":2}]}]}""", "no closed line")]
    [InlineData("""{"elements":[{"type":"way","id":7200,"geometry":[{"lat":1,"lon":1},{"lat":1,"lon":1.00001},"""
        + """{"lat":1.00001,"lon":1.00001},{"lat":1,"lon":1}]}]}""", "encloses no lake")]
    [InlineData("""{"elements":[{"type":"way","id":7200,"geometry":[{"lat":1,"lon":1},{"lat":1,"lon":99},{"lat":2,"lon":2},{"lat":1,"lon":1}]}]}""", "no closed line")]
    [InlineData("{\"elements\":[{", "breaks off")]
    [InlineData("<osm/>", "not of the documented form")]
    public void A_shape_that_is_none_is_a_sentence_that_says_how_to_go_on(string body, string said)
    {
        FoundWater tarn = new(false, OpenMapStandIn.TarnId, "", default);
        OpenException refused =
            Assert.Throws<OpenException>(() => OutlineReply.Read(Encoding.UTF8.GetBytes(body), tarn, OpenServices.Default));
        Assert.Contains(said, refused.Said(), StringComparison.Ordinal);
        Assert.EndsWith("the lake goes on without one.", refused.Said(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_shape_or_a_list_from_elsewhere_is_not_the_water_asked_for()
    {
        byte[] shape = Encoding.UTF8.GetBytes(OpenMapStandIn.Map($"way({OpenMapStandIn.TarnId});out geom;"));
        FoundWater elsewhere = new(false, OpenMapStandIn.TarnId, "", new GeoBox(10, 10, 10.1, 10.1));
        Assert.Contains("another water", Assert.Throws<OpenException>(() => OutlineReply.Read(shape, elsewhere, OpenServices.Default))
            .Said(), StringComparison.Ordinal);
        byte[] list = Encoding.UTF8.GetBytes(OpenMapStandIn.Map("44.73,"));
        Assert.Equal(2, WaterSearch.Listed(list, "x", Place, null).Count);
        Assert.Empty(WaterSearch.Listed(list, "x", new GeoPoint(10, 10), null));
    }

    [Fact]
    public void A_small_gap_of_the_shore_is_closed_and_said_and_a_large_one_is_not()
    {
        FoundWater lake = new(true, OpenMapStandIn.FerncombeId, "", default);
        string whole = OpenMapStandIn.Map($"relation({OpenMapStandIn.FerncombeId});out geom;");
        // The first point of the first member: its line no longer meets the next one.
        int at = whole.IndexOf("\"lat\":", StringComparison.Ordinal);
        string gap = whole[..at] + "\"lat\":44.7230000" + whole[(at + "\"lat\":44.7226397".Length)..];
        LakeOutline mended = OutlineReply.Read(Encoding.UTF8.GetBytes(gap), lake, OpenServices.Default);
        Assert.Contains("broke off and were closed with a straight line", Assert.Single(mended.Notes).Say(UnitSystem.Metric),
            StringComparison.Ordinal);
        // A whole line of the shore is missing: a third of it would be a straight line.
        at = whole.IndexOf("\"type\":\"way\"", StringComparison.Ordinal);
        string third = whole[..at] + "\"type\":\"node\"" + whole[(at + "\"type\":\"way\"".Length)..];
        Assert.Contains("no closed line",
            Assert.Throws<OpenException>(() => OutlineReply.Read(Encoding.UTF8.GetBytes(third), lake, OpenServices.Default)).Said(),
            StringComparison.Ordinal);
    }

    [GeneratedRegex(@"\d+\.(\d+)")]
    private static partial Regex Decimals();
}
