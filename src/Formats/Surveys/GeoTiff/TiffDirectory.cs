using System.Buffers.Binary;
using System.Text;

namespace SecondShore.Formats.Surveys.GeoTiff;

/// <summary>
/// The first directory of a TIFF file, read with every count checked against the file's length: a hostile file is
/// refused here, before the decoding library is trusted with it.
/// </summary>
internal sealed class TiffDirectory
{
    private static readonly int MaxEntries = 512;
    private readonly byte[] _bytes;
    private readonly bool _little;
    private readonly Dictionary<int, (int Type, long Count, long At)> _entries = [];

    private TiffDirectory(byte[] bytes, bool little) => (_bytes, _little) = (bytes, little);

    /// <summary>Reads the directory; null with what is wrong in <paramref name="fault"/>.</summary>
    public static TiffDirectory? Read(byte[] bytes, out FindingForm fault)
    {
        fault = "the file is cut short or damaged: its directory of contents cannot be read; copy or export it again.";
        if (bytes.Length < 16) return null;
        bool little = bytes[0] == 'I';
        TiffDirectory directory = new(bytes, little);
        int magic = directory.U16(2);
        bool big = magic == 43;
        if (magic != 42 && !big) return null;
        long at = big ? (long)directory.U64(8) : directory.U32(4);
        long count = 0;
        if (at < 8 || at > bytes.Length - 8) return null;
        count = big ? (long)directory.U64(at) : directory.U16(at);
        int size = big ? 20 : 12, head = big ? 8 : 2, inline = big ? 8 : 4;
        if (count is < 1 || count > MaxEntries || at + head + (count * size) > bytes.Length) return null;
        for (long i = 0; i < count; i++)
        {
            long entry = at + head + (i * size);
            int tag = directory.U16(entry), type = directory.U16(entry + 2), unit = SizeOf(type);
            ulong values = big ? directory.U64(entry + 4) : directory.U32(entry + 4);
            if (unit == 0) continue;
            if (values > (ulong)bytes.Length) return null;
            long length = (long)values * unit;
            long place = length <= inline ? entry + (big ? 12 : 8) : big ? (long)directory.U64(entry + 12) : directory.U32(entry + 8);
            if (place < 0 || length > bytes.Length || place > bytes.Length - length) return null;
            directory._entries.TryAdd(tag, (type, (long)values, place));
        }

        fault = "";
        return directory;
    }

    /// <summary>Number of values of a tag; 0 when it is missing.</summary>
    public long Count(int tag) => _entries.TryGetValue(tag, out var entry) ? entry.Count : 0;

    /// <summary>A value of a tag as a number; <paramref name="missing"/> when there is none.</summary>
    public double Number(int tag, double missing, long index = 0)
    {
        if (!_entries.TryGetValue(tag, out var entry) || index >= entry.Count) return missing;
        long at = entry.At + (index * SizeOf(entry.Type));
        return entry.Type switch
        {
            1 or 7 => _bytes[at],
            6 => (sbyte)_bytes[at],
            3 => U16(at),
            8 => (short)U16(at),
            4 or 13 => U32(at),
            9 => (int)U32(at),
            5 => U32(at + 4) == 0 ? missing : (double)U32(at) / U32(at + 4),
            11 => BitConverter.UInt32BitsToSingle(U32(at)),
            12 => BitConverter.UInt64BitsToDouble(U64(at)),
            16 or 18 => U64(at),
            17 => (long)U64(at),
            _ => missing,
        };
    }

    /// <summary>All values of a tag, at most a number of them.</summary>
    public double[] Numbers(int tag, int most)
    {
        double[] values = new double[Math.Min(Count(tag), most)];
        for (int i = 0; i < values.Length; i++) values[i] = Number(tag, double.NaN, i);
        return values;
    }

    /// <summary>Text of a tag; empty when missing.</summary>
    public string Text(int tag)
    {
        if (!_entries.TryGetValue(tag, out var entry) || entry.Type != 2) return "";
        int length = (int)Math.Min(entry.Count, 20_000);
        return Encoding.Latin1.GetString(_bytes, (int)entry.At, length).Split('\0')[0].Trim();
    }

    private int U16(long at) => _little ? BinaryPrimitives.ReadUInt16LittleEndian(_bytes.AsSpan((int)at)) : BinaryPrimitives.ReadUInt16BigEndian(_bytes.AsSpan((int)at));

    private uint U32(long at) => _little ? BinaryPrimitives.ReadUInt32LittleEndian(_bytes.AsSpan((int)at)) : BinaryPrimitives.ReadUInt32BigEndian(_bytes.AsSpan((int)at));

    private ulong U64(long at) => _little ? BinaryPrimitives.ReadUInt64LittleEndian(_bytes.AsSpan((int)at)) : BinaryPrimitives.ReadUInt64BigEndian(_bytes.AsSpan((int)at));

    private static int SizeOf(int type) => type switch
    {
        1 or 2 or 6 or 7 => 1,
        3 or 8 => 2,
        4 or 9 or 11 or 13 => 4,
        5 or 10 or 12 or 16 or 17 or 18 => 8,
        _ => 0,
    };
}
