using System.IO.Compression;
using System.Text;

namespace SecondShore.TestKit;

/// <summary>Input that is wrong or odd, and what must become of it under any verb that reads a lake.</summary>
/// <param name="Name">A sentence-like name.</param>
/// <param name="Files">The files, by name.</param>
/// <param name="ExitCode">3 when it must be refused; 0 when it is read with what is odd said aloud.</param>
/// <param name="Phrase">Words that the message must hold; empty for odd input that is simply right.</param>
/// <param name="Open">The file to name instead of the folder; null for the folder.</param>
public sealed record BadInput(string Name, IReadOnlyDictionary<string, byte[]> Files, int ExitCode, string Phrase, string? Open = null)
{
    /// <summary>Writes the files under a folder and gives the path that a user would name.</summary>
    public string WriteTo(string folder)
    {
        string root = Path.Combine(folder, "lake");
        if (Files.Count > 0 || Open is null) Directory.CreateDirectory(root);
        foreach ((string name, byte[] bytes) in Files)
        {
            string path = Path.Combine(root, name);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllBytes(path, bytes);
        }

        return Open is null ? root : Path.Combine(root, Open);
    }

    /// <inheritdoc/>
    public override string ToString() => Name;
}

/// <summary>The list of bad and odd inputs, shared by the tests of the readers and of the terminal.</summary>
public static class BadInputs
{
    private static readonly string Lake = """{ "name": "Testwater", "latitude_deg": 41.5, "longitude_deg": -81.25, "time_zone": "America/New_York", "elevation_m": 300, "max_depth_m": 20 }""";
    private static readonly string Basin = "depth_m,area_m2\n0,400000\n10,150000\n20,0\n";
    private static readonly string Weather = "time,air_temp_c,relative_humidity_pct,wind_speed_m_s,shortwave_w_m2\n2026-09-01T00:00:00Z,20,70,2,0\n2026-09-01T01:00:00Z,19,71,2,0\n2026-09-01T02:00:00Z,18,72,2,0\n";

    /// <summary>All inputs.</summary>
    public static IReadOnlyList<BadInput> All { get; } = [.. Places(), .. LakeJsons(), .. Tables(), .. Grids(), .. Tiffs(), .. Texts(), .. Shapes(), .. Trips(), .. Odd()];

    private static IEnumerable<BadInput> Places()
    {
        yield return new("a path that is not there", new Dictionary<string, byte[]>(), 3, "no such folder or file", "nowhere");
        yield return new("an empty folder", new Dictionary<string, byte[]>(), 3, "the folder is empty");
        yield return One("a file of nothing", "survey.csv", "", 3, "the file is empty");
        yield return One("a file of random bytes", "survey.dat", Noise(4000, 7), 3, "of no kind that is read here");
        yield return One("a text that is no survey", "notes.txt", "Went fishing, caught nothing.\nWill try again.\n", 3, "no rows of numbers");
    }

    private static IEnumerable<BadInput> LakeJsons()
    {
        yield return Json("an empty lake.json", "", 3, "not JSON that can be read");
        yield return Json("a lake.json cut short", Lake[..60], 3, "not JSON that can be read");
        yield return Json("a lake.json that is a list", "[1, 2]", 3, "no JSON object");
        yield return Json("a lake.json nested ten thousand deep", new string('[', 10000), 3, "not JSON that can be read");
        yield return With("a lake.json of random bytes", 3, "not JSON that can be read", ("lake.json", Noise(500, 3)));
        yield return Json("a latitude of 95", Lake.Replace("41.5", "95"), 3, "latitude_deg is 95");
        yield return Json("a latitude in words", Lake.Replace("41.5", "\"north\""), 3, "where a number is expected");
        yield return Json("no position", """{ "name": "Nowhere" }""", 3, "nothing gives the lake's position");
        yield return Json("a time zone nobody knows", Lake.Replace("America/New_York", "Moon/Tranquility"), 0, "no IANA zone known");
        yield return Json("an elevation above any lake", Lake.Replace("300", "99999"), 0, "elevation_m is 99999");
        yield return Json("a negative greatest depth", Lake.Replace("\"max_depth_m\": 20", "\"max_depth_m\": -20"), 0, "max_depth_m is -20");
        yield return Json("units of no system", Lake.Replace("\"name\"", "\"units\": \"furlongs\", \"name\""), 0, "'us' or 'metric'");
        yield return Json("a ramp without a place", Lake.Replace("\"name\"", "\"ramps\": [{}], \"name\""), 0, "a ramp needs");
        yield return Json("an end of the measured weather in words", Lake.Replace("\"name\"", "\"measured_until\": \"yesterday\", \"name\""), 0, "measured_until");
        yield return Json("a mark of no kind", Lake.Replace("\"name\"", "\"marks\": [{ \"kind\": \"maybe\" }], \"name\""), 0, "must_visit");
    }

    private static IEnumerable<BadInput> Tables()
    {
        yield return Table("an empty weather file", "weather.csv", "", 3, "the file is empty");
        yield return Table("weather without a time column", "weather.csv", "air_temp_c\n20\n", 3, "no column named time");
        yield return Table("weather with a header and no rows", "weather.csv", "time,air_temp_c\n", 3, "no row of the file can be used");
        yield return Table("text in a number of the weather", "weather.csv", Weather.Replace(",19,", ",warm,"), 0, "'warm' where a number is expected");
        yield return Table("infinity in the weather", "weather.csv", Weather.Replace(",19,", ",Infinity,"), 0, "'Infinity' where a number is expected");
        yield return Table("Fahrenheit under a Celsius name", "weather.csv", Weather.Replace(",19,", ",68,"), 0, "air_temp_c is 68");
        yield return Table("weather of the year 0", "weather.csv", Weather.Replace("2026", "0000"), 3, "time '0000-09-01");
        yield return Table("weather of the year 1066", "weather.csv", Weather.Replace("2026", "1066"), 3, "a year that cannot be right");
        yield return Table("the hour that comes twice", "weather.csv", "time,air_temp_c\n2026-11-01T00:30,9\n2026-11-01T01:30,8\n2026-11-01T01:30,7\n2026-11-01T02:30,6\n", 0, "comes twice");
        yield return Table("the hour that does not exist", "weather.csv", "time,air_temp_c\n2026-03-08T01:30,1\n2026-03-08T02:30,2\n2026-03-08T04:30,3\n", 0, "does not exist");
        yield return Table("weather out of order", "weather.csv", "time,air_temp_c\n2026-09-02T00:00Z,9\n2026-09-01T00:00Z,8\n", 0, "not in order of time");
        yield return Table("a quotation mark that never closes", "weather.csv", Weather + "\"2026-09-01T03:00:00Z,18\n2026-09-01T04:00:00Z,18,70,2,0\n", 0, "never closed");
        yield return With("weather of random bytes", 3, "is not text", ("lake.json", B(Lake)), ("hypsography.csv", B(Basin)), ("weather.csv", Noise(3000, 5)));
        yield return With("weather in an old 8-bit code", 0, "Western 8-bit", ("lake.json", B(Lake)), ("hypsography.csv", B(Basin)), ("weather.csv", Encoding.Latin1.GetBytes(Weather.Replace("\n", ",\u00B0\n"))));
        yield return Table("a climate file that is no year", "climate/hot.csv", Weather, 0, "not a year");
        yield return Table("profiles without a depth", "profiles.csv", "time,temp_c\n2026-09-01T00:00Z,20\n", 3, "depth_m");
        yield return Table("a negative depth in a profile", "profiles.csv", "time,depth_m,temp_c\n2026-09-01T00:00Z,-3,20\n2026-09-01T00:00Z,3,20\n", 0, "depth_m is -3");
        yield return Table("readings of nothing", "readings.csv", "time,mood\n2026-09-01T00:00Z,good\n", 3, "no column with a reading");
        yield return Table("a haze 900 m down", "readings.csv", "time,haze_depth_m\n2026-09-01T00:00Z,900\n", 0, "haze_depth_m is 900");
        yield return Table("a reading at no time", "readings.csv", "time,secchi_m\nlast week,3\n2026-09-01T00:00Z,3\n", 0, "'last week' is not a time");
        yield return Table("a column without a unit", "readings.csv", "time,secchi\n2026-09-01T00:00Z,3\n", 0, "carries no unit");
        yield return Table("levels without columns", "level.csv", "time,what\n2026-09-01,1\n", 3, "below_full_pool_m");
        yield return With("level elevations without full pool", 3, "no elevation_m of full pool", ("lake.json", B(Lake.Replace("\"elevation_m\": 300, ", ""))), ("hypsography.csv", B(Basin)), ("level.csv", B("time,pool_elevation_ft\n2026-09-01,980\n")));
        yield return Table("an area that grows with depth", "hypsography.csv", "depth_m,area_m2\n0,100\n5,200\n10,0\n", 3, "must not grow");
        yield return Table("a hypsography that does not start at the surface", "hypsography.csv", "depth_m,area_m2\n2,100\n5,20\n", 3, "where 0 (the surface) is expected");
        yield return Table("a hypsography of one row", "hypsography.csv", "depth_m,area_m2\n0,100\n", 3, "at least two depths");
        yield return Table("cover without a place", "cover.csv", "kind,note\nbrush,big\n", 3, "latitude_deg");
        yield return Table("cover off the globe", "cover.csv", "latitude_deg,longitude_deg,kind\n123,-81,brush\n", 0, "latitude_deg is 123");
        yield return Table("flows without columns", "flows.csv", "time,water\n2026-09-01,1\n", 3, "inflow_m3_s");
        yield return Table("a jig without a weight", "tackle.json", """{ "jigs": [ { "name": "Heavy" } ] }""", 0, "a jig needs weight_g");
        yield return Table("tackle cut short", "tackle.json", """{ "jigs": [ """, 3, "not JSON that can be read");
        yield return Table("a log without kinds", "log.csv", "time,fish\n2026-09-01T00:00Z,2\n", 3, "kind");
        yield return Table("a log entry of no kind", "log.csv", "time,kind\n2026-09-01T00:00Z,wondered\n2026-09-01T00:00Z,note\n", 0, "'wondered'");
    }

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
        yield return Survey("GeoJSON cut short", "survey.geojson", """{ "type": "FeatureCollection", "features": [ { "type": "Fea""", 3, "not JSON that can be read");
        yield return Survey("GeoJSON without shapes", "survey.geojson", """{ "type": "FeatureCollection", "features": [] }""", 3, "holds no soundings");
        yield return Survey("GeoJSON nested without end", "survey.geojson", "{\"type\":\"FeatureCollection\",\"features\":" + new string('[', 5000), 3, "not JSON that can be read");
        yield return With("a shoreline that is a point", 3, "no polygon of water", ("lake.json", B(Lake)), ("shoreline.geojson", B("""{ "type": "Feature", "properties": { "depth_m": 1 }, "geometry": { "type": "MultiPoint", "coordinates": [[-81.25, 41.5], [-81.26, 41.5], [-81.26, 41.51], [-81.25, 41.51]] } }""")));
        yield return Survey("an XML bomb", "survey.kml", "<?xml version=\"1.0\"?><!DOCTYPE kml [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;\"><!ENTITY c \"&b;&b;&b;&b;&b;&b;&b;&b;&b;&b;\">]><kml><Document><name>&c;</name></Document></kml>", 3, "document type (DTD)");
        yield return Survey("an external entity", "survey.gpx", "<?xml version=\"1.0\"?><!DOCTYPE gpx [<!ENTITY x SYSTEM \"file:///etc/passwd\">]><gpx version=\"1.1\"><wpt lat=\"41.5\" lon=\"-81.25\"><name>&x;</name></wpt></gpx>", 3, "document type (DTD)");
        yield return Survey("GPX without depths", "survey.gpx", "<gpx version=\"1.1\"><wpt lat=\"41.5\" lon=\"-81.25\"><ele>300</ele></wpt></gpx>", 3, "no depths");
        yield return Survey("GPX cut short", "survey.gpx", "<gpx version=\"1.1\"><wpt lat=\"41.5\"", 3, "not XML that can be read");
        yield return Survey("KML without placemarks", "survey.kml", "<kml><Document/></kml>", 3, "holds no soundings");
        yield return Survey("a shapefile of its head alone", "survey.shp", [0, 0, 0x27, 0x0A, .. new byte[96]], 3, "holds no soundings");
        yield return Survey("text that calls itself a shapefile", "survey.shp", B("hello, lake"), 3, "no shapefile");
        yield return Survey("a shape with minus points", "survey.shp", [0, 0, 0x27, 0x0A, .. new byte[96], 0, 0, 0, 1, 0, 0, 0, 24, 5, 0, 0, 0, .. new byte[32], 255, 255, 255, 255, 255, 255, 255, 255, 0, 0, 0, 0], 3, "holds no soundings");
    }

    private static IEnumerable<BadInput> Trips()
    {
        yield return Trip("a trip file with a name that climbs out", 3, "outside the lake's folder", ("lake.json", B(Lake)), ("../evil.txt", B("x")));
        yield return Trip("a trip file with an absolute name", 3, "outside the lake's folder", ("lake.json", B(Lake)), ("/etc/evil.txt", B("x")));
        yield return Trip("a trip file with a backslash in a name", 3, "outside the lake's folder", ("lake.json", B(Lake)), ("..\\evil.txt", B("x")));
        yield return Trip("a trip file that is a bomb", 3, "zip bomb", ("lake.json", B(Lake)), ("weather.csv", new byte[60_000_000]));
        yield return Trip("a trip file with one name twice", 3, "two files named", ("lake.json", B(Lake)), ("lake.json", B(Lake)));
        yield return Trip("an empty trip file", 3, "is empty");
        byte[] good = Zip(("lake.json", B(Lake)), ("hypsography.csv", B(Basin)));
        yield return new("a trip file cut short", new Dictionary<string, byte[]> { ["trip.zip"] = good[..^40] }, 3, "damaged", "trip.zip");
        yield return new("a trip file in name only", new Dictionary<string, byte[]> { ["trip.zip"] = [(byte)'P', (byte)'K', 3, 4, .. Noise(500, 9)] }, 3, "damaged", "trip.zip");
    }

    private static IEnumerable<BadInput> Odd()
    {
        string at = "lat,lon,depth_m\n";
        yield return With("a lake on the date line", 0, "", ("lake.json", B("""{ "name": "Dateline", "latitude_deg": 52, "longitude_deg": 179.999, "elevation_m": 10 }""")),
            ("survey.csv", B(at + Cone(52, 179.999))));
        yield return With("a lake of the southern hemisphere", 0, "", ("lake.json", B("""{ "name": "South", "latitude_deg": -41.2, "longitude_deg": 175.5, "time_zone": "Pacific/Auckland", "elevation_m": 10 }""")),
            ("survey.csv", B(at + Cone(-41.2, 175.5))));
        yield return With("a lake on the equator", 0, "", ("lake.json", B("""{ "name": "Zero", "latitude_deg": 0, "longitude_deg": 0, "elevation_m": 0 }""")), ("survey.csv", B(at + Cone(0, 0))));
        yield return With("a UTF-8 mark before the header", 0, "", ("lake.json", [0xEF, 0xBB, 0xBF, .. B(Lake)]), ("hypsography.csv", [0xEF, 0xBB, 0xBF, .. B(Basin)]));
    }

    private static string Cone(double lat, double lon) => string.Concat(Enumerable.Range(0, 900).Select(i =>
    {
        double dx = ((i % 30) - 14.5) / 14.5, dy = ((i / 30) - 14.5) / 14.5, depth = Math.Max(0, 20 * (1 - Math.Sqrt((dx * dx) + (dy * dy))));
        double east = lon + (dx * 0.006);
        return FormattableString.Invariant($"{lat + (dy * 0.004):F6},{(east >= 180 ? east - 360 : east):F6},{depth:F2}\n");
    }));

    private static BadInput One(string name, string file, string text, int exit, string phrase) => One(name, file, B(text), exit, phrase);

    private static BadInput One(string name, string file, byte[] bytes, int exit, string phrase) =>
        new(name, new Dictionary<string, byte[]> { [file] = bytes }, exit, phrase, file);

    private static BadInput Json(string name, string text, int exit, string phrase) =>
        With(name, exit, phrase, ("lake.json", B(text)), ("hypsography.csv", B(Basin)));

    private static BadInput Table(string name, string file, string text, int exit, string phrase)
    {
        Dictionary<string, byte[]> files = new() { ["lake.json"] = B(Lake), ["hypsography.csv"] = B(Basin) };
        files[file] = B(text);
        return new BadInput(name, files, exit, phrase);
    }

    private static BadInput Survey(string name, string file, string text, int exit, string phrase) => Survey(name, file, B(text), exit, phrase);

    private static BadInput Survey(string name, string file, byte[] bytes, int exit, string phrase) =>
        With(name, exit, phrase, ("lake.json", B(Lake)), (file, bytes));

    private static BadInput Crs(string name, string crs, string survey, string phrase) =>
        With(name, 3, phrase, ("lake.json", B(Lake.Replace("\"name\"", $"\"survey\": {{ \"crs\": \"{crs}\" }}, \"name\""))), ("survey.csv", B(survey)));

    private static BadInput With(string name, int exit, string phrase, params (string File, byte[] Bytes)[] files) =>
        new(name, files.ToDictionary(f => f.File, f => f.Bytes), exit, phrase);

    private static BadInput Trip(string name, int exit, string phrase, params (string File, byte[] Bytes)[] files) =>
        new(name, new Dictionary<string, byte[]> { ["trip.zip"] = Zip(files) }, exit, phrase, "trip.zip");

    private static byte[] Zip(params (string File, byte[] Bytes)[] files)
    {
        using MemoryStream stream = new();
        using (ZipArchive zip = new(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach ((string file, byte[] bytes) in files)
            {
                using Stream entry = zip.CreateEntry(file).Open();
                entry.Write(bytes);
            }
        }

        return stream.ToArray();
    }

    private static byte[] B(string text) => Encoding.UTF8.GetBytes(text);

    private static byte[] Noise(int length, int seed)
    {
        byte[] bytes = new byte[length];
        uint state = (uint)seed * 2654435761;
        for (int i = 0; i < length; i++)
        {
            state = (state * 1664525) + 1013904223;
            bytes[i] = (byte)(state >> 24);
        }

        return bytes;
    }
}
