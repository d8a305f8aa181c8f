using SecondShore.Formats.Surveys.Arrays;

namespace SecondShore.Formats.Surveys.Hdf5;

/// <summary>A message of an object's header: what kind of fact, and where it stands.</summary>
internal readonly record struct HdfMessage(int Kind, long At, long Length)
{
    public const int Space = 1, LinkInfo = 2, Type = 3, Link = 6, Layout = 8, Filters = 11, Attribute = 12, Continuation = 16, SymbolTable = 17, AttributeInfo = 21;
}

/// <summary>Reads the headers of objects (HDF5 file format specification 3.0, IV.A).</summary>
internal static class HdfObject
{
    private const int DeepestSharing = 4;

    /// <summary>All messages of the object at an address.</summary>
    public static List<HdfMessage> Messages(HdfBytes file, long address, int sharing = 0)
    {
        file.Follow();
        List<HdfMessage> found = [];
        Queue<(long At, long End)> blocks = new();
        bool second = file.Span(address, 4).SequenceEqual("OHDR"u8);
        int ordered = 0;
        if (second)
        {
            int flags = file.U8(address + 5), sizeBytes = 1 << (flags & 3);
            long at = address + 6 + ((flags & 0x20) != 0 ? 16 : 0) + ((flags & 0x10) != 0 ? 4 : 0), size = file.Number(at, sizeBytes);
            ordered = (flags & 4) != 0 ? 2 : 0;
            blocks.Enqueue((at + sizeBytes, at + sizeBytes + size));
        }
        else
        {
            if (file.U8(address) != 1) throw ArrayFault.Damaged();
            blocks.Enqueue((address + 16, address + 16 + file.U32(address + 8)));
        }

        int head = second ? 4 + ordered : 8;
        while (blocks.TryDequeue(out (long At, long End) block))
        {
            file.Follow();
            for (long at = block.At; at + head <= block.End && at + head <= file.Length;)
            {
                file.Follow();
                int kind = second ? file.U8(at) : file.U16(at), size = file.U16(at + (second ? 1 : 2)), flags = file.U8(at + (second ? 3 : 4));
                long data = at + head;
                at = data + size;
                file.Span(data, size);
                if (kind == HdfMessage.Continuation)
                {
                    long next = file.Needed(data), length = file.Size(data + file.AddressBytes);
                    file.Span(next, length);
                    // Blocks of the second version have a signature before and a checksum after.
                    blocks.Enqueue(second ? (next + 4, next + length - 4) : (next, next + length));
                }
                else
                {
                    found.Add((flags & 2) != 0 ? Shared(file, kind, data, sharing) : new HdfMessage(kind, data, size));
                }
            }
        }

        return found;
    }

    // A fact that several objects share stands in an object of its own.
    private static HdfMessage Shared(HdfBytes file, int kind, long at, int sharing)
    {
        int version = file.U8(at);
        if (sharing >= DeepestSharing || version is < 1 or > 3 || (version == 3 && file.U8(at + 1) == 1)) return new HdfMessage(0, at, 0);
        long address = file.Needed(at + (version == 1 ? 8 : 2));
        return Messages(file, address, sharing + 1).FirstOrDefault(m => m.Kind == kind);
    }
}
