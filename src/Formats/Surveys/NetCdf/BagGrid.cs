using System.Globalization;
using System.Xml;
using SecondShore.Formats.Coordinates;
using SecondShore.Formats.Surveys.Arrays;
using SecondShore.Formats.Text;

namespace SecondShore.Formats.Surveys.NetCdf;

/// <summary>The grid of a Bathymetric Attributed Grid (Open Navigation Surface, BAG format specification 1.6): heights from south to north, placed by an XML text.</summary>
internal static class BagGrid
{
    private const string Elevation = "BAG_root/elevation", Metadata = "BAG_root/metadata", FinerGrids = "BAG_root/varres_refinements";

    private const int LongestMetadata = 4 << 20;

    /// <summary>Whether arrays are those of such a file.</summary>
    public static bool Is(List<FiledArray> arrays) => arrays.Exists(a => a.Name == Elevation);

    /// <summary>The survey that the arrays hold.</summary>
    /// <exception cref="ArrayFault">The grid or its place cannot be read.</exception>
    public static RawSurvey Read(List<FiledArray> arrays, CancellationToken cancel)
    {
        FiledArray grid = arrays.Find(a => a.Name == Elevation)!;
        if (!grid.Type.IsNumber || grid.Shape.Count != 2 || grid.Shape.Any(n => n < 2)) throw ArrayFault.Damaged();
        (List<double> corners, string system) = Told(Text(arrays.Find(a => a.Name == Metadata), cancel));
        if (corners.Count < 4) throw new ArrayFault("its metadata tell no corners of the grid; export it again, or as GeoTIFF.");
        double dx = (corners[2] - corners[0]) / (grid.Shape[1] - 1), dy = (corners[3] - corners[1]) / (grid.Shape[0] - 1);
        AffinePlace place = new(corners[0], dx, 0, corners[1], 0, dy);
        if (!place.IsUsable) throw new ArrayFault("its metadata tell corners that enclose nothing; export it again, or as GeoTIFF.");
        RawSurvey raw = new("BAG")
        {
            Raster = new RawRaster((int)grid.Shape[1], (int)grid.Shape[0], grid.Scaled(cancel), place),
            Unit = DepthUnit.Metres,
            UnitKnown = Knowledge.Stated,
        };
        FindingForm fault = "";
        raw.Crs = system.Length > 0 ? CoordinateSystems.Parse(system, out fault) : null;
        raw.CrsKnown = raw.Crs is null ? Knowledge.Assumed : Knowledge.Stated;
        if (!fault.IsEmpty) raw.Doubts.Add(fault.ToFinding().Opening());
        if (arrays.Exists(a => a.Name == FinerGrids)) raw.Doubts.Add("The file holds finer grids within its cells; the coarse one is read.");
        return raw;
    }

    private static byte[] Text(FiledArray? metadata, CancellationToken cancel)
    {
        if (metadata is null || metadata.Count * metadata.Type.Bytes > LongestMetadata) throw new ArrayFault("its metadata are missing; export it again, or as GeoTIFF.");
        byte[] text = new byte[metadata.Count * metadata.Type.Bytes];
        int each = metadata.Type.Bytes;
        metadata.ReadElements((i, element) => element.CopyTo(text.AsSpan((int)i * each)), cancel);
        int end = Array.IndexOf(text, (byte)0);
        return end < 0 ? text : text[..end];
    }

    // Two corners, west and south first, and the horizontal system as WKT or code: the first of each in the text.
    private static (List<double> Corners, string System) Told(byte[] xml)
    {
        List<double> corners = [];
        string system = "";
        try
        {
            using XmlReader reader = SafeXml.Open(xml);
            string within = "";
            while (reader.Read())
            {
                if (reader.NodeType == XmlNodeType.Element) within = reader.LocalName;
                if (reader.NodeType is not (XmlNodeType.Text or XmlNodeType.CDATA)) continue;
                string text = reader.Value.Trim();
                if (within == "coordinates" && corners.Count == 0) corners = Numbers(text);
                else if (system.Length == 0 && (text.StartsWith("PROJCS[", StringComparison.Ordinal) || text.StartsWith("GEOGCS[", StringComparison.Ordinal) || text.StartsWith("EPSG:", StringComparison.Ordinal))) system = text;
            }
        }
        catch (XmlException)
        {
            // What stands before the damage is used; without corners the file is refused.
        }

        return (corners, system);
    }

    private static List<double> Numbers(string text)
    {
        List<double> numbers = [];
        foreach (string part in text.Split([',', ' ', '\n', '\r', '\t'], StringSplitOptions.RemoveEmptyEntries))
            if (double.TryParse(part, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number)) numbers.Add(number);
        return numbers;
    }
}
