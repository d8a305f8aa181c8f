using System.Globalization;
using System.Text;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;
using static SecondShore.TestKit.Synthetic.Odd.OddPlaces;

namespace SecondShore.TestKit.Synthetic.Odd;

/// <summary>Maps and grids as agencies hand them out: marks for nothing, pictures, terrain with several waters, units beside values.</summary>
internal static class OddMaps
{
    private const int Side = 90;

    public static IEnumerable<(string Name, Func<SeededRandom, OddSurvey> Make)> All => [.. Grids, .. Shapes];

    private static IEnumerable<(string Name, Func<SeededRandom, OddSurvey> Make)> Grids =>
    [
        ("GeoTIFF, a shaded picture", r => Tiff(Germany(r), (d, l, i) => Math.Round(128 + (100 * Math.Sin((i % Side * 0.3) + (d * 0.4))))) with { Lake = null }),
        ("GeoTIFF, shades of the water alone", r => Tiff(Germany(r), (d, l, i) => d > 0 ? Math.Round(255 - (200 * d / l.DeepestM)) : 0) with { Lake = null }),
        ("GeoTIFF, slopes", r => Tiff(Germany(r), (d, l, i) => Math.Abs(l.DeepestM - d) * 0.7) with { Lake = null }),
        ("GeoTIFF, whole centimetres", r => Tiff(Sweden(r), (d, l, _) => d > 0 ? Math.Round(d * 100) : double.NaN) with { MustAsk = true }),
        ("GeoTIFF, nothing as the least float", r => Tiff(Sweden(r), (d, l, _) => d > 0 ? d : -3.4028235e38, told: false)),
        ("GeoTIFF, nothing as -32767, untold", r => Tiff(Sweden(r), (d, l, _) => d > 0 ? d : -32767, told: false)),
        ("GeoTIFF, nothing as 1e10, untold", r => Tiff(Sweden(r), (d, l, _) => d > 0 ? d : 1e10, told: false)),
        ("GeoTIFF, nothing as 999, untold", r => Tiff(Sweden(r), (d, l, _) => d > 0 ? d : 999, told: false) with { MayBeRefused = true }),
        ("GeoTIFF, nothing as -99, untold", r => Tiff(Sweden(r), (d, l, _) => d > 0 ? -d : -99, told: false) with { MayBeRefused = true }),
        ("GeoTIFF, bed heights with land 0", r => Tiff(Germany(r), (d, l, _) => d > 0 ? l.SurfaceM - d : 0) with { MustAsk = true, MayBeRefused = true }),
        ("GeoTIFF, terrain with two waters", r => TwoWaters(r)),
        ("GeoTIFF, two lakes' depths", r => TwoBeds(r)),
        ("ASCII grid of a plane without its system", r => Plane(Germany(r))),
        ("ASCII grid by centres", r => Centres(Finland(r))),
        ("ASCII grid of bed heights", r => Heights(Finland(r))),
        ("NetCDF, temperatures", r => Cdf(Sweden(r), "temperature", d => 12 + (d * 0.2), ("units", "degree_Celsius")) with { Lake = null }),
        ("NetCDF, depth upward", r => Cdf(Sweden(r), "depth", d => -d, ("units", "m"), ("positive", "up"))),
        ("NetCDF, centimetres", r => Cdf(Sweden(r), "depth", d => d * 100, ("units", "cm"), ("positive", "down"))),
        ("NetCDF, no unit", r => Cdf(Sweden(r), "bathymetry", d => d)),
    ];

    private static IEnumerable<(string Name, Func<SeededRandom, OddSurvey> Make)> Shapes =>
    [
        ("lines with their unit beside, feet", r => Lines(Ontario(r), d => Num("depth", d / 0.3048) + ",\"unit\":\"ft\"", 2)),
        ("lines with their unit beside, mixed", r => Lines(Ontario(r), d => d % 4 == 0 ? Num("depth", d) + ",\"unit\":\"m\"" : Num("depth", d / 0.3048) + ",\"unit\":\"ft\"", 2)
            with { MayBeRefused = true }),
        ("lines with heights as third numbers", r => Lines(Sweden(r), _ => "\"kind\":\"contour\"", 2, d => -d)),
        ("lines of heights called depth", r => Lines(Germany(r), (d, l) => Num("DEPTH", l.SurfaceM - d), 2) with { MustAsk = true, MayBeRefused = true }),
        ("lines with the level of the day beside", r => Lines(Germany(r), (d, l) => Num("wsp", l.SurfaceM) + "," + Num("tiefe", d), 2)),
        ("lines one to a row of JSON", r => Rows(Lines(Sweden(r), d => Num("depth", d), 2))),
        ("lines of a web map, untold", r => Web(Sweden(r))),
        ("lines from 1 up with ids alone", r => Lines(Germany(r), d => Num("level", (d / 2) + 1), 2) with { Lake = null }),
        ("KML folders by depth", r => Folders(Ontario(r))),
        ("KML points below the sea", r => KmlPoints(Sweden(r))),
        ("outlines of a lake and its islands alone", r => Outline(Wisconsin(r))),
    ];

    private static OddSurvey Tiff(OddLake lake, Func<double, OddLake, int, double> value, bool told = true)
    {
        (double half, double side) = lake.Half();
        return Tiff(lake, Math.Max(half, side), (at, i) => value(lake.DepthM(at), lake, i), told);
    }

    private static OddSurvey Tiff(OddLake lake, double halfDeg, Func<GeoPoint, int, double> value, bool told = true, double southDeg = 0)
    {
        double cell = 2 * halfDeg / Side, west = lake.Middle.LonDeg - halfDeg, north = lake.Middle.LatDeg + halfDeg - southDeg;
        float[] values = new float[Side * Side];
        for (int i = 0; i < values.Length; i++)
        {
            double v = value(new GeoPoint(north - (((i / Side) + 0.5) * cell), west + (((i % Side) + 0.5) * cell)), i);
            values[i] = double.IsNaN(v) ? -9999 : (float)v;
        }

        TiffBuilder tiff = TiffBuilder.Floats(Side, Side, values, west, north, cell);
        return new OddSurvey("bottom.tif", (told ? tiff.Text(42113, "-9999") : tiff).Build(), lake);
    }

    private static (OddLake First, OddLake Second) Pair(SeededRandom r)
    {
        OddLake first = Germany(r);
        return (first, new OddLake(r, first.Middle.LatDeg - 0.045, first.Middle.LonDeg, 0));
    }

    // Two lakes in one terrain, the second's surface three metres below the first's.
    private static OddSurvey TwoWaters(SeededRandom r)
    {
        (OddLake first, OddLake second) = Pair(r);
        second.SurfaceM = first.SurfaceM - 3;
        return Tiff(first, 0.05, (at, _) => first.SurfaceM - Math.Max(Bed(first, at), Bed(second, at) + 3), southDeg: 0.022)
            with
        { MustAsk = true };

        // Land rises to a plain eight metres above the water, so that neither lake reaches the other.
        static double Bed(OddLake lake, GeoPoint at) => Math.Max(lake.DepthM(at), -8);
    }

    private static OddSurvey TwoBeds(SeededRandom r)
    {
        (OddLake first, OddLake second) = Pair(r);
        return Tiff(first, 0.05, (at, _) => Math.Max(first.DepthM(at), second.DepthM(at)) is > 0 and var d ? d : double.NaN, southDeg: 0.022)
            with
        { MustAsk = true, Others = [second] };
    }

    private static OddSurvey Plane(OddLake lake)
    {
        Formats.Coordinates.CoordinateSystem crs = Formats.Coordinates.CoordinateSystems.FromEpsg(25833, out _)!;
        (double x, double y) = crs.FromGeo(lake.Middle);
        double cell = Math.Round(2 * lake.Half().LatDeg * 111_000 / Side, 1), west = Math.Round(x - (cell * Side / 2)), south = Math.Round(y - (cell * Side / 2));
        float[] values = [.. Enumerable.Range(0, Side * Side).Select(i => crs.TryToGeo(west + (((i % Side) + 0.5) * cell), south + (((i / Side) + 0.5) * cell), out double lat, out double lon)
            && lake.DepthM(new GeoPoint(lat, lon)) is > 0 and var d ? (float)d : float.NaN)];
        return new OddSurvey("bottom.asc", Formats.Writers.AsciiGridWriter.Write(Side, Side, west, south, cell, values, 2), lake);
    }

    private static OddSurvey Centres(OddLake lake)
    {
        (double cell, double west, double south) = Field(lake);
        StringBuilder text = new(string.Create(CultureInfo.InvariantCulture,
            $"NCOLS {Side}\nNROWS {Side}\nXLLCENTER {west + (cell / 2):F7}\nYLLCENTER {south + (cell / 2):F7}\nCELLSIZE {cell:R}\nNODATA_VALUE -9999\n"));
        Rows(text, lake, cell, west, south, d => d > 0 ? d : -9999);
        return new OddSurvey("bottom.asc", text.ToString(), lake);
    }

    private static OddSurvey Heights(OddLake lake)
    {
        (double cell, double west, double south) = Field(lake);
        StringBuilder text = new(string.Create(CultureInfo.InvariantCulture,
            $"ncols {Side}\nnrows {Side}\nxllcorner {west:F7}\nyllcorner {south:F7}\ncellsize {cell:R}\nNODATA_value -9999\n"));
        Rows(text, lake, cell, west, south, d => d > 0 ? lake.SurfaceM - d : -9999);
        return new OddSurvey("bottom.asc", text.ToString(), lake) { MustAsk = true };
    }

    private static (double Cell, double West, double South) Field(OddLake lake)
    {
        (double half, double side) = lake.Half();
        double cell = Math.Round(2 * Math.Max(half, side) / Side, 7);
        return (cell, Math.Round(lake.Middle.LonDeg - (cell * Side / 2), 6), Math.Round(lake.Middle.LatDeg - (cell * Side / 2), 6));
    }

    private static void Rows(StringBuilder text, OddLake lake, double cell, double west, double south, Func<double, double> value)
    {
        for (int row = Side - 1; row >= 0; row--)
            text.AppendJoin(' ', Enumerable.Range(0, Side).Select(c => value(lake.DepthM(new GeoPoint(south + ((row + 0.5) * cell), west + ((c + 0.5) * cell))))
                .ToString("F2", CultureInfo.InvariantCulture))).Append('\n');
    }

    private static OddSurvey Cdf(OddLake lake, string name, Func<double, double> value, params (string, string)[] attributes)
    {
        (double half, double side) = lake.Half();
        double[] lats = [.. Enumerable.Range(0, Side).Select(i => lake.Middle.LatDeg - half + (2 * half * i / (Side - 1)))];
        double[] lons = [.. Enumerable.Range(0, Side).Select(i => lake.Middle.LonDeg - side + (2 * side * i / (Side - 1)))];
        double[] values = [.. lats.SelectMany(a => lons.Select(o => lake.DepthM(new GeoPoint(a, o)) is > 0 and var d ? value(d) : double.NaN))];
        return new OddSurvey("bottom.nc", new ClassicNetCdfBuilder().Dimension("lat", Side).Dimension("lon", Side)
            .Array("lat", ["lat"], lats, ("units", "degrees_north")).Array("lon", ["lon"], lons, ("units", "degrees_east"))
            .Array(name, ["lat", "lon"], values, attributes).Build(), lake);
    }

    private static string Num(string key, double value) => OddShapes.P(key, value);

    private static OddSurvey Lines(OddLake lake, Func<double, string> properties, double stepM, Func<double, double>? third = null) => Lines(lake, (d, _) => properties(d), stepM, third);

    private static OddSurvey Lines(OddLake lake, Func<double, OddLake, string> properties, double stepM, Func<double, double>? third = null)
    {
        IEnumerable<string> features = Steps(lake, stepM).Select(d =>
        {
            IEnumerable<GeoPoint> ring = lake.Ring(d).Append(lake.Ring(d)[0]);
            string points = string.Join(',', ring.Select(p => string.Create(CultureInfo.InvariantCulture,
                $"[{p.LonDeg:F7},{p.LatDeg:F7}{(third is null ? "" : string.Create(CultureInfo.InvariantCulture, $",{third(d):F2}"))}]")));
            return $"{{\"type\":\"Feature\",\"properties\":{{{properties(d, lake)}}},\"geometry\":{{\"type\":\"LineString\",\"coordinates\":[{points}]}}}}";
        });
        return new OddSurvey("shapes.geojson", $"{{\"type\":\"FeatureCollection\",\"features\":[{string.Join(",\n", features)}]}}", lake) { ToleranceM = 0.3 };
    }

    private static double[] Steps(OddLake lake, double stepM) => [.. Enumerable.Range(0, 60).Select(k => k * stepM).TakeWhile(d => d < lake.DeepestM - 0.4)];

    private static OddSurvey Rows(OddSurvey lines)
    {
        string text = Encoding.UTF8.GetString(lines.Bytes);
        string features = text[(text.IndexOf('[', StringComparison.Ordinal) + 1)..^2].Replace(",\n", "\n", StringComparison.Ordinal);
        return lines with { Bytes = Encoding.UTF8.GetBytes(features + "\n"), MayBeRefused = true };
    }

    private static OddSurvey Web(OddLake lake)
    {
        IEnumerable<string> features = Steps(lake, 2).Select(d => string.Create(CultureInfo.InvariantCulture,
            $"{{\"type\":\"Feature\",\"properties\":{{\"depth_m\":{d}}},\"geometry\":{{\"type\":\"LineString\",\"coordinates\":[{Points(lake.Ring(d))}]}}}}"));
        return new OddSurvey("shapes.geojson", $"{{\"type\":\"FeatureCollection\",\"features\":[{string.Join(",\n", features)}]}}", lake) { ToleranceM = 0.3 };

        // The sphere's Mercator of web maps, EPSG guidance note 7-2.
        static string Points(List<GeoPoint> ring) => string.Join(',', ring.Append(ring[0]).Select(p => string.Create(CultureInfo.InvariantCulture,
            $"[{6378137 * p.LonDeg * Math.PI / 180:F2},{6378137 * Math.Log(Math.Tan((Math.PI / 4) + (p.LatDeg * Math.PI / 360))):F2}]")));
    }

    private static OddSurvey Folders(OddLake lake) => new("map.kml",
        "<?xml version=\"1.0\"?><kml xmlns=\"http://www.opengis.net/kml/2.2\"><Document>" + string.Concat(Steps(lake, 2).Select(d =>
            $"<Folder><name>{d:0} m</name><Placemark><LineString><coordinates>{Text(lake.Ring(d).Append(lake.Ring(d)[0]), 0)}</coordinates></LineString></Placemark></Folder>"))
        + "</Document></kml>", lake)
    { ToleranceM = 0.3, MayBeRefused = true };

    private static OddSurvey KmlPoints(OddLake lake) => new("points.kml",
        "<?xml version=\"1.0\"?><kml xmlns=\"http://www.opengis.net/kml/2.2\"><Document>" + string.Concat(lake.Places.Select(p =>
            $"<Placemark><Point><coordinates>{Text([p], -lake.DepthM(p))}</coordinates></Point></Placemark>")) + "</Document></kml>", lake)
    { MayBeRefused = true };

    private static string Text(IEnumerable<GeoPoint> points, double heightM) =>
        string.Join(' ', points.Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.LonDeg:F7},{p.LatDeg:F7},{heightM:F2}")));

    private static OddSurvey Outline(OddLake lake)
    {
        string Ring(double d) => $"[{string.Join(',', lake.Ring(d).Append(lake.Ring(d)[0]).Select(p => string.Create(CultureInfo.InvariantCulture, $"[{p.LonDeg:F7},{p.LatDeg:F7}]")))}]";
        return new OddSurvey("lake.geojson", $"{{\"type\":\"Feature\",\"properties\":{{\"name\":\"Pond\"}},\"geometry\":{{\"type\":\"Polygon\",\"coordinates\":[{Ring(0)},{Ring(lake.DeepestM * 0.8)}]}}}}", lake)
        { OnlyShore = true };
    }
}
