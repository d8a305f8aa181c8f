using System.Globalization;
using System.Xml;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Formats.Writers;

/// <summary>Writes KML 2.2 (OGC): one placemark a feature, properties as extended data.</summary>
public static class KmlWriter
{
    private static readonly string Namespace = "http://www.opengis.net/kml/2.2";

    /// <summary>Text of a document.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="description">What it is, with its cautions.</param>
    /// <param name="features">The features; their property <c>name</c> names the placemark.</param>
    public static string Write(string name, string description, IEnumerable<MapFeature> features)
    {
        ArgumentNullException.ThrowIfNull(features);
        return XmlText.Write(xml =>
        {
            xml.WriteStartElement("kml", Namespace);
            xml.WriteStartElement("Document");
            xml.Known("name", name);
            xml.Known("description", description);
            foreach (MapFeature feature in features) Placemark(xml, feature);
            xml.WriteEndElement();
            xml.WriteEndElement();
        });
    }

    private static void Placemark(XmlWriter xml, MapFeature feature)
    {
        xml.WriteStartElement("Placemark");
        xml.Known("name", feature.Name);
        MapProperty[] data = [.. feature.Properties.Where(p => p.Name != "name" && p.Value is not null)];
        if (data.Length > 0)
        {
            xml.WriteStartElement("ExtendedData");
            foreach (MapProperty property in data)
            {
                xml.WriteStartElement("Data");
                xml.WriteAttributeString("name", XmlText.Clean(property.Name));
                xml.WriteElementString("value", XmlText.Clean(Text(property.Value!)));
                xml.WriteEndElement();
            }

            xml.WriteEndElement();
        }

        Geometry(xml, feature.Shape);
        xml.WriteEndElement();
    }

    private static void Geometry(XmlWriter xml, MapShape shape)
    {
        switch (shape)
        {
            case MapShape.Point point: Element(xml, "Point", [point.Place], false); break;
            case MapShape.Line line: Element(xml, "LineString", line.Points, false); break;
            case MapShape.Lines lines:
                xml.WriteStartElement("MultiGeometry");
                foreach (IReadOnlyList<GeoPoint> part in lines.Parts) Element(xml, "LineString", part, false);
                xml.WriteEndElement();
                break;
            case MapShape.Polygon polygon: Polygon(xml, polygon); break;
            case MapShape.Polygons polygons:
                xml.WriteStartElement("MultiGeometry");
                foreach (MapShape.Polygon part in polygons.Parts) Polygon(xml, part);
                xml.WriteEndElement();
                break;
            default: throw new ArgumentException($"{shape.GetType().Name} is no shape that is written.", nameof(shape));
        }
    }

    private static void Polygon(XmlWriter xml, MapShape.Polygon polygon)
    {
        xml.WriteStartElement("Polygon");
        xml.WriteStartElement("outerBoundaryIs");
        Element(xml, "LinearRing", polygon.Outer, true);
        xml.WriteEndElement();
        foreach (IReadOnlyList<GeoPoint> hole in polygon.Holes)
        {
            xml.WriteStartElement("innerBoundaryIs");
            Element(xml, "LinearRing", hole, true);
            xml.WriteEndElement();
        }

        xml.WriteEndElement();
    }

    private static void Element(XmlWriter xml, string name, IReadOnlyList<GeoPoint> points, bool close)
    {
        xml.WriteStartElement(name);
        IEnumerable<GeoPoint> all = close && points.Count > 0 ? points.Append(points[0]) : points;
        xml.WriteElementString("coordinates", string.Join(' ', all.Select(p => $"{XmlText.Degrees(p.LonDeg)},{XmlText.Degrees(p.LatDeg)}")));
        xml.WriteEndElement();
    }

    private static string Text(object value) => value switch
    {
        string text => text,
        IEnumerable<string> texts => string.Join("; ", texts),
        IFormattable number => number.ToString(null, CultureInfo.InvariantCulture),
        _ => value.ToString() ?? "",
    };
}
