using System.Xml;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Text;

namespace SecondShore.Formats.Lake;

/// <summary>Reads cover.gpx: waypoints whose type, or else name, tells the kind of cover.</summary>
internal static class CoverGpxReader
{
    public static List<CoverMark> Read(string file, byte[] bytes, ProblemLog log)
    {
        List<CoverMark> marks = [];
        try
        {
            using XmlReader xml = SafeXml.Open(bytes);
            while (xml.Read())
                if (xml.NodeType == XmlNodeType.Element && xml.LocalName == "wpt") Waypoint(file, xml, marks, log);
        }
        catch (XmlException e)
        {
            if (!SafeXml.Tell(file, bytes, e, log, marks.Count > 0)) return [];
        }

        return marks;
    }

    private static void Waypoint(string file, XmlReader xml, List<CoverMark> marks, ProblemLog log)
    {
        bool placed = NumberText.TryParse(xml.GetAttribute("lat"), false, out double lat) & NumberText.TryParse(xml.GetAttribute("lon"), false, out double lon);
        string name = "", type = "", description = "", element = "";
        int outer = xml.Depth;
        if (!xml.IsEmptyElement)
        {
            while (xml.Read() && xml.Depth > outer)
            {
                if (xml.NodeType == XmlNodeType.Element) element = xml.LocalName;
                else if (xml.NodeType == XmlNodeType.EndElement) element = "";
                else if (xml.NodeType is XmlNodeType.Text or XmlNodeType.CDATA && xml.Depth == outer + 2)
                {
                    if (element == "name") name = xml.Value.Trim();
                    else if (element == "type") type = xml.Value.Trim();
                    else if (element == "desc") description = xml.Value.Trim();
                }
            }
        }

        if (!placed || Math.Abs(lat) > 90 || Math.Abs(lon) > 360)
        {
            log.Row(file, 0, "waypoint without a place", "a waypoint has no usable lat and lon; it is not used.");
            return;
        }

        if (!UserReaders.TryCover(type, out CoverKind kind)) UserReaders.TryCover(name, out kind);
        string note = description.Length > 0 ? $"{name}: {description}" : name;
        marks.Add(new CoverMark(new GeoPoint(lat, lon), kind, 0, null, note));
    }
}
