namespace SecondShore.TestKit;

/// <summary>Surveys that are wrong or odd: grids, pictures, tables of soundings and shapes.</summary>
public static partial class BadInputs
{
    private static IEnumerable<BadInput> Grids()
    {
        string head = "ncols 4\nnrows 3\nxllcorner -81.25\nyllcorner 41.5\ncellsize 0.001\nNODATA_value -9999\n";
        yield return Survey("a grid cut short", "survey.asc", head + "1 2 3 4\n5 6 7 8\n", 3, "cut short");
        yield return Survey("a word in a grid", "survey.asc", head + "1 2 3 4\n5 deep 7 8\n1 2 3 4\n", 3, "'deep' stands where a number is expected");
        yield return Survey("a grid of ten thousand million cells", "survey.asc", head.Replace("ncols 4", "ncols 100000").Replace("nrows 3", "nrows 100000") + "1 2 3\n", 3, "where at most");
        yield return Survey("a grid larger than its file", "survey.asc", head.Replace("ncols 4", "ncols 4000").Replace("nrows 3", "nrows 4000") + "1 2 3\n", 3, "cut short");
        yield return Survey("a grid with no cell size", "survey.asc", head.Replace("0.001", "0") + "1 2 3 4\n5 6 7 8\n1 2 3 4\n", 3, "cell size");
        yield return Survey("a grid without columns", "survey.asc", head.Replace("ncols 4\n", "") + "1 2 3 4\n", 3, "lacks ncols");
        yield return Survey("a grid with half a row", "survey.asc", head.Replace("nrows 3", "nrows 2.5") + "1 2 3 4\n", 3, "whole numbers above 0");
        yield return Survey("a grid without data", "survey.asc", head + string.Concat(Enumerable.Repeat("-9999 -9999 -9999 -9999\n", 3)), 3, "no cell with data");
        yield return Survey("a lake of one cell", "survey.asc", head.Replace("ncols 4", "ncols 1").Replace("nrows 3", "nrows 1") + "7\n", 3, "too few");
        yield return Survey("a grid off the globe", "survey.asc", head.Replace("yllcorner 41.5", "yllcorner 4150000") + "1 2 3 4\n5 6 7 8\n1 2 3 4\n", 3, "coordinate system");
        yield return Survey("a grid deeper than any lake", "survey.asc", head + string.Concat(Enumerable.Repeat("90000 90000 90000 90000\n", 3)), 3, "does not say what its values");
    }

    private static IEnumerable<BadInput> Tiffs()
    {
        float[] depths = [.. Enumerable.Range(0, 400).Select(i => (float)(i % 20))];
        TiffBuilder Good() => TiffBuilder.Floats(20, 20, depths, -81.25, 41.52, 0.001);
        byte[] good = Good().Build();
        yield return Survey("a TIFF cut in its pixels", "survey.tif", good[..^500], 3, "cut short or damaged");
        yield return Survey("a TIFF cut in its directory", "survey.tif", good[..60], 3, "cut short or damaged");
        yield return Survey("a TIFF of four thousand megabytes in two kilobytes", "survey.tif", Good().Long(256, 32000).Long(257, 32000).Build(), 3, "where at most");
        yield return Survey("a TIFF announcing more than it has", "survey.tif", Good().Long(256, 4000).Long(257, 4000).Build(), 3, "cut short or damaged");
        yield return Survey("a TIFF without size", "survey.tif", Good().Long(256, 0).Build(), 3, "no size");
        yield return Survey("a TIFF that is a picture", "survey.tif", Good().Short(262, 2).Short(277, 3).Short(258, 8).Short(339, 1).Build(), 3, "a picture");
        yield return Survey("a TIFF of one-bit cells", "survey.tif", Good().Short(258, 1).Short(339, 1).Build(), 3, "which is not read");
        yield return Survey("a TIFF without a place", "survey.tif", Good().Without(33550).Without(33922).Build(), 3, "no place on the earth");
        yield return Survey("a TIFF in an unknown compression", "survey.tif", Good().Short(259, 31999).Build(), 3, "compressed in a way not read here");
        yield return Survey("text that calls itself TIFF", "survey.tif", B("hello, lake"), 3, "not a TIFF file");
        yield return Survey("a TIFF full of infinity", "survey.tif", TiffBuilder.Floats(20, 20, [.. depths.Select(_ => float.PositiveInfinity)], -81.25, 41.52, 0.001).Build(), 3, "no cell with data");
    }

    private static IEnumerable<BadInput> Texts()
    {
        string rows = string.Concat(Enumerable.Range(0, 40).Select(i => FormattableString.Invariant($"{41.5 + (i * 0.0001):F4},{-81.25 + ((i % 7) * 0.0003):F4},{1 + (i % 9)}.5\n")));
        string good = "lat,lon,depth_m\n" + rows;
        yield return Survey("soundings without a depth", "survey.csv", good.Replace("depth_m", "colour"), 3, "can be a depth");
        yield return Survey("soundings without a place", "survey.csv", "depth_m,note_n\n" + string.Concat(Enumerable.Repeat("3.5,1\n4.5,2\n", 20)), 3, "can be a position");
        yield return Survey("a header and no soundings", "survey.csv", "lat,lon,depth_m\n", 3, "no rows of numbers");
        yield return Survey("a word among the soundings", "survey.csv", good + "41.5,-81.25,deep\n", 0, "'deep' where a number is expected");
        yield return Survey("soundings in an unknown plane", "survey.csv", "x,y,depth_m\n" + string.Concat(Enumerable.Range(0, 40).Select(i => $"{9352600 + i},{94386507 + i},{i % 7}.5\n")), 3, "does not say its coordinate system");
        yield return Crs("a coordinate system of no number", "EPSG:999999", good, "not among the systems known here");
        yield return Crs("a coordinate system in words", "the usual one", good, "no coordinate system that can be read");
        yield return Crs("a coordinate system with broken brackets", "PROJCS[[[[", good, "cannot be read");
        yield return With("a unit of no system", 0, "where m, ft, fathoms, dm, cm or mm is expected", ("lake.json", B(Lake.Replace("\"name\"", "\"survey\": { \"unit\": \"cubits\" }, \"name\""))), ("survey.csv", B(good)));
        yield return With("elevations without a level", 3, "holds elevations", ("lake.json", B(Lake.Replace("\"elevation_m\": 300, ", ""))), ("survey.csv", B(good.Replace("depth_m", "elevation_m"))));
        yield return Survey("two soundings", "survey.csv", "lat,lon,depth_m\n41.5,-81.25,3\n41.501,-81.25,4\n", 3, "too few");
        yield return Survey("NMEA without depths", "survey.nmea", "$GPGGA,121923,4446.9570,N,06350.7119,W,1,08,1.2,116.2,M,-23.5,M,,*7B\n$GPRTE,1,1,c,*37\n$GPRTE,1,1,c,*37\n", 3, "no depths");
        yield return Survey("NMEA with wrong checksums", "survey.nmea", string.Concat(Enumerable.Repeat("$SDDPT,8.24,0.00*00\n$GPGGA,121923,4446.9570,N,06350.7119,W,1,08,1.2,116.2,M,-23.5,M,,*00\n", 5)), 3, "holds no soundings");
        yield return Survey("an HDF5 file with nothing in it", "survey.nc", [0x89, (byte)'H', (byte)'D', (byte)'F', 13, 10, 26, 10, .. new byte[200]], 3, "its table of contents cannot be followed");
        yield return Survey("a NetCDF file cut short", "survey.nc", SurveySamples.PondFile("pond-4.nc")[..9000], 3, "cut short or damaged");
        yield return Survey("text called NetCDF", "survey.nc", B("depths of the lake"), 3, "no NetCDF file");
    }

    private static IEnumerable<BadInput> Shapes()
    {
        const string fourPoints = """
            { "type": "Feature", "properties": { "depth_m": 1 }, "geometry":
              { "type": "MultiPoint", "coordinates": [[-81.25, 41.5], [-81.26, 41.5], [-81.26, 41.51], [-81.25, 41.51]] } }
            """;
        yield return Survey("GeoJSON cut short", "survey.geojson", """{ "type": "FeatureCollection", "features": [ { "type": "Fea""", 3, "not JSON that can be read");
        yield return Survey("GeoJSON without shapes", "survey.geojson", """{ "type": "FeatureCollection", "features": [] }""", 3, "holds no soundings");
        yield return Survey("GeoJSON nested without end", "survey.geojson", "{\"type\":\"FeatureCollection\",\"features\":" + new string('[', 5000), 3, "not JSON that can be read");
        yield return With("a shoreline that is a point", 3, "no polygon of water", ("lake.json", B(Lake)), ("shoreline.geojson", B(fourPoints)));
        yield return Survey("an XML bomb", "survey.kml", "<?xml version=\"1.0\"?><!DOCTYPE kml [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;\"><!ENTITY c \"&b;&b;&b;&b;&b;&b;&b;&b;&b;&b;\">]><kml><Document><name>&c;</name></Document></kml>", 3, "document type (DTD)");
        yield return Survey("an external entity", "survey.gpx", "<?xml version=\"1.0\"?><!DOCTYPE gpx [<!ENTITY x SYSTEM \"file:///etc/passwd\">]><gpx version=\"1.1\"><wpt lat=\"41.5\" lon=\"-81.25\"><name>&x;</name></wpt></gpx>", 3, "document type (DTD)");
        yield return Survey("GPX without depths", "survey.gpx", "<gpx version=\"1.1\"><wpt lat=\"41.5\" lon=\"-81.25\"><ele>300</ele></wpt></gpx>", 3, "no depths");
        yield return Survey("GPX cut short", "survey.gpx", "<gpx version=\"1.1\"><wpt lat=\"41.5\"", 3, "not XML that can be read");
        yield return Survey("KML without placemarks", "survey.kml", "<kml><Document/></kml>", 3, "holds no soundings");
        yield return Survey("a shapefile of its head alone", "survey.shp", [0, 0, 0x27, 0x0A, .. new byte[96]], 3, "holds no soundings");
        yield return Survey("text that calls itself a shapefile", "survey.shp", B("hello, lake"), 3, "no shapefile");
        yield return Survey("a shape with minus points", "survey.shp", [0, 0, 0x27, 0x0A, .. new byte[96], 0, 0, 0, 1, 0, 0, 0, 24, 5, 0, 0, 0, .. new byte[32], 255, 255, 255, 255, 255, 255, 255, 255, 0, 0, 0, 0], 3, "holds no soundings");
    }

    private static BadInput Survey(string name, string file, string text, int exit, string phrase) => Survey(name, file, B(text), exit, phrase);

    private static BadInput Survey(string name, string file, byte[] bytes, int exit, string phrase) =>
        With(name, exit, phrase, ("lake.json", B(Lake)), (file, bytes));

    private static BadInput Crs(string name, string crs, string survey, string phrase) =>
        With(name, 3, phrase, ("lake.json", B(Lake.Replace("\"name\"", $"\"survey\": {{ \"crs\": \"{crs}\" }}, \"name\""))), ("survey.csv", B(survey)));
}
