using System.Xml.Linq;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.Formats.Surveys;
using SecondShore.Formats.Writers;

namespace SecondShore.Formats.Tests.Writers;

public class MapWriterTests
{
    private static readonly GeoPoint A = new(41.5, -81.25), B = new(41.5, -81.24), C = new(41.51, -81.24), D = new(41.51, -81.25);

    [Fact]
    public void A_shoreline_written_reads_back_with_its_island()
    {
        GeoPoint[] island = [new(41.504, -81.246), new(41.505, -81.246), new(41.505, -81.245)];
        Shoreline shoreline = new([new WaterPolygon([A, D, C, B], [island])]);
        LakeFolder lake = LakeFolderReader.Read(new MemoryFiles("x").With("shoreline.geojson", GeoJsonWriter.Shoreline(shoreline)));
        WaterPolygon back = Assert.Single(lake.Shoreline!.Polygons);
        Assert.Equal(4, back.Outer.Count);
        Assert.Equal(3, Assert.Single(back.Islands).Count);
        Assert.True(Area(back.Outer) > 0, "the outer ring must run anticlockwise");
        Assert.True(Area(back.Islands[0]) < 0, "an island must run clockwise");
    }

    [Fact]
    public void A_ring_over_the_date_line_stays_in_one_piece()
    {
        GeoPoint[] ring = [new(10, 179.99), new(10, -179.99), new(10.01, -179.99), new(10.01, 179.99)];
        string text = GeoJsonWriter.Write([new MapFeature(new MapShape.Polygon(ring, []), [])]);
        Assert.Contains("180.01", text, StringComparison.Ordinal);
        SurveyImport import = Import("x.geojson", text);
        Assert.Equal(0.02, GeoPoint.WrapLongitudeDeg(import.Understanding!.Extent!.EastDeg - import.Understanding.Extent.WestDeg), 1e-9);
    }

    [Fact]
    public void Gpx_holds_its_elements_in_the_order_of_the_schema_and_its_depths_read_back()
    {
        GpxPoint stop = new(A, "Stop 1", "hump & <saddle>\u0001", "stop", 8.4, new DateTimeOffset(2026, 10, 5, 13, 0, 0, TimeSpan.Zero));
        string text = GpxWriter.Write("Plan", "Not for navigation.", null, [stop, stop with { Place = B, DepthM = 9.1 }, stop with { Place = C, DepthM = 7 }],
            [new GpxPath("Run", "", [new GpxPoint(A), new GpxPoint(C)])], [new GpxPath("Pass", "", [new GpxPoint(B), new GpxPoint(D)])]);
        XElement root = XDocument.Parse(text).Root!;
        Assert.Equal(["metadata", "wpt", "wpt", "wpt", "rte", "trk"], root.Elements().Select(e => e.Name.LocalName));
        Assert.Equal(["time", "name", "desc", "type", "extensions"], root.Elements().ElementAt(1).Elements().Select(e => e.Name.LocalName));
        Assert.Equal("http://www.topografix.com/GPX/1/1", root.Name.NamespaceName);
        SurveyImport import = Import("x.gpx", text);
        Assert.Equal([8.4, 9.1, 7], import.Survey!.Soundings.Single().DepthM);
        Assert.Equal(Knowledge.Stated, import.Understanding!.UnitKnown);
    }

    [Fact]
    public void Kml_contours_written_read_back_as_contours()
    {
        MapFeature contour = new(new MapShape.Polygon([A, B, C, D], []), [new MapProperty("name", "five"), new MapProperty("depth_m", 5.0)]);
        // One value alone would be the outline at that level.
        MapFeature deeper = new(new MapShape.Polygon([Between(A, B), Between(B, C), Between(C, D)], []), [new MapProperty("name", "eight"), new MapProperty("depth_m", 8.0)]);
        SurveyImport import = Import("x.kml", KmlWriter.Write("Contours", "", [contour, deeper]));
        ContourLine line = Assert.Single(import.Survey!.Contours, c => c.DepthM == 5);
        Assert.Equal(5.0, line.DepthM);
        Assert.True(line.Closed);
        Assert.Equal(4, line.Points.Count);
    }

    private static GeoPoint Between(GeoPoint a, GeoPoint b) => new((a.LatDeg + b.LatDeg) / 2, (a.LonDeg + b.LonDeg) / 2);

    private static SurveyImport Import(string name, string text) =>
        SurveyImporter.Read(new SurveySource(new MemoryFiles("x").With(name, text), name), new SurveyOptions(), SurveyContext.Nothing);

    private static double Area(IReadOnlyList<GeoPoint> ring)
    {
        double twice = 0;
        for (int i = 0; i < ring.Count; i++)
        {
            GeoPoint a = ring[i], b = ring[(i + 1) % ring.Count];
            twice += (a.LonDeg * b.LatDeg) - (b.LonDeg * a.LatDeg);
        }

        return twice;
    }
}
