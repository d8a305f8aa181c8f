using System.IO.Compression;
using System.Text;

namespace SecondShore.Atlas;

/// <summary>Which country a place lies in, to a quarter of a degree. Immutable; unpacked on first use.</summary>
/// <remarks>Natural Earth, 1:50m countries, public domain.</remarks>
public static class LandTable
{
    private const int Columns = 1440;
    private const int Rows = 720;
    private static readonly Lazy<(byte[] Cells, string[] Names)> Table = new(Load);

    /// <summary>The country of a place, or of the nearest land within <paramref name="cells"/> quarters of a degree; empty at sea.</summary>
    /// <param name="latDeg">Latitude, degrees.</param>
    /// <param name="lonDeg">Longitude, degrees.</param>
    /// <param name="cells">How far land may lie, in quarters of a degree.</param>
    public static string CountryAt(double latDeg, double lonDeg, int cells = 2)
    {
        if (!(Math.Abs(latDeg) <= 90) || !double.IsFinite(lonDeg)) return "";
        (byte[] table, string[] names) = Table.Value;
        int row = Math.Clamp((int)Math.Floor((90 - latDeg) * 4), 0, Rows - 1);
        int column = (int)Math.Floor((lonDeg - (360 * Math.Floor((lonDeg + 180) / 360)) + 180) * 4);
        for (int ring = 0; ring <= cells; ring++)
        {
            for (int dr = -ring; dr <= ring; dr++)
            {
                for (int dc = -ring; dc <= ring; dc++)
                {
                    if (Math.Max(Math.Abs(dr), Math.Abs(dc)) != ring || row + dr is < 0 or >= Rows) continue;
                    byte id = table[((row + dr) * Columns) + ((((column + dc) % Columns) + Columns) % Columns)];
                    if (id > 0) return names[id - 1];
                }
            }
        }

        return "";
    }

    /// <summary>Whether there is sea within half a degree of a place.</summary>
    public static bool NearSea(double latDeg, double lonDeg)
    {
        for (int k = 0; k < 9; k++)
            if (CountryAt(latDeg + (0.5 * ((k / 3) - 1)), lonDeg + (0.5 * ((k % 3) - 1)), 0).Length == 0) return true;
        return false;
    }

    private static (byte[] Cells, string[] Names) Load()
    {
        using Stream packed = typeof(LandTable).Assembly.GetManifestResourceStream("land.bin")!;
        using DeflateStream unpacked = new(packed, CompressionMode.Decompress);
        using MemoryStream all = new();
        unpacked.CopyTo(all);
        byte[] bytes = all.ToArray();
        int at = 0;
        string[] names = new string[bytes[at++]];
        for (int i = 0; i < names.Length; i++)
        {
            int length = bytes[at++];
            names[i] = Encoding.UTF8.GetString(bytes, at, length);
            at += length;
        }

        byte[] cells = new byte[Rows * Columns];
        for (int to = 0; to < cells.Length;)
        {
            byte id = bytes[at++];
            int run = bytes[at++];
            if (run > 127) run = (run & 127) | (bytes[at++] << 7);
            cells.AsSpan(to, run).Fill(id);
            to += run;
        }

        return (cells, names);
    }
}
