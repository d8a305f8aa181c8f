using System.IO.Compression;
using System.Text;
using System.Xml;
using SecondShore.Formats.Coordinates;
using SecondShore.Formats.Files;
using SecondShore.Formats.Text;

namespace SecondShore.Formats.Surveys.Kml;

/// <summary>Reads KML and KMZ: points, lines and polygons with a depth by attribute, name or height; polygons without one as water.</summary>
internal sealed class KmlReader : ISurveyReader
{
    private static readonly long LongestBytes = 256L << 20;

    public string Format => "KML";

    public double Sniff(SurveySource source)
    {
        if (TripFile.LooksLikeOne(source.Bytes)) return source.Ending == "kmz" ? 0.95 : 0;
        string head = Encoding.UTF8.GetString(source.Bytes.AsSpan(0, Math.Min(source.Bytes.Length, 3000)));
        return head.Contains("<kml", StringComparison.OrdinalIgnoreCase) ? 0.98 : source.Ending is "kml" or "kmz" ? 0.5 : 0;
    }

    public RawSurvey? Read(SurveySource source, SurveyOptions options, ProblemLog log, IProgress<double>? progress, CancellationToken cancellation)
    {
        byte[]? bytes = TripFile.LooksLikeOne(source.Bytes) ? Unpack(source, log) : source.Bytes;
        if (bytes is null) return null;
        RawSurvey raw = new(Format) { Crs = CoordinateSystem.Degrees, CrsKnown = Knowledge.Stated };
        KmlPlacemarks marks = new(raw, options);
        try
        {
            using XmlReader xml = SafeXml.Open(bytes);
            while (xml.Read())
            {
                cancellation.ThrowIfCancellationRequested();
                if (xml.NodeType == XmlNodeType.Element && xml.LocalName == "Placemark" && !xml.IsEmptyElement) marks.Read(xml);
            }
        }
        catch (XmlException e)
        {
            if (!SafeXml.Tell(source.Name, bytes, e, log, marks.Count > 0)) return null;
        }

        marks.Finish();
        if (marks.Bad > 0) log.Warn(source.Name, $"{marks.Bad} positions could not be read and are not used.");
        return raw;
    }

    private static byte[]? Unpack(SurveySource source, ProblemLog log)
    {
        try
        {
            using ZipArchive zip = new(new MemoryStream(source.Bytes, writable: false), ZipArchiveMode.Read);
            ZipArchiveEntry? entry = zip.Entries.Take(4000).FirstOrDefault(e => e.FullName.EndsWith(".kml", StringComparison.OrdinalIgnoreCase));
            if (entry is null)
            {
                log.Error(source.Name, "the KMZ file holds no .kml file.");
                return null;
            }

            using Stream stream = entry.Open();
            using MemoryStream copy = new();
            byte[] buffer = new byte[81920];
            int got;
            while ((got = stream.Read(buffer)) > 0)
            {
                copy.Write(buffer, 0, got);
                if (copy.Length <= LongestBytes && copy.Length <= Math.Max(1L << 20, entry.CompressedLength * 400)) continue;
                log.Error(source.Name, "the KMZ file unpacks to far more than its packed size; it is refused.");
                return null;
            }

            return copy.ToArray();
        }
        catch (Exception e) when (e is InvalidDataException or IOException or NotSupportedException or ArgumentException)
        {
            log.Error(source.Name, "the KMZ file is damaged and cannot be unpacked; export it again.");
            return null;
        }
    }
}
