using System.Globalization;
using System.Text.Json;
using SecondShore.Open.Asking;

namespace SecondShore.Open.Surveys;

/// <summary>Turns GML 3.2 simple features into GeoJSON: points, lines and polygons, alone or several, with their plain
/// properties.</summary>
internal static class GmlFeatures
{
    private static readonly HashSet<string> Shapes =
        ["Point", "LineString", "Curve", "Polygon", "Surface", "MultiPoint", "MultiCurve", "MultiSurface", "MultiLineString",
        "MultiPolygon", "MultiGeometry"];

    /// <summary>A collection as GeoJSON, with how many features the service has in all, where it says so.</summary>
    public static JsonDocument ToGeoJson(XmlTree collection)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream))
        {
            json.WriteStartObject();
            json.WriteString("type", "FeatureCollection");
            if (long.TryParse(collection.Attributes.GetValueOrDefault("numberMatched"), NumberStyles.None, CultureInfo.InvariantCulture,
                out long matched)) json.WriteNumber("numberMatched", matched);
            json.WriteStartArray("features");
            foreach (XmlTree member in collection.Children.Where(c => c.Name is "member" or "featureMember" or "featureMembers"))
                foreach (XmlTree feature in member.Children) Feature(json, feature);
            json.WriteEndArray();
            json.WriteEndObject();
        }

        return JsonDocument.Parse(stream.ToArray());
    }

    private static void Feature(Utf8JsonWriter json, XmlTree feature)
    {
        json.WriteStartObject();
        json.WriteString("type", "Feature");
        if (feature.Attributes.GetValueOrDefault("id") is { Length: > 0 } id) json.WriteString("id", ServiceText.Plain(id, 200));
        json.WriteStartObject("properties");
        HashSet<string> names = [];
        XmlTree? shape = null;
        foreach (XmlTree property in feature.Children)
        {
            XmlTree? inner = property.Children.Find(c => Shapes.Contains(c.Name));
            // The box of a feature is no shape of it.
            if (inner is not null && property.Name != "boundedBy") shape ??= inner;
            else if (property.Children.Count == 0 && property.Text.Length > 0 && names.Add(property.Name)) Property(json, property);
        }

        json.WriteEndObject();
        json.WritePropertyName("geometry");
        if (shape is null) json.WriteNullValue();
        else Geometry(json, shape);
        json.WriteEndObject();
    }

    private static void Property(Utf8JsonWriter json, XmlTree property)
    {
        if (double.TryParse(property.Text, NumberStyles.Float, CultureInfo.InvariantCulture, out double number)
            && double.IsFinite(number)) json.WriteNumber(property.Name, number);
        else json.WriteString(property.Name, ServiceText.Plain(property.Text, 300));
    }

    private static void Geometry(Utf8JsonWriter json, XmlTree shape)
    {
        Order order = OrderOf(shape);
        XmlTree[] points = [.. Own(shape, "Point")], polygons = [.. Own(shape, "Polygon"), .. shape.All("PolygonPatch")];
        XmlTree[] lines = [.. Own(shape, "LineString"), .. shape.All("LineStringSegment")];
        json.WriteStartObject();
        json.WriteString("type", polygons.Length > 0 ? "MultiPolygon" : lines.Length > 0 ? "MultiLineString" : "MultiPoint");
        json.WriteStartArray("coordinates");
        if (polygons.Length > 0)
        {
            foreach (XmlTree polygon in polygons)
            {
                json.WriteStartArray();
                foreach (XmlTree ring in polygon.All("LinearRing")
                    .OrderBy(r => polygon.Child("exterior")?.Child("LinearRing") == r ? 0 : 1)) Path(json, ring, order);
                json.WriteEndArray();
            }
        }
        else
        {
            foreach (XmlTree line in lines) Path(json, line, order);
            if (lines.Length == 0) foreach (XmlTree point in points) Positions(json, point, order);
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static IEnumerable<XmlTree> Own(XmlTree shape, string name) => shape.Name == name ? [shape] : shape.All(name);

    private static void Path(Utf8JsonWriter json, XmlTree line, Order order)
    {
        json.WriteStartArray();
        Positions(json, line, order);
        json.WriteEndArray();
    }

    private static void Positions(Utf8JsonWriter json, XmlTree line, Order order)
    {
        string text = line.Child("posList") is { } list ? list.Text
            : string.Join(' ', line.Children.Where(c => c.Name == "pos").Select(c => c.Text));
        XmlTree? told = line.Child("posList") ?? line.Child("pos");
        int size = told?.Attributes.GetValueOrDefault("srsDimension") == "3" ? 3 : order.Size;
        double[] numbers = [.. text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)
            .Select(t => double.TryParse(t, NumberStyles.Float, CultureInfo.InvariantCulture, out double v) && double.IsFinite(v)
                ? v : 999)];
        for (int i = 0; i + size <= numbers.Length; i += size)
        {
            json.WriteStartArray();
            json.WriteNumberValue(numbers[order.LatFirst ? i + 1 : i]);
            json.WriteNumberValue(numbers[order.LatFirst ? i : i + 1]);
            if (size == 3) json.WriteNumberValue(numbers[i + 2]);
            json.WriteEndArray();
        }
    }

    // Degrees by their full name are latitude first; by the old short one, or CRS84, longitude first.
    private static Order OrderOf(XmlTree shape)
    {
        string name = shape.Attributes.GetValueOrDefault("srsName")
            ?? shape.Children.SelectMany(c => c.Children).Select(c => c.Attributes.GetValueOrDefault("srsName"))
            .FirstOrDefault(n => n is not null) ?? "urn:ogc:def:crs:EPSG::4326";
        bool degrees = name.EndsWith(":4326", StringComparison.Ordinal) || name.EndsWith("/4326", StringComparison.Ordinal);
        bool isFull = name.StartsWith("urn:", StringComparison.Ordinal)
            || name.StartsWith("http://www.opengis.net/def/", StringComparison.Ordinal);
        return new Order(degrees && isFull, shape.Attributes.GetValueOrDefault("srsDimension") == "3" ? 3 : 2);
    }

    private readonly record struct Order(bool LatFirst, int Size);
}
