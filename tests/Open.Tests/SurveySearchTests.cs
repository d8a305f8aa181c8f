using System.Text;
using System.Text.Json;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.Formats.Surveys;
using SecondShore.Open.Asking;
using SecondShore.Open.Lakes;
using SecondShore.Open.Outlines;
using SecondShore.Open.Surveys;
using SecondShore.TestKit;

namespace SecondShore.Open.Tests;

public sealed class SurveySearchTests : IDisposable
{
    private static readonly DateTimeOffset Now = new(2026, 10, 6, 12, 0, 0, TimeSpan.Zero);
    private static readonly GeoPoint Place = new(OpenMapStandIn.LatDeg, OpenMapStandIn.LonDeg);
    private readonly ServiceStandIn _service = DepthServiceStandIn.Start();
    private readonly HttpClient _http = Quick.Http();
    private readonly List<string> _told = [];

    public void Dispose()
    {
        _http.Dispose();
        _service.Dispose();
    }

    private SurveySearch Search => new(Quick.Client(_http, Quick.Patience with { Attempts = 0 }, told: _told), TimeProvider.System);

    private static LakeFolder Lake =>
        LakeFolderReader.Read(LakeDraftFiles.Of(new LakeDraft("Ferncombe Water", Place) { Outline = LakeOutline.Round(Place, 4e6) }, Now));

    [Theory]
    [InlineData("ogc", SurveyStandard.OgcFeatures, 3)]
    [InlineData("ogc/collections", SurveyStandard.OgcFeatures, 3)]
    [InlineData("rest/services/Depths/FeatureServer", SurveyStandard.ArcGisFeatures, 3)]
    [InlineData("rest/services/Depths/FeatureServer/0", SurveyStandard.ArcGisFeatures, 3)]
    [InlineData("wfs", SurveyStandard.Wfs, 3)]
    [InlineData("files/depths.csv", SurveyStandard.File, 1)]
    public async Task Every_standard_gives_the_same_soundings_page_by_page(string path, SurveyStandard standard, int pages)
    {
        IReadOnlyList<SurveyLayer> layers = await Search.LayersAsync(_service.At(path));
        Assert.Equal(standard, layers[0].Standard);
        _service.Asked.Clear();
        FetchedSurvey survey = await Search.FetchAsync(layers[0], SurveyFolder.BoxOf(Lake));
        Assert.Equal(pages, _service.Asked.Count);
        (ILakeFiles files, SurveyImport import) = SurveyFolder.With(Lake, survey, Now);
        Assert.Null(import.Question);
        Assert.Equal(DepthServiceStandIn.Count, import.Understanding!.Count);
        Assert.Equal(DepthServiceStandIn.Sounding(0).DepthM, import.Understanding.MaxDepthM, 0.001);
        Assert.Equal(Place.LatDeg, (import.Understanding.Extent!.SouthDeg + import.Understanding.Extent.NorthDeg) / 2, 0.001);
        LakeFolder read = LakeFolderReader.Read(files);
        Assert.True(read.IsUsable);
        Assert.Equal(DepthServiceStandIn.Count, read.Survey!.Soundings.Sum(s => s.DepthM.Length));
    }

    [Theory]
    [InlineData("rest/services/Bottom/ImageServer")]
    [InlineData("wcs")]
    public async Task A_raster_comes_as_a_survey_too(string path)
    {
        SurveyLayer layer = Assert.Single(await Search.LayersAsync(_service.At(path)));
        FetchedSurvey survey = await Search.FetchAsync(layer, SurveyFolder.BoxOf(Lake));
        SurveyImport import = SurveyFolder.With(Lake, survey, Now).Import;
        Assert.Equal(SurveyKind.Raster, import.Understanding!.Kind);
        // What the numbers of a bare raster mean is asked, as of any file.
        Assert.Equal(12, import.Understanding.HighestFiled, 0.1);
    }

    [Fact]
    public async Task Only_the_lakes_box_goes_out_rounded_outward_and_that_is_told()
    {
        SurveyLayer layer = (await Search.LayersAsync(_service.At("rest/services/Depths/FeatureServer/0")))[0];
        GeoBox box = new(44.7251, -84.3101, 44.7399, -84.2851);
        await Search.FetchAsync(layer, box);
        string[] corners = _service.Asked.Last().Value("geometry")!.Split(',');
        Assert.Equal(["-84.32", "44.72", "-84.28", "44.75"], corners);
        Assert.Contains("To 127.0.0.1 goes: the lake's box 44.72, -84.32 to 44.75, -84.28 (two decimals), for 'Depths'.", _told);
    }

    [Fact]
    public async Task Source_and_licence_stay_beside_the_survey()
    {
        SurveyLayer layer = (await Search.LayersAsync(_service.At("rest/services/Depths/FeatureServer")))[0];
        ILakeFiles files = SurveyFolder.With(Lake, await Search.FetchAsync(layer, SurveyFolder.BoxOf(Lake)), Now).Files;
        files = SurveyFolder.With(LakeFolderReader.Read(files), await Search.FetchAsync(layer, SurveyFolder.BoxOf(Lake)), Now).Files;
        using JsonDocument lake = JsonDocument.Parse(files.Read("lake.json"));
        JsonElement source = Assert.Single(lake.RootElement.GetProperty("survey_sources").EnumerateArray());
        Assert.Equal("Shire Survey, public domain", source.GetProperty("licence").GetString());
        Assert.Equal("survey/depths-depths.geojson", source.GetProperty("file").GetString());
        string page = Encoding.UTF8.GetString(files.Read("sources.md"));
        Assert.Single(page.Split('\n'), l => l.Contains("Shire Survey, public domain", StringComparison.Ordinal));
        Assert.Contains("shoreline.geojson", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_feature_on_two_pages_counts_once_and_the_same_page_again_ends_it()
    {
        SurveyLayer layer = (await Search.LayersAsync(_service.At("rest/services/Depths/FeatureServer/0")))[0];
        ServiceReply first = DepthServiceStandIn.Answer(new ServiceQuestion(layer.Address.AbsolutePath + "/query", "?resultOffset=0", "")),
            moved = DepthServiceStandIn.Answer(new ServiceQuestion(layer.Address.AbsolutePath + "/query", "?resultOffset=15", ""));
        _service.Faults.Enqueue(first);
        _service.Faults.Enqueue(moved);
        FetchedSurvey survey = await Search.FetchAsync(layer, SurveyFolder.BoxOf(Lake));
        Assert.StartsWith("5 features came on two pages", Assert.Single(survey.Notes).Say(UnitSystem.Metric), StringComparison.Ordinal);
        for (int i = 0; i < 4; i++) _service.Faults.Enqueue(first);
        OpenException stuck = await Assert.ThrowsAsync<OpenException>(() => Search.FetchAsync(layer, SurveyFolder.BoxOf(Lake)));
        Assert.Contains("sends the same page again; nothing is kept.", stuck.Said(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_service_that_leads_on_to_another_is_not_followed()
    {
        SurveyLayer layer = (await Search.LayersAsync(_service.At("ogc")))[0];
        _service.Faults.Enqueue(ServiceReply.Of("""{"type":"FeatureCollection","features":[{"type":"Feature","id":1,"geometry":null,"properties":{}}],"links":[{"rel":"next","href":"http://127.0.0.1:9/more"}]}"""));
        OpenException refused = await Assert.ThrowsAsync<OpenException>(() => Search.FetchAsync(layer, SurveyFolder.BoxOf(Lake)));
        Assert.Contains("leads on to another service; nothing is kept.", refused.Said(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("rest/services/Depths/FeatureServer/0", """{"error":{"code":400,"message":"Invalid query"}}""", "says: Invalid query.")]
    [InlineData("rest/services/Depths/FeatureServer/0", """{"type":"FeatureCollection","features":[]}""", "has nothing in the lake's box")]
    [InlineData("rest/services/Bottom/ImageServer", """{"error":{"message":"No raster"}}""", "says: No raster.")]
    [InlineData("wfs",
        "<ows:ExceptionReport xmlns:ows=\"http://www.opengis.net/ows/1.1\"><ows:Exception><ows:ExceptionText>Unknown type</ows:ExceptionText></ows:Exception></ows:ExceptionReport>", "says: Unknown type.")]
    [InlineData("wfs", "<!DOCTYPE x [<!ENTITY a \"b\">]><x>&a;</x>", "not of the documented form")]
    [InlineData("ogc", "<html>", "not of the documented form")]
    public async Task What_a_service_refuses_is_a_sentence_that_says_how_to_go_on(string path, string body, string said)
    {
        SurveyLayer layer = (await Search.LayersAsync(_service.At(path)))[0];
        _service.Faults.Enqueue(ServiceReply.Of(body));
        OpenException refused = await Assert.ThrowsAsync<OpenException>(() => Search.FetchAsync(layer, SurveyFolder.BoxOf(Lake)));
        Assert.Contains(said, refused.Said(), StringComparison.Ordinal);
        Assert.EndsWith("put the file into the lake's folder.", refused.Said(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_no_survey_is_not_kept()
    {
        SurveyLayer layer = Assert.Single(await Search.LayersAsync(_service.At("files/depths.csv")));
        _service.Faults.Enqueue(ServiceReply.Of("<html><body>Not found</body></html>", "text/html"));
        FetchedSurvey page = await Search.FetchAsync(layer, SurveyFolder.BoxOf(Lake));
        Assert.Contains("is no survey that can be used", Assert.Throws<OpenException>(() => SurveyFolder.With(Lake, page, Now)).Said(),
            StringComparison.Ordinal);
    }

    [Fact]
    public void Gml_of_lines_and_surfaces_is_read_in_either_order_of_axes()
    {
        const string Gml = """
            <FeatureCollection xmlns:gml="http://www.opengis.net/gml/3.2"><member><a><depth_ft>10</depth_ft><geom><gml:MultiCurve srsName="EPSG:4326"><gml:curveMember><gml:LineString><gml:posList>-84 44 -84.1 44.1</gml:posList></gml:LineString></gml:curveMember></gml:MultiCurve></geom></a></member>
            <member><a><geom><gml:Surface srsName="http://www.opengis.net/def/crs/EPSG/0/4326"><gml:patches><gml:PolygonPatch><gml:exterior><gml:LinearRing><gml:pos>44 -84</gml:pos><gml:pos>44 -83</gml:pos><gml:pos>45 -83</gml:pos><gml:pos>44 -84</gml:pos></gml:LinearRing></gml:exterior></gml:PolygonPatch></gml:patches></gml:Surface></geom></a></member></FeatureCollection>
            """;
        using JsonDocument json = GmlFeatures.ToGeoJson(XmlTree.Read(Encoding.UTF8.GetBytes(Gml))!);
        JsonElement[] shapes = [.. json.RootElement.GetProperty("features").EnumerateArray().Select(f => f.GetProperty("geometry"))];
        Assert.Equal("[[[-84,44],[-84.1,44.1]]]", shapes[0].GetProperty("coordinates").GetRawText());
        Assert.Equal("[[[[-84,44],[-83,44],[-83,45],[-84,44]]]]", shapes[1].GetProperty("coordinates").GetRawText());
        Assert.Equal(10, json.RootElement.GetProperty("features")[0].GetProperty("properties").GetProperty("depth_ft").GetDouble());
    }
}
