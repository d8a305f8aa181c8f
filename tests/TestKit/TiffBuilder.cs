using System.Text;

namespace SecondShore.TestKit;

/// <summary>Makes small uncompressed TIFF files, right or wrong ones, for tests.</summary>
public sealed class TiffBuilder
{
    private readonly SortedDictionary<int, (int Type, byte[] Data, int Count)> _tags = [];

    /// <summary>A striped 32-bit float raster in degrees: first pixel's corner at west, north.</summary>
    public static TiffBuilder Floats(int columns, int rows, float[] values, double west, double north, double cell)
    {
        TiffBuilder tiff = new();
        tiff.Long(256, columns).Long(257, rows).Short(258, 32).Short(259, 1).Short(262, 1).Short(277, 1).Long(278, rows).Short(339, 3);
        tiff.Doubles(33550, cell, cell, 0).Doubles(33922, 0, 0, 0, west, north, 0);
        tiff.Shorts(34735, 1, 1, 0, 3, 1024, 0, 1, 2, 1025, 0, 1, 1, 2048, 0, 1, 4326);
        byte[] pixels = new byte[values.Length * 4];
        Buffer.BlockCopy(values, 0, pixels, 0, pixels.Length);
        tiff.Pixels = pixels;
        return tiff;
    }

    /// <summary>Bytes of the one strip.</summary>
    public byte[] Pixels { get; set; } = [];

    public TiffBuilder Short(int tag, int value) => Shorts(tag, value);

    public TiffBuilder Shorts(int tag, params int[] values)
    {
        _tags[tag] = (3, [.. values.SelectMany(v => BitConverter.GetBytes((ushort)v))], values.Length);
        return this;
    }

    public TiffBuilder Long(int tag, long value)
    {
        _tags[tag] = (4, BitConverter.GetBytes((uint)value), 1);
        return this;
    }

    public TiffBuilder Doubles(int tag, params double[] values)
    {
        _tags[tag] = (12, [.. values.SelectMany(BitConverter.GetBytes)], values.Length);
        return this;
    }

    public TiffBuilder Text(int tag, string text)
    {
        byte[] data = Encoding.ASCII.GetBytes(text + "\0");
        _tags[tag] = (2, data, data.Length);
        return this;
    }

    public TiffBuilder Without(int tag)
    {
        _tags.Remove(tag);
        return this;
    }

    /// <summary>The file.</summary>
    public byte[] Build()
    {
        Long(273, 0);
        Long(279, Pixels.Length);
        int directory = 8, data = directory + 2 + (_tags.Count * 12) + 4;
        using MemoryStream stream = new();
        using BinaryWriter writer = new(stream);
        int pixelsAt = data + _tags.Values.Sum(t => t.Data.Length > 4 ? t.Data.Length + (t.Data.Length % 2) : 0);
        Long(273, pixelsAt);
        writer.Write("II"u8);
        writer.Write((ushort)42);
        writer.Write(directory);
        writer.Write((ushort)_tags.Count);
        int at = data;
        foreach ((int tag, (int type, byte[] bytes, int count)) in _tags)
        {
            writer.Write((ushort)tag);
            writer.Write((ushort)type);
            writer.Write(count);
            if (bytes.Length <= 4) writer.Write([.. bytes, .. new byte[4 - bytes.Length]]);
            else
            {
                writer.Write(at);
                at += bytes.Length + (bytes.Length % 2);
            }
        }

        writer.Write(0);
        foreach ((_, (_, byte[] bytes, _)) in _tags)
        {
            if (bytes.Length <= 4) continue;
            writer.Write(bytes);
            if (bytes.Length % 2 == 1) writer.Write((byte)0);
        }

        writer.Write(Pixels);
        return stream.ToArray();
    }
}
