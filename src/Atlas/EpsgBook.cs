using System.Globalization;
using System.IO.Compression;
using System.Text;

namespace SecondShore.Atlas;

/// <summary>One projected coordinate system of the table.</summary>
/// <param name="Code">EPSG code.</param>
/// <param name="Name">Name, such as <c>ETRS89 / UTM zone 32N</c>.</param>
/// <param name="Method">Projection, as WKT calls it.</param>
/// <param name="Parameters">Its parameters: degrees, metres, ratios.</param>
/// <param name="UnitM">Metres per unit of its numbers.</param>
/// <param name="RadiusM">Semi-major axis, m.</param>
/// <param name="InverseFlattening">Inverse flattening; 0 for a sphere.</param>
/// <param name="MeridianDeg">Prime meridian, degrees east of Greenwich.</param>
/// <param name="Datum">Datum.</param>
/// <param name="Shift">To WGS 84: three metres, or those with three arc seconds (position vector) and parts per million; empty where none is published.</param>
/// <param name="ShiftAccuracyM">Stated accuracy of the shift, m; NaN without one.</param>
/// <param name="Area">Area of use: south, west, north, east, degrees.</param>
/// <param name="Box">That area in its own numbers: least and greatest easting, least and greatest northing.</param>
public sealed record EpsgEntry(int Code, string Name, string Method, IReadOnlyList<KeyValuePair<string, double>> Parameters, double UnitM, double RadiusM,
    double InverseFlattening, double MeridianDeg, string Datum, double[] Shift, double ShiftAccuracyM, double[] Area, double[] Box)
{
    /// <summary>Whether a place lies in the area of use, with a margin in degrees.</summary>
    public bool Covers(double latDeg, double lonDeg, double marginDeg = 0.3)
    {
        if (latDeg < Area[0] - marginDeg || latDeg > Area[2] + marginDeg) return false;
        double west = Area[1] - marginDeg, east = Area[3] + marginDeg;
        return Area[1] <= Area[3] ? lonDeg >= west && lonDeg <= east : lonDeg >= west || lonDeg <= east;
    }
}

/// <summary>Projected coordinate systems by EPSG number. Immutable; unpacked on first use.</summary>
/// <remarks>EPSG Geodetic Parameter Dataset (IOGP), cut down as eng/tables/epsg.py says.</remarks>
public static class EpsgBook
{
    private static readonly Lazy<(int[] Codes, string[] Lines, double[] Boxes)> Table = new(Load);

    /// <summary>Number of systems.</summary>
    public static int Count => Table.Value.Codes.Length;

    /// <summary>All codes, ascending.</summary>
    public static IReadOnlyList<int> Codes => Table.Value.Codes;

    /// <summary>A system; null when the table lacks it.</summary>
    public static EpsgEntry? Find(int code)
    {
        (int[] codes, string[] lines, _) = Table.Value;
        int at = Array.BinarySearch(codes, code);
        return at < 0 ? null : Parse(lines[at]);
    }

    /// <summary>Systems in whose box a pair of numbers lies.</summary>
    public static IEnumerable<EpsgEntry> Around(double x, double y)
    {
        (int[] codes, string[] lines, double[] boxes) = Table.Value;
        for (int i = 0; i < codes.Length; i++)
            if (x >= boxes[i * 4] && x <= boxes[(i * 4) + 1] && y >= boxes[(i * 4) + 2] && y <= boxes[(i * 4) + 3]) yield return Parse(lines[i]);
    }

    private static (int[] Codes, string[] Lines, double[] Boxes) Load()
    {
        using Stream packed = typeof(EpsgBook).Assembly.GetManifestResourceStream("epsg.bin")!;
        using DeflateStream unpacked = new(packed, CompressionMode.Decompress);
        using StreamReader text = new(unpacked, Encoding.UTF8);
        string[] lines = text.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries);
        int[] codes = new int[lines.Length];
        double[] boxes = new double[lines.Length * 4];
        for (int i = 0; i < lines.Length; i++)
        {
            codes[i] = int.Parse(lines[i].AsSpan(0, lines[i].IndexOf('\t', StringComparison.Ordinal)), CultureInfo.InvariantCulture);
            Numbers(lines[i][(lines[i].LastIndexOf('\t') + 1)..]).CopyTo(boxes, i * 4);
        }

        return (codes, lines, boxes);
    }

    private static EpsgEntry Parse(string line)
    {
        string[] cells = line.Split('\t');
        List<KeyValuePair<string, double>> parameters = [];
        foreach (string pair in cells[3].Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            int at = pair.IndexOf('=', StringComparison.Ordinal);
            parameters.Add(KeyValuePair.Create(pair[..at], Number(pair[(at + 1)..])));
        }

        return new EpsgEntry(int.Parse(cells[0], CultureInfo.InvariantCulture), cells[1], cells[2], parameters, Number(cells[4]), Number(cells[5]), Number(cells[6]),
            Number(cells[7]), cells[8], Numbers(cells[9]), cells[10].Length == 0 ? double.NaN : Number(cells[10]), Numbers(cells[11]), Numbers(cells[12]));
    }

    private static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    private static double[] Numbers(string text) => [.. text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(Number)];
}
