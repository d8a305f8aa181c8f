using System.Text;
using SecondShore.Formats.Surveys.Arrays;

namespace SecondShore.Formats.Surveys.Hdf5;

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
