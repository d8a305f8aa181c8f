using System.IO.Compression;
using System.Text;

namespace SecondShore.TestKit;

/// <summary>The list of bad and odd inputs, shared by the tests of the readers and of the terminal.</summary>
public static partial class BadInputs
{
    private static readonly string Lake = """{ "name": "Testwater", "latitude_deg": 41.5, "longitude_deg": -81.25,"""
        + """ "time_zone": "America/New_York", "elevation_m": 300, "max_depth_m": 20 }""";
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
