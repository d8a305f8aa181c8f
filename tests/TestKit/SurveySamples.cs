using System.Globalization;
using System.IO.Compression;
using System.Text;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Files;
using SecondShore.Formats.Surveys;
using SecondShore.Formats.Writers;

namespace SecondShore.TestKit;

/// <summary>A small good file of every survey format, to be damaged.</summary>
/// <param name="Format">The reader it is for.</param>
/// <param name="Name">Its name.</param>
/// <param name="Bytes">Its bytes.</param>
/// <param name="Companions">Files beside it.</param>
public sealed record SurveySample(string Format, string Name, byte[] Bytes, IReadOnlyDictionary<string, byte[]> Companions)
{
    /// <summary>Reads the sample with other bytes for the file itself and, one in three, damaged companions.</summary>
    public SurveyImport Read(byte[] bytes, Mutator? mutator = null, bool damageCompanions = false)
    {
        MemoryFiles files = new MemoryFiles("sample").With(Name, bytes);
        foreach ((string name, byte[] beside) in Companions) files = files.With(name, damageCompanions && mutator is not null ? mutator.Damage(beside) : beside);
        // Unit and sense are set where a sample names none: it lies where feet are as likely.
        return SurveyImporter.Read(new SurveySource(files, Name), new SurveyOptions { Unit = DepthUnit.Metres, Sense = Format is "asc" or "tif" ? DepthSense.Depth : null }, SurveyContext.Nothing);
    }
}

/// <summary>The samples.</summary>
public static class SurveySamples
{
    /// <summary>All samples, one a reader.</summary>
    public static IReadOnlyList<SurveySample> All { get; } =
    [
        Of("asc", "survey.asc", AsciiGridWriter.Write(12, 9, -81.25, 41.5, 0.001, Depths(108))),
        Of("tif", "survey.tif", TiffBuilder.Floats(20, 20, Depths(400), -81.25, 41.52, 0.001).Text(42113, "-9999").Build()),
        Of("xyz", "survey.csv", "lat,lon,depth_m\n" + string.Concat(Places(60).Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.LatDeg:F6},{p.LonDeg:F6},{p.LatDeg % 0.01 * 900:F2}\n")))),
        Of("geojson", "survey.geojson", GeoJsonWriter.Write(Contours())),
        Of("kml", "survey.kml", KmlWriter.Write("Contours", "made up", Contours())),
        Of("kmz", "survey.kmz", Zip("doc.kml", KmlWriter.Write("Contours", "made up", Contours()))),
        Of("gpx", "survey.gpx", GpxWriter.Write("Track", "", null, [], [], [new GpxPath("t", "", [.. Places(30).Select(p => new GpxPoint(p, DepthM: 4.5))])])),
        Of("nmea", "survey.nmea", Nmea()),
        Shapefile(),
        Pond("nc", "pond-classic.nc"),
        Pond("nc4", "pond-4.nc"),
        Pond("nc4-new", "pond-latest.nc"),
        Pond("nc4-heap", "pond-dense.nc"),
        Pond("bag", "pond.bag"),
    ];

    /// <summary>One of the files of the made-up pond; Data/README.md says what they hold.</summary>
    public static byte[] PondFile(string name)
    {
        using Stream stream = typeof(SurveySamples).Assembly.GetManifestResourceStream(name)!;
        using MemoryStream bytes = new();
        stream.CopyTo(bytes);
        return bytes.ToArray();
    }

    /// <summary>Contours of a small bowl.</summary>
    public static IReadOnlyList<MapFeature> Contours() => [.. Enumerable.Range(1, 3).Select(k => new MapFeature(
        new MapShape.Polygon([.. Enumerable.Range(0, 16).Select(i => new GeoPoint(41.5 + (0.01 / k * Math.Cos(i * Math.PI / 8)), -81.25 + (0.01 / k * Math.Sin(i * Math.PI / 8))))], []),
        [new MapProperty("depth_m", k * 3.0), new MapProperty("source", "made up")]))];

    private static SurveySample Of(string format, string name, string text) => Of(format, name, Encoding.UTF8.GetBytes(text));

    private static SurveySample Of(string format, string name, byte[] bytes) => new(format, name, bytes, new Dictionary<string, byte[]>());

    private static SurveySample Pond(string format, string name) => Of(format, $"survey{Path.GetExtension(name)}", PondFile(name));

    private static float[] Depths(int n) => [.. Enumerable.Range(0, n).Select(i => i % 11 == 0 ? float.NaN : i % 17 * 0.75f)];

    private static IEnumerable<GeoPoint> Places(int n) => Enumerable.Range(0, n).Select(i => new GeoPoint(41.5 + (i * 0.0001), -81.25 + (i % 9 * 0.0002)));

    private static byte[] Zip(string name, string text)
    {
        using MemoryStream stream = new();
        using (ZipArchive zip = new(stream, ZipArchiveMode.Create, leaveOpen: true))
        using (StreamWriter writer = new(zip.CreateEntry(name).Open())) writer.Write(text);
        return stream.ToArray();
    }

    private static string Nmea() => string.Concat(Enumerable.Range(0, 30).SelectMany(i => new[]
    {
        Sentence(string.Create(CultureInfo.InvariantCulture, $"GPGGA,{120000 + i},4130.{1000 + (i * 7)},N,08115.{2000 + (i * 5)},W,1,08,1.0,190.0,M,,M,,")),
        Sentence(string.Create(CultureInfo.InvariantCulture, $"SDDPT,{4 + (i * 0.1):F2},0.30")),
        Sentence("YXMTW,18.5,C"),
    }));

    private static string Sentence(string body) => string.Create(CultureInfo.InvariantCulture, $"${body}*{body.Aggregate(0, (sum, c) => sum ^ c):X2}\r\n");

    private static SurveySample Shapefile()
    {
        using MemoryStream stream = new();
        using BinaryWriter w = new(stream);
        byte[][] records = [.. Enumerable.Range(1, 3).Select(Ring)];
        Big(w, 9994);
        for (int i = 0; i < 5; i++) Big(w, 0);
        Big(w, (100 + records.Sum(r => 8 + r.Length)) / 2);
        w.Write(1000);
        w.Write(5);
        for (int i = 0; i < 8; i++) w.Write(0.0);
        for (int i = 0; i < records.Length; i++)
        {
            Big(w, i + 1);
            Big(w, records[i].Length / 2);
            w.Write(records[i]);
        }

        byte[] dbf = Dbf();
        byte[] prj = Encoding.ASCII.GetBytes("GEOGCS[\"GCS_WGS_1984\",DATUM[\"D_WGS_1984\",SPHEROID[\"WGS_1984\",6378137,298.257223563]],PRIMEM[\"Greenwich\",0],UNIT[\"Degree\",0.0174532925199433]]");
        return new SurveySample("shp", "survey.shp", stream.ToArray(), new Dictionary<string, byte[]> { ["survey.dbf"] = dbf, ["survey.prj"] = prj });
    }

    private static byte[] Ring(int k)
    {
        using MemoryStream stream = new();
        using BinaryWriter w = new(stream);
        w.Write(5);
        for (int i = 0; i < 4; i++) w.Write(0.0);
        w.Write(1);
        w.Write(9);
        w.Write(0);
        for (int i = 0; i < 9; i++)
        {
            w.Write(-81.25 + (0.01 / k * Math.Sin(i % 8 * Math.PI / 4)));
            w.Write(41.5 + (0.01 / k * Math.Cos(i % 8 * Math.PI / 4)));
        }

        return stream.ToArray();
    }

    private static byte[] Dbf()
    {
        byte[] head = new byte[65];
        head[0] = 3;
        BitConverter.GetBytes(3).CopyTo(head, 4);
        BitConverter.GetBytes((ushort)65).CopyTo(head, 8);
        BitConverter.GetBytes((ushort)9).CopyTo(head, 10);
        Encoding.ASCII.GetBytes("DEPTH_M").CopyTo(head, 32);
        head[43] = (byte)'N';
        head[48] = 8;
        head[64] = 0x0D;
        return [.. head, .. Encoding.ASCII.GetBytes("     3.00     6.00     9.00"), 0x1A];
    }

    private static void Big(BinaryWriter w, int value) => w.Write(System.Buffers.Binary.BinaryPrimitives.ReverseEndianness(value));
}
