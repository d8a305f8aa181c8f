using System.Globalization;

namespace SecondShore.TestKit;

/// <summary>
/// A place search and an interface to an open map of the tests' own, in the documented forms: places by name, waters by box, shapes by
/// number.
/// Its waters are invented: Ferncombe Water, a round lake put together of three lines with two islands; a pond; a tarn drawn as one line.
/// </summary>
public static class OpenMapStandIn
{
    /// <summary>Where Ferncombe Water lies.</summary>
    public const double LatDeg = 44.7312, LonDeg = -84.2987;

    /// <summary>Its radius, degrees of latitude and of longitude: some 1.1 km each way.</summary>
    public const double RadiusLatDeg = 0.01, RadiusLonDeg = 0.014;

    /// <summary>Number of Ferncombe Water, a relation.</summary>
    public const long FerncombeId = 7100;

    /// <summary>Number of the tarn, a way.</summary>
    public const long TarnId = 7200;

    /// <summary>The service: <c>/search</c> is the place search, <c>/map</c> the map.</summary>
    public static ServiceStandIn Start() =>
        new(q => q.Path == "/search" ? ServiceReply.Of(Places(q.Value("name") ?? "")) : ServiceReply.Of(Map(q.Form)));

    /// <summary>The place search's answer to a name.</summary>
    public static string Places(string name) => name.StartsWith("Ferncombe", StringComparison.OrdinalIgnoreCase)
        ? "{\"results\":[" + Place(1, "Ferncombe", "PPL", 44.80, -84.35, 260) + "," + Place(2, "Ferncombe Water", "LK", LatDeg, LonDeg,
            241) + "],\"generationtime_ms\":0.4}"
        : name.StartsWith("Lone", StringComparison.OrdinalIgnoreCase)
            ? "{\"results\":[" + Place(3, "Lone Tarn", "LK", 44.7601, -84.2501, 255) + "]}"
        : "{\"generationtime_ms\":0.3}";

    /// <summary>The map's answer to a query.</summary>
    public static string Map(string query) => query.Contains("out geom", StringComparison.Ordinal)
        ? query.Contains($"relation({FerncombeId})", StringComparison.Ordinal) ? Ferncombe()
            : query.Contains($"way({TarnId})", StringComparison.Ordinal) ? Tarn() : Elements("")
        : query.Contains("44.76,", StringComparison.Ordinal)
            ? Elements(Listed("way", TarnId, "Lone Tarn", 44.7590, -84.2515, 44.7610, -84.2485, "lake"))
        : query.Contains("44.73,", StringComparison.Ordinal)
            ? Elements(Listed("way", 7300, "", LatDeg + 0.012, LonDeg + 0.016, LatDeg + 0.013, LonDeg + 0.017, "pond") + ","
                + Listed("relation", FerncombeId, "Ferncombe Water", LatDeg - RadiusLatDeg, LonDeg - RadiusLonDeg, LatDeg + RadiusLatDeg,
                    LonDeg + RadiusLonDeg, "reservoir"))
            : Elements("");

    private static string Place(int id, string name, string code, double latDeg, double lonDeg, double elevationM) =>
        string.Create(CultureInfo.InvariantCulture,
        $"{{\"id\":{id},\"name\":\"{name}\",\"latitude\":{latDeg},\"longitude\":{lonDeg},\"elevation\":{elevationM},\"feature_code\":\"{code}\",\"country_code\":\"US\",\"timezone\":\"America/Detroit\",\"country\":\"Nowhere\",\"admin1\":\"North Shire\"}}");

    private static string Elements(string items) =>
        "{\"version\":0.6,\"generator\":\"stand-in\",\"osm3s\":{\"copyright\":\"ODbL\"},\"elements\":[" + items + "]}";

    private static string Listed(string type, long id, string name, double south, double west, double north, double east, string water) =>
        string.Create(CultureInfo.InvariantCulture,
        $"{{\"type\":\"{type}\",\"id\":{id},\"bounds\":{{\"minlat\":{south},\"minlon\":{west},\"maxlat\":{north},\"maxlon\":{east}}},\"tags\":{{\"natural\":\"water\",\"water\":\"{water}\"{(name.Length > 0 ? $",\"name\":\"{name}\"" : "")}}}}}");

    // Three lines of the shore, out of order and one of them the other way round; one island of two lines, one of one.
    private static string Ferncombe()
    {
        string a = Arc(0, 40), b = Arc(80, 40), c = Arc(80, 120);
        string members = string.Join(',', Member("outer", b), Member("outer", c), Member("outer", a),
            Member("inner", Ring(0.2, 0.1, 0.05, 0, 12)), Member("inner", Ring(0.2, 0.1, 0.05, 12, 24)),
                Member("inner", Ring(-0.4, -0.3, 0.08, 0, 24)),
            "{\"type\":\"node\",\"ref\":9,\"role\":\"label\",\"lat\":44.7,\"lon\":-84.2}");
        return Elements(
            $"{{\"type\":\"relation\",\"id\":{FerncombeId},\"members\":[{members}],\"tags\":{{\"name\":\"Ferncombe Water\",\"type\":\"multipolygon\"}}}}");
    }

    private static string Tarn() => Elements($"{{\"type\":\"way\",\"id\":{TarnId},\"nodes\":[1,2,3,4,1],\"geometry\":["
        + "{\"lat\":44.7590,\"lon\":-84.2515},{\"lat\":44.7590,\"lon\":-84.2485},{\"lat\":44.7610,\"lon\":-84.2485},{\"lat\":44.7610,\"lon\":-84.2515},{\"lat\":44.7590,\"lon\":-84.2515}"
        + "],\"tags\":{\"natural\":\"water\"}}");

    private static string Member(string role, string geometry) =>
        $"{{\"type\":\"way\",\"ref\":1,\"role\":\"{role}\",\"geometry\":[{geometry}]}}";

    // The shore in 120 steps.
    private static string Arc(int from, int to)
    {
        IEnumerable<int> steps = from <= to ? Enumerable.Range(from, to - from + 1) : Enumerable.Range(to, from - to + 1).Reverse();
        return string.Join(',', steps.Select(k => Point(Math.Tau * (k % 120) / 120, 0, 0, 1)));
    }

    private static string Ring(double x, double y, double size, int from, int to) =>
        string.Join(',', Enumerable.Range(from, to - from + 1).Select(k => Point(Math.Tau * (k % 24) / 24, x, y, size)));

    private static string Point(double turn, double x, double y, double size) => string.Create(CultureInfo.InvariantCulture,
        $"{{\"lat\":{LatDeg + (RadiusLatDeg * (y + (size * Math.Sin(turn)))):0.0000000},\"lon\":{LonDeg + (RadiusLonDeg * (x + (size * Math.Cos(turn)))):0.0000000}}}");
}
