using System.Globalization;
using System.Xml;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Formats.Writers;

/// <summary>A point of a GPX file.</summary>
/// <param name="Place">Where.</param>
/// <param name="Name">Short name; empty for none.</param>
/// <param name="Description">Text; empty for none.</param>
/// <param name="Kind">Type in one word; empty for none.</param>
/// <param name="DepthM">Depth of the bottom, m, kept in an extension of ours and never in the height; null for none.</param>
/// <param name="At">Time; null for none.</param>
public sealed record GpxPoint(GeoPoint Place, string Name = "", string Description = "", string Kind = "", double? DepthM = null, DateTimeOffset? At = null);

/// <summary>A named path: a route's points, or one track's single segment.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Description">Text; empty for none.</param>
/// <param name="Points">Its points in order.</param>
public sealed record GpxPath(string Name, string Description, IReadOnlyList<GpxPoint> Points);

/// <summary>Writes GPX 1.1, elements in the order its schema asks for.</summary>
public static class GpxWriter
{
    /// <summary>The namespace of our extensions.</summary>
    public static readonly string ExtensionNamespace = "urn:secondshore:gpx:1";

    private static readonly string Namespace = "http://www.topografix.com/GPX/1/1";

    /// <summary>Text of a file.</summary>
    /// <param name="name">Name of the file's content.</param>
    /// <param name="description">What it is, with its cautions.</param>
    /// <param name="at">When it was made; null leaves it out.</param>
    /// <param name="waypoints">Waypoints.</param>
    /// <param name="routes">Routes.</param>
    /// <param name="tracks">Tracks.</param>
    public static string Write(string name, string description, DateTimeOffset? at, IReadOnlyList<GpxPoint> waypoints,
        IReadOnlyList<GpxPath> routes, IReadOnlyList<GpxPath> tracks)
    {
        ArgumentNullException.ThrowIfNull(waypoints);
        ArgumentNullException.ThrowIfNull(routes);
        ArgumentNullException.ThrowIfNull(tracks);
        return XmlText.Write(xml =>
        {
            xml.WriteStartElement("gpx", Namespace);
            xml.WriteAttributeString("version", "1.1");
            xml.WriteAttributeString("creator", "Second Shore");
            xml.WriteAttributeString("xmlns", "ss", null, ExtensionNamespace);
            xml.WriteStartElement("metadata");
            xml.Known("name", name);
            xml.Known("desc", description);
            if (at is DateTimeOffset made) xml.WriteElementString("time", CsvText.TimeText(made));
            xml.WriteEndElement();
            foreach (GpxPoint point in waypoints) Point(xml, "wpt", point);
            foreach (GpxPath route in routes)
            {
                Head(xml, "rte", route);
                foreach (GpxPoint point in route.Points) Point(xml, "rtept", point);
                xml.WriteEndElement();
            }

            foreach (GpxPath track in tracks)
            {
                Head(xml, "trk", track);
                xml.WriteStartElement("trkseg");
                foreach (GpxPoint point in track.Points) Point(xml, "trkpt", point);
                xml.WriteEndElement();
                xml.WriteEndElement();
            }

            xml.WriteEndElement();
        });
    }

    private static void Head(XmlWriter xml, string element, GpxPath path)
    {
        xml.WriteStartElement(element);
        xml.Known("name", path.Name);
        xml.Known("desc", path.Description);
    }

    private static void Point(XmlWriter xml, string element, GpxPoint point)
    {
        xml.WriteStartElement(element);
        xml.WriteAttributeString("lat", XmlText.Degrees(point.Place.LatDeg));
        xml.WriteAttributeString("lon", XmlText.Degrees(point.Place.LonDeg));
        if (point.At is DateTimeOffset at) xml.WriteElementString("time", CsvText.TimeText(at));
        xml.Known("name", point.Name);
        xml.Known("desc", point.Description);
        xml.Known("type", point.Kind);
        if (point.DepthM is double depthM && double.IsFinite(depthM))
        {
            xml.WriteStartElement("extensions");
            xml.WriteElementString("ss", "depth_m", ExtensionNamespace, Math.Round(depthM, 3).ToString(CultureInfo.InvariantCulture));
            xml.WriteEndElement();
        }

        xml.WriteEndElement();
    }
}
