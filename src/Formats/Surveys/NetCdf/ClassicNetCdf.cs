using System.Text;
using SecondShore.Formats.Surveys.Arrays;

namespace SecondShore.Formats.Surveys.NetCdf;

/// <summary>Finds the arrays of a classic NetCDF file, of 32 or 64 bits (NetCDF Users Guide, file format specifications).</summary>
internal sealed class ClassicNetCdf
{
    private const int Dimension = 10, Variable = 11, Attribute = 12, MostItems = 10_000;

    private readonly byte[] _bytes;
    private readonly int _countBytes;
    private readonly int _beginBytes;
    private readonly List<(string Name, long Length)> _dimensions = [];
    private long _at = 4;

    private ClassicNetCdf(byte[] bytes) => (_bytes, _countBytes, _beginBytes) = (bytes, bytes[3] == 5 ? 8 : 4, bytes[3] == 1 ? 4 : 8);

    /// <summary>Whether the bytes start as such a file does.</summary>
    public static bool Is(ReadOnlySpan<byte> b) => b.Length > 32 && b[0] == 'C' && b[1] == 'D' && b[2] == 'F' && b[3] is 1 or 2 or 5;

    /// <summary>All arrays.</summary>
    /// <exception cref="ArrayFault">The file is damaged.</exception>
    public static List<FiledArray> Arrays(byte[] bytes) => new ClassicNetCdf(bytes).Read();

    private List<FiledArray> Read()
    {
        long records = Count();
        for (long n = List(Dimension); n > 0; n--) _dimensions.Add((Name(), Count()));
        Attributes();
        List<FiledArray> arrays = [];
        for (long n = List(Variable); n > 0; n--)
        {
            string name = Name();
            long rank = Count();
            if (rank > 32) throw ArrayFault.Damaged();
            long[] shape = new long[rank];
            string[] dimensions = new string[rank];
            bool recorded = false;
            for (int k = 0; k < rank; k++)
            {
                long d = Count();
                if (d >= _dimensions.Count) throw ArrayFault.Damaged();
                (dimensions[k], shape[k]) = _dimensions[(int)d];
                // The length of the one dimension that grows stands at the head of the file.
                recorded |= k == 0 && shape[k] == 0;
                if (k == 0 && shape[k] == 0) shape[k] = records;
            }

            Dictionary<string, ArrayAttribute> attributes = Attributes();
            ElementType type = Type(Number(4));
            Count();
            long begin = Number(_beginBytes), all = FiledArray.CountOf(shape);
            arrays.Add(new FiledArray(name, shape, dimensions, type, attributes, (take, _) => Elements(begin, all, type.Bytes, recorded, take)));
        }

        return arrays;
    }

    private void Elements(long begin, long count, int bytes, bool recorded, TakeElement take)
    {
        if (recorded) throw new ArrayFault("the grid grows along one of its dimensions, which is not read here; export one layer of it.");
        ReadOnlySpan<byte> elements = Span(begin, count * bytes);
        for (int i = 0; i < count; i++) take(i, elements.Slice(i * bytes, bytes));
    }

    private Dictionary<string, ArrayAttribute> Attributes()
    {
        Dictionary<string, ArrayAttribute> found = new(StringComparer.Ordinal);
        for (long n = List(Attribute); n > 0; n--)
        {
            string name = Name();
            ElementType type = Type(Number(4));
            long count = Count();
            if (count > _bytes.Length) throw ArrayFault.Damaged();
            ReadOnlySpan<byte> values = Span(_at, count * type.Bytes);
            _at += (values.Length + 3) & ~3;
            if (type.Kind == ElementKind.Text) found[name] = new ArrayAttribute(Encoding.UTF8.GetString(values).TrimEnd('\0', ' '), []);
            else if (count is > 0 and < 100) found[name] = new ArrayAttribute("", type.Numbers(values));
        }

        return found;
    }

    private static ElementType Type(long type) => type switch
    {
        1 => new(ElementKind.Whole, 1, true, true),
        2 => new(ElementKind.Text, 1, true, false),
        3 => new(ElementKind.Whole, 2, true, true),
        4 => new(ElementKind.Whole, 4, true, true),
        5 => new(ElementKind.Floating, 4, true, true),
        6 => new(ElementKind.Floating, 8, true, true),
        7 => new(ElementKind.Whole, 1, true, false),
        8 => new(ElementKind.Whole, 2, true, false),
        9 => new(ElementKind.Whole, 4, true, false),
        10 => new(ElementKind.Whole, 8, true, true),
        11 => new(ElementKind.Whole, 8, true, false),
        _ => throw ArrayFault.Damaged(),
    };

    // A list starts with its kind, or with 0 where there is none.
    private long List(int kind)
    {
        long tag = Number(4), count = Count();
        return (tag == kind && count <= MostItems) || (tag == 0 && count == 0) ? count : throw ArrayFault.Damaged();
    }

    private string Name()
    {
        long length = Count();
        string name = Encoding.UTF8.GetString(Span(_at, length));
        _at += (length + 3) & ~3L;
        return name;
    }

    private long Count() => Number(_countBytes);

    private long Number(int bytes)
    {
        ulong value = 0;
        foreach (byte b in Span(_at, bytes)) value = (value << 8) | b;
        _at += bytes;
        return value <= long.MaxValue ? (long)value : throw ArrayFault.Damaged();
    }

    private ReadOnlySpan<byte> Span(long at, long count) => FiledBytes.Span(_bytes, at, count);
}
