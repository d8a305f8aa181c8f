using System.Globalization;
using System.IO.Compression;
using System.Text;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;
using static SecondShore.TestKit.Synthetic.Odd.OddPlaces;

namespace SecondShore.TestKit.Synthetic.Odd;

/// <summary>Bands, contours, outlines and points as GeoJSON, KML and Shapefiles, attributed awkwardly.</summary>
internal static class OddShapes
{
    private const double StepM = 2;

    public static IEnumerable<(string Name, Func<SeededRandom, OddSurvey> Make)> All =>
    [
        ("bands, range as text", r => Bands(Wisconsin(r), (a, b, l) => P("depth", $"{a:0}-{b:0} m"))),
        ("bands, range in words", r => Bands(Germany(r), (a, b, l) => P("Tiefe", $"{a:0} bis {b:0} m"))),
        ("bands, range in feet", r => Bands(Wisconsin(r), (a, b, l) => P("DEPTH_FT", string.Create(CultureInfo.InvariantCulture, $"{a / 0.3048:0.#} - {b / 0.3048:0.#}")))),
        ("bands, the deepest open", r => Bands(Ontario(r), (a, b, l) => P("Depth_Range", l ? $">{a:0} m" : $"{a:0}-{b:0} m"))),
        ("bands, least and greatest", r => Bands(Sweden(r), (a, b, l) => P("MIN_DEPTH", a) + "," + P("MAX_DEPTH", b))),
        ("bands, from and to", r => Bands(Poland(r), (a, b, l) => P("depth_from", a) + "," + P("depth_to", b))),
        ("bands, upper and lower heights", r => Bands(Germany(r), (a, b, l) => P("elev_max", -a) + "," + P("elev_min", -b))),
        ("bands, classes only", r => Bands(Germany(r), (a, b, l) => P("class", Math.Round(a / StepM) + 1)) with { MustAsk = true, MayBeRefused = true }),
        ("bands, mean depth", r => Bands(Germany(r), (a, b, l) => P("mean_depth", (a + b) / 2)) with { ToleranceM = 1.3 }),
        ("contours as lines, heights in feet", r => Lines(Wisconsin(r), (d, l) => P("CONTOUR", Math.Round((l.SurfaceM - d) / 0.3048, 1)))),
        ("contours as lines with a minus", r => Lines(Sweden(r), (d, l) => P("depth", -d))),
        ("contours as text with a unit", r => Lines(Ontario(r), (d, l) => P("DEPTH", string.Create(CultureInfo.InvariantCulture, $"{d:0} m")))),
        ("contours as text with feet", r => Lines(Wisconsin(r), (d, l) => P("depth", string.Create(CultureInfo.InvariantCulture, $"{d / 0.3048:0.0}'")))),
        ("contours, decimal comma", r => Lines(Germany(r), (d, l) => P("Tiefe", d.ToString("0.0", CultureInfo.InvariantCulture).Replace('.', ',')))),
        ("contours with ids and lengths", r => Lines(Germany(r), (d, l) => P("OBJECTID", Math.Round(d * 3) + 7) + "," + P("Shape_Length", 5000 - (d * 90)) + "," + P("tiefe_m", d))),
        ("contours without a depth", r => Lines(Germany(r), (d, l) => P("OBJECTID", Math.Round(d * 3) + 7) + "," + P("Shape_Length", 5000 - (d * 90))) with { Lake = null }),
        ("contours, latitude first", r => Lines(Wisconsin(r), (d, l) => P("depth_m", d), swapped: true)),
        ("contours in a plane, named", r => Lines(Germany(r), (d, l) => P("depth_m", d), epsg: 25833, crs: "\"crs\":{\"type\":\"name\",\"properties\":{\"name\":\"urn:ogc:def:crs:EPSG::25833\"}},")),
        ("contours in a plane, unnamed", r => Lines(Germany(r), (d, l) => P("depth_m", d), epsg: 25833)),
        ("an outline at one height", r => Outline(Wisconsin(r), l => P("ELEV_FT", Math.Round(l.SurfaceM / 0.3048)))),
        ("an outline of depth 0", r => Outline(Wisconsin(r), l => P("depth", 0)) with { MayBeRefused = true }),
        ("an outline with the greatest depth", r => Outline(Wisconsin(r), l => P("max_depth", l.DeepestM) + "," + P("area_ha", 88.2))),
        ("many outlines with a depth each", r => Waters(r)),
        ("two lakes' contours", r => TwoLakes(r)),
        ("points, heights as third numbers", r => Points(Sweden(r), (p, d) => Three(p, -d), _ => "\"kind\":\"sounding\"")),
        ("points, depth as text", r => Points(Ontario(r), (p, d) => Two(p), d => P("depth", string.Create(CultureInfo.InvariantCulture, $"{d:F1} m")))),
        ("points, feet named", r => Points(Wisconsin(r), (p, d) => Two(p), d => P("Depth_Feet", Math.Round(d / 0.3048, 1)))),
        ("a KML with depths as names", r => Kml(Ontario(r), d => $"<name>{d:0} m</name>")),
        ("a KML with feet as names", r => Kml(Wisconsin(r), d => string.Create(CultureInfo.InvariantCulture, $"<name>{d / 0.3048:0.0} ft</name>"))),
        ("a KML with data", r => Kml(Germany(r), d => $"<ExtendedData><Data name=\"Tiefe\"><value>{d:0}</value></Data></ExtendedData>")),
        ("a KML with a description", r => Kml(Germany(r), d => $"<name>Line</name><description>Depth: {d:0} m</description>") with { MayBeRefused = true }),
        ("a KMZ", r => Zip(Kml(Sweden(r), d => $"<name>{d:0}m</name>"))),
    ];

    internal static double[] Steps(OddLake lake) => [.. Enumerable.Range(0, 60).Select(k => k * StepM).TakeWhile(d => d < lake.DeepestM - 0.4)];

    internal static string P(string key, string value) => $"\"{key}\":\"{value.Replace("\"", "\\\"", StringComparison.Ordinal)}\"";

    internal static string P(string key, double value) => string.Create(CultureInfo.InvariantCulture, $"\"{key}\":{value:0.###}");

    private static string Two(GeoPoint p) => string.Create(CultureInfo.InvariantCulture, $"[{p.LonDeg:F7},{p.LatDeg:F7}]");

    private static string Three(GeoPoint p, double z) => string.Create(CultureInfo.InvariantCulture, $"[{p.LonDeg:F7},{p.LatDeg:F7},{z:F2}]");

    private static string Ring(IEnumerable<GeoPoint> ring, Func<GeoPoint, string>? form = null)
    {
        string[] all = [.. ring.Select(form ?? Two)];
        return $"[{string.Join(',', all)},{all[0]}]";
    }

    private static string Feature(string type, string coordinates, string properties) =>
        $"{{\"type\":\"Feature\",\"properties\":{{{properties}}},\"geometry\":{{\"type\":\"{type}\",\"coordinates\":{coordinates}}}}}";

    private static OddSurvey Collection(IEnumerable<string> features, OddLake? lake, string crs = "") =>
        new("shapes.geojson", $"{{\"type\":\"FeatureCollection\",{crs}\"features\":[{string.Join(",\n", features)}]}}", lake);

    // Each band with a hole where the next begins.
    private static OddSurvey Bands(OddLake lake, Func<double, double, bool, string> properties)
    {
        double[] steps = Steps(lake);
        return Collection(steps.Select((d, k) => Feature("Polygon", k + 1 < steps.Length ? $"[{Ring(lake.Ring(d))},{Ring(lake.Ring(steps[k + 1]))}]" : $"[{Ring(lake.Ring(d))}]",
            properties(d, k + 1 < steps.Length ? steps[k + 1] : d + StepM, k + 1 == steps.Length))), lake) with
        { ToleranceM = 0.3 };
    }

    private static OddSurvey Lines(OddLake lake, Func<double, OddLake, string> properties, bool swapped = false, int epsg = 0, string crs = "")
    {
        Formats.Coordinates.CoordinateSystem? plane = epsg > 0 ? Formats.Coordinates.CoordinateSystems.FromEpsg(epsg, out _) : null;
        string Form(GeoPoint p) => plane is not null ? string.Create(CultureInfo.InvariantCulture, $"[{plane.FromGeo(p).X:F2},{plane.FromGeo(p).Y:F2}]")
            : swapped ? string.Create(CultureInfo.InvariantCulture, $"[{p.LatDeg:F7},{p.LonDeg:F7}]") : Two(p);
        return Collection(Steps(lake).Select(d => Feature("LineString", Ring(lake.Ring(d), Form), properties(d, lake))), lake, crs) with { ToleranceM = 0.3 };
    }

    private static OddSurvey Outline(OddLake lake, Func<OddLake, string> properties) => Collection([Feature("Polygon", $"[{Ring(lake.Ring(0))}]", properties(lake))], lake) with { OnlyShore = true };

    // A depth that a register gives each of its lakes is no contour.
    private static OddSurvey Waters(SeededRandom r) => Collection(Enumerable.Range(0, 40).Select(_ =>
    {
        OddLake lake = Wisconsin(r);
        return Feature("Polygon", $"[{Ring(lake.Ring(0, 24))}]", P("name", "Pond") + "," + P("max_depth", Math.Round(lake.DeepestM)) + "," + P("area_ac", 120.5));
    }), null);

    private static OddSurvey TwoLakes(SeededRandom r)
    {
        OddLake first = Wisconsin(r), second = new(r, first.Middle.LatDeg + 1.1, first.Middle.LonDeg);
        return Collection(new[] { first, second }.SelectMany(lake => Steps(lake).Select(d => Feature("LineString", Ring(lake.Ring(d)), P("depth_m", d)))), first)
            with
        { MustAsk = true, ToleranceM = 0.3, Others = [second] };
    }

    private static OddSurvey Points(OddLake lake, Func<GeoPoint, double, string> coordinates, Func<double, string> properties) =>
        Collection(lake.Places.Select(p => Feature("Point", coordinates(p, lake.DepthM(p)), properties(lake.DepthM(p)))), lake);

    private static string Corner(GeoPoint p) => string.Create(CultureInfo.InvariantCulture, $"{p.LonDeg:F7},{p.LatDeg:F7},0");

    private static OddSurvey Kml(OddLake lake, Func<double, string> head) => new("map.kml",
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?><kml xmlns=\"http://www.opengis.net/kml/2.2\"><Document>" + string.Concat(Steps(lake).Select(d =>
            $"<Placemark>{head(d)}<LineString><coordinates>{string.Join(' ', lake.Ring(d).Append(lake.Ring(d)[0]).Select(Corner))}"
                + "</coordinates></LineString></Placemark>"))
        + "</Document></kml>", lake)
    { ToleranceM = 0.3 };

    private static OddSurvey Zip(OddSurvey kml)
    {
        using MemoryStream stream = new();
        using (ZipArchive zip = new(stream, ZipArchiveMode.Create, leaveOpen: true))
        using (Stream entry = zip.CreateEntry("doc.kml").Open()) entry.Write(kml.Bytes);
        return kml with { Name = "map.kmz", Bytes = stream.ToArray() };
    }
}
