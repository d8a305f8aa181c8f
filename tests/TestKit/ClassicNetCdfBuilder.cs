using System.Buffers.Binary;
using System.Text;

namespace SecondShore.TestKit;

/// <summary>Makes small classic NetCDF files for tests: dimensions, and arrays of 64-bit numbers with attributes of text.</summary>
public sealed class ClassicNetCdfBuilder
{
    private readonly List<(string Name, int Length)> _dimensions = [];
    private readonly List<(string Name, string[] Dimensions, double[] Values, (string Name, string Text)[] Attributes)> _arrays = [];

    public ClassicNetCdfBuilder Dimension(string name, int length)
    {
        _dimensions.Add((name, length));
        return this;
    }

    public ClassicNetCdfBuilder Array(string name, string[] dimensions, double[] values, params (string Name, string Text)[] attributes)
    {
        _arrays.Add((name, dimensions, values, attributes));
        return this;
    }

    /// <summary>The file.</summary>
    public byte[] Build()
    {
        // Twice: the second time it is known where the values begin.
        int head = Head(0).Length;
        List<byte> bytes = [.. Head(head)];
        foreach ((_, _, double[] values, _) in _arrays)
        {
            foreach (double value in values)
            {
                byte[] eight = new byte[8];
                BinaryPrimitives.WriteDoubleBigEndian(eight, value);
                bytes.AddRange(eight);
            }
        }

        return [.. bytes];
    }

    private byte[] Head(int begin)
    {
        List<byte> b = [(byte)'C', (byte)'D', (byte)'F', 1];
        Int(b, 0, 10, _dimensions.Count);
        foreach ((string name, int length) in _dimensions)
        {
            Text(b, name);
            Int(b, length);
        }

        Int(b, 0, 0, 11, _arrays.Count);
        foreach ((string name, string[] dimensions, double[] values, (string Name, string Text)[] attributes) in _arrays)
        {
            Text(b, name);
            Int(b, dimensions.Length);
            foreach (string d in dimensions) Int(b, _dimensions.FindIndex(known => known.Name == d));
            Int(b, attributes.Length > 0 ? 12 : 0, attributes.Length);
            foreach ((string key, string text) in attributes)
            {
                Text(b, key);
                Int(b, 2);
                Text(b, text);
            }

            Int(b, 6, 8 * values.Length, begin);
            begin += 8 * values.Length;
        }

        return [.. b];
    }

    private static void Text(List<byte> b, string text)
    {
        Int(b, text.Length);
        b.AddRange(Encoding.ASCII.GetBytes(text));
        while (b.Count % 4 != 0) b.Add(0);
    }

    private static void Int(List<byte> b, params int[] values)
    {
        foreach (int value in values) b.AddRange([(byte)(value >> 24), (byte)(value >> 16), (byte)(value >> 8), (byte)value]);
    }
}
