using System.Text;
using SecondShore.Formats.Surveys.Arrays;

namespace SecondShore.Formats.Surveys.Hdf5;

/// <summary>Types, shapes and attributes of HDF5 objects.</summary>
internal static class HdfFacts
{
    private const int MostAttributeElements = 4096;

    /// <summary>Type of elements that stands at a place.</summary>
    public static ElementType Type(HdfBytes file, long at)
    {
        int kind = file.U8(at) & 15, bits = file.U8(at + 1);
        long bytes = file.U32(at + 4);
        if (bytes is < 1 or > 1 << 20) throw ArrayFault.Damaged();
        return new ElementType(kind switch
        {
            0 => ElementKind.Whole,
            1 => ElementKind.Floating,
            3 => ElementKind.Text,
            9 when (bits & 15) == 1 => ElementKind.TextElsewhere,
            _ => ElementKind.Other,
        }, (int)bytes, (bits & 1) != 0, (bits & 8) != 0);
    }

    /// <summary>Length of each dimension; empty for a single value, null for none at all.</summary>
    public static long[]? Shape(HdfBytes file, long at)
    {
        int version = file.U8(at), rank = file.U8(at + 1);
        if (version is not (1 or 2) || rank > 32) throw ArrayFault.Damaged();
        if (version == 2 && file.U8(at + 3) == 2) return null;
        long[] shape = new long[rank];
        for (int k = 0; k < rank; k++) shape[k] = file.Size(at + (version == 1 ? 8 : 4) + (k * file.LengthBytes));
        _ = FiledArray.CountOf(shape);
        return shape;
    }

    /// <summary>The attributes of an object whose header holds these messages. Those of kinds not read here are left out.</summary>
    public static Dictionary<string, ArrayAttribute> Attributes(HdfBytes file, List<HdfMessage> messages)
    {
        Dictionary<string, ArrayAttribute> found = new(StringComparer.Ordinal);
        foreach (HdfMessage message in messages)
        {
            if (message.Kind == HdfMessage.Attribute) Add(file, message.At, found);
            if (message.Kind != HdfMessage.AttributeInfo) continue;
            long addresses = message.At + 2 + ((file.U8(message.At + 1) & 1) != 0 ? 2 : 0);
            if (file.Address(addresses) is not long heapAt || file.Address(addresses + file.AddressBytes) is not long tree) continue;
            HdfHeap heap = new(file, heapAt);
            foreach (long record in HdfIndex.Records(file, tree))
                if (heap.Find(record) is { } attribute) Add(file, attribute.At, found);
        }

        return found;
    }

    private static void Add(HdfBytes file, long at, Dictionary<string, ArrayAttribute> found)
    {
        file.Follow();
        int version = file.U8(at), nameBytes = file.U16(at + 2), typeBytes = file.U16(at + 4), spaceBytes = file.U16(at + 6);
        // Shared types of attributes are links and the like, none of which is asked for.
        if (version is < 1 or > 3 || (version > 1 && (file.U8(at + 1) & 3) != 0)) return;
        long name = at + (version == 3 ? 9 : 8), type = name + Padded(nameBytes), space = type + Padded(typeBytes), data = space + Padded(spaceBytes);
        string called = Encoding.UTF8.GetString(file.Span(name, nameBytes)).TrimEnd('\0');
        ElementType of = Type(file, type);
        long[]? shape = Shape(file, space);
        long count = shape is null ? 0 : FiledArray.CountOf(shape);
        if (count is < 1 or > MostAttributeElements) return;
        if (of.Kind == ElementKind.Text) found[called] = new ArrayAttribute(Plain(file.Span(data, count * of.Bytes)), []);
        else if (of.Kind == ElementKind.TextElsewhere) found[called] = new ArrayAttribute(Elsewhere(file, data), []);
        else if (of.IsNumber) found[called] = new ArrayAttribute("", of.Numbers(file.Span(data, count * of.Bytes)));

        long Padded(int bytes) => version == 1 ? (bytes + 7) & ~7 : bytes;
    }

    // Text of any length stands in a collection of such texts: its length, the collection's address, its number in there.
    private static string Elsewhere(HdfBytes file, long at)
    {
        long bytes = file.U32(at), number = file.U32(at + 4 + file.AddressBytes);
        if (bytes == 0 || file.Address(at + 4) is not long heap) return "";
        file.Expect(heap, "GCOL"u8);
        long end = heap + file.Size(heap + 8), next = heap + 8 + file.LengthBytes, head = 8 + file.LengthBytes;
        while (next + head <= end)
        {
            file.Follow();
            long size = file.Size(next + 8);
            if (file.U16(next) == 0) break;
            if (file.U16(next) == number) return Plain(file.Span(next + head, Math.Min(bytes, size)));
            if (size > end - next) break;
            next += head + ((size + 7) & ~7);
        }

        return "";
    }

    private static string Plain(ReadOnlySpan<byte> text) => Encoding.UTF8.GetString(text).TrimEnd('\0', ' ');
}
