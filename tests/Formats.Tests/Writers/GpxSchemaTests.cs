using System.Globalization;
using System.Xml.Linq;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Writers;

namespace SecondShore.Formats.Tests.Writers;

/// <summary>
/// What the GPX 1.1 schema (http://www.topografix.com/GPX/1/1/gpx.xsd) demands, written out by hand: the order of elements in
/// each type, required attributes and the ranges of their values.
/// </summary>
public class GpxSchemaTests
{
    private static readonly XNamespace Gpx = "http://www.topografix.com/GPX/1/1";
    private static readonly string[] PointOrder =
        ["ele", "time", "magvar", "geoidheight", "name", "cmt", "desc", "src", "link", "sym", "type", "fix", "sat", "hdop", "vdop", "pdop", "ageofdgpsdata", "dgpsid", "extensions"];

    private static readonly Dictionary<string, string[]> Order = new()
    {
        ["gpx"] = ["metadata", "wpt", "rte", "trk", "extensions"],
        ["metadata"] = ["name", "desc", "author", "copyright", "link", "time", "keywords", "bounds", "extensions"],
        ["wpt"] = PointOrder,
        ["rtept"] = PointOrder,
        ["trkpt"] = PointOrder,
        ["rte"] = ["name", "cmt", "desc", "src", "link", "number", "type", "extensions", "rtept"],
        ["trk"] = ["name", "cmt", "desc", "src", "link", "number", "type", "extensions", "trkseg"],
        ["trkseg"] = ["trkpt", "extensions"],
    };

    private static readonly string[] Repeatable = ["wpt", "rte", "trk", "rtept", "trkpt", "trkseg", "link"];

    [Fact]
    public void A_plan_keeps_every_rule_of_the_schema()
    {
        DateTimeOffset at = new(2026, 10, 5, 13, 0, 0, TimeSpan.FromHours(-5));
        GpxPoint full = new(new GeoPoint(41.5, -81.25), "A & B", "why <not>\u0002", "stop", 8.4, at), bare = new(new GeoPoint(-41.123456789, 179.9999999));
        string text = GpxWriter.Write("Plan ü", "Caution.", at, [full, bare, bare with { DepthM = double.NaN }],
            [new GpxPath("Day", "because", [bare, full]), new GpxPath("", "", [])], [new GpxPath("Pass", "how", [full, bare]), new GpxPath("", "", [bare])]);
        Assert.Empty(Faults(XDocument.Parse(text)));
    }

    [Fact]
    public void The_rules_find_what_the_schema_forbids()
    {
        foreach (string bad in (string[])
        [
            "<gpx xmlns='http://www.topografix.com/GPX/1/1' version='1.1'/>",
            "<gpx xmlns='http://www.topografix.com/GPX/1/1' version='1.1' creator='x'><rte/><wpt lat='1' lon='1'/></gpx>",
            "<gpx xmlns='http://www.topografix.com/GPX/1/1' version='1.1' creator='x'><wpt lat='91' lon='1'/></gpx>",
            "<gpx xmlns='http://www.topografix.com/GPX/1/1' version='1.1' creator='x'><wpt lat='1' lon='180'/></gpx>",
            "<gpx xmlns='http://www.topografix.com/GPX/1/1' version='1.1' creator='x'><wpt lat='1' lon='1'><name>a</name><time>2026-01-01T00:00:00Z</time></wpt></gpx>",
            "<gpx xmlns='http://www.topografix.com/GPX/1/1' version='1.1' creator='x'><wpt lat='1' lon='1'><time>noon</time></wpt></gpx>",
            "<gpx xmlns='http://www.topografix.com/GPX/1/1' version='1.1' creator='x'><wpt lat='1' lon='1'><depth>3</depth></wpt></gpx>",
            "<gpx xmlns='http://www.topografix.com/GPX/1/1' version='1.1' creator='x'><metadata/><metadata/></gpx>",
        ]) Assert.NotEmpty(Faults(XDocument.Parse(bad)));
    }

    private static List<string> Faults(XDocument document)
    {
        List<string> faults = [];
        XElement root = document.Root!;
        if (root.Name != Gpx + "gpx") faults.Add($"root {root.Name}");
        if ((string?)root.Attribute("version") != "1.1" || string.IsNullOrEmpty((string?)root.Attribute("creator"))) faults.Add("version and creator are required");
        Walk(root, faults);
        return faults;
    }

    private static void Walk(XElement element, List<string> faults)
    {
        string name = element.Name.LocalName;
        if (name is "wpt" or "rtept" or "trkpt")
        {
            if (!InRange(element, "lat", -90, 90, true) || !InRange(element, "lon", -180, 180, false)) faults.Add($"{element} lacks a place in range");
        }

        if (name == "time" && !DateTimeOffset.TryParseExact(element.Value, ["yyyy-MM-dd'T'HH:mm:ssK", "yyyy-MM-dd'T'HH:mm:ss.FFFFFFFK"], CultureInfo.InvariantCulture, DateTimeStyles.None, out _)) faults.Add($"time {element.Value}");
        if (!Order.TryGetValue(name, out string[]? order))
        {
            if (name != "extensions" && element.HasElements) faults.Add($"{name} holds elements");
            return;
        }

        int last = -1;
        foreach (XElement child in element.Elements())
        {
            int place = child.Name.Namespace == Gpx ? Array.IndexOf(order, child.Name.LocalName) : -1;
            if (place < 0) faults.Add($"{name} may not hold {child.Name}");
            else if (place < last || (place == last && !Repeatable.Contains(child.Name.LocalName))) faults.Add($"{child.Name.LocalName} stands too late in {name}");
            else last = place;
            Walk(child, faults);
        }
    }

    // Latitude may be 90; longitude runs from -180 to under 180.
    private static bool InRange(XElement element, string attribute, double low, double high, bool closed) =>
        decimal.TryParse((string?)element.Attribute(attribute), NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal value)
        && (double)value >= low && (closed ? (double)value <= high : (double)value < high);
}
