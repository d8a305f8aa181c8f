using System.Text;
using SecondShore.Formats.Surveys.Arrays;

namespace SecondShore.Formats.Surveys.Hdf5;

/// <summary>Finds the arrays of an HDF5 file (HDF5 file format specification 3.0), in groups down to a bounded depth.</summary>
internal static class HdfFile
{
    private const int DeepestGroup = 4, MostArrays = 10_000;

    private static readonly byte[] Signature = [0x89, (byte)'H', (byte)'D', (byte)'F', 13, 10, 26, 10];

    /// <summary>Where the file's head stands; null where the bytes are no HDF5 file.</summary>
    public static long? HeadOf(ReadOnlySpan<byte> bytes)
    {
        // A block of the writer's own may stand before it.
        for (int at = 0; at <= 4096 && at + 8 <= bytes.Length; at = at == 0 ? 512 : 2 * at)
            if (bytes[at..].StartsWith(Signature)) return at;
        return null;
    }

    /// <summary>All arrays, by their paths.</summary>
    /// <exception cref="ArrayFault">The file is damaged, or its table of contents is of a kind that is not read.</exception>
    public static List<FiledArray> Arrays(byte[] bytes)
    {
        HdfBytes file = new(bytes);
        List<FiledArray> arrays = [];
        Collect(file, Root(file, HeadOf(bytes) ?? throw ArrayFault.Damaged()), "", 0, arrays);
        return arrays;
    }

    private static long Root(HdfBytes file, long head)
    {
        int version = file.U8(head + 8);
        bool first = version is 0 or 1;
        if (!first && version is not (2 or 3)) throw new ArrayFault("the file is of a newer kind of HDF5 than is read here; export the layer of depths as GeoTIFF and use that.");
        (int addressBytes, int lengthBytes) = (file.U8(head + (first ? 13 : 9)), file.U8(head + (first ? 14 : 10)));
        if (addressBytes is not (2 or 4 or 8) || lengthBytes is not (2 or 4 or 8)) throw ArrayFault.Damaged();
        (file.AddressBytes, file.LengthBytes) = (addressBytes, lengthBytes);
        long addresses = head + (first ? (version == 0 ? 24 : 28) : 12);
        // Addresses count from the head, which is what the base says where a block stands before it.
        file.Base = file.Number(addresses, addressBytes);
        if (file.Base > file.Length) throw ArrayFault.Damaged();
        return file.Needed(addresses + (first ? 5 : 3) * addressBytes);
    }

    private static void Collect(HdfBytes file, long group, string path, int depth, List<FiledArray> arrays)
    {
        foreach ((string name, long address) in HdfLinks.Of(file, HdfObject.Messages(file, group)))
        {
            if (arrays.Count >= MostArrays) throw new ArrayFault("the file holds over ten thousand arrays; export the layer of depths as GeoTIFF and use that.");
            List<HdfMessage> messages = HdfObject.Messages(file, address);
            if (messages.Any(m => m.Kind is HdfMessage.LinkInfo or HdfMessage.SymbolTable))
            {
                if (depth < DeepestGroup) Collect(file, address, path + name + "/", depth + 1, arrays);
            }
            else if (HdfDataset.Of(file, path + name, messages) is FiledArray array)
            {
                arrays.Add(array);
            }
        }
    }
}

/// <summary>Names and addresses of what a group holds.</summary>
internal static class HdfLinks
{
    /// <summary>The links of a group whose header holds these messages.</summary>
    public static List<(string Name, long Address)> Of(HdfBytes file, List<HdfMessage> messages)
    {
        List<(string, long)> links = [];
        foreach (HdfMessage message in messages)
        {
            if (message.Kind == HdfMessage.SymbolTable) Symbols(file, message.At, links);
            else if (message.Kind == HdfMessage.Link) Link(file, message.At, links);
            else if (message.Kind == HdfMessage.LinkInfo) Dense(file, message.At, links);
        }

        return links;
    }

    private static void Symbols(HdfBytes file, long at, List<(string, long)> links)
    {
        long tree = file.Needed(at), heap = file.Needed(at + file.AddressBytes);
        file.Expect(heap, "HEAP"u8);
        long namesBytes = file.Size(heap + 8), names = file.Needed(heap + 8 + (2 * file.LengthBytes));
        file.Span(names, namesBytes);
        foreach ((_, long node) in HdfIndex.Leaves(file, tree, 0, file.LengthBytes))
        {
            file.Expect(node, "SNOD"u8);
            int count = file.U16(node + 6);
            for (int k = 0; k < count; k++)
            {
                file.Follow();
                long entry = node + 8 + (k * ((2 * file.AddressBytes) + 24)), nameAt = file.Number(entry, file.AddressBytes);
                if (nameAt >= namesBytes) throw ArrayFault.Damaged();
                ReadOnlySpan<byte> name = file.Span(names + nameAt, namesBytes - nameAt);
                int end = name.IndexOf((byte)0);
                links.Add((Encoding.UTF8.GetString(end < 0 ? name : name[..end]), file.Needed(entry + file.AddressBytes)));
            }
        }
    }

    private static void Dense(HdfBytes file, long at, List<(string, long)> links)
    {
        long addresses = at + 2 + ((file.U8(at + 1) & 1) != 0 ? 8 : 0);
        if (file.Address(addresses) is not long heapAt || file.Address(addresses + file.AddressBytes) is not long tree) return;
        HdfHeap heap = new(file, heapAt);
        foreach (long record in HdfIndex.Records(file, tree))
            if (heap.Find(record + 4) is { } link) Link(file, link.At, links);
    }

    // Only links to objects of this file count; soft and outer ones are left alone.
    private static void Link(HdfBytes file, long at, List<(string, long)> links)
    {
        file.Follow();
        int flags = file.U8(at + 1), nameSizeBytes = 1 << (flags & 3);
        long next = at + 2;
        int kind = (flags & 8) != 0 ? file.U8(next++) : 0;
        if ((flags & 4) != 0) next += 8;
        if ((flags & 16) != 0) next++;
        long nameBytes = file.Number(next, nameSizeBytes);
        next += nameSizeBytes;
        if (kind == 0) links.Add((Encoding.UTF8.GetString(file.Span(next, nameBytes)), file.Needed(next + nameBytes)));
    }
}
