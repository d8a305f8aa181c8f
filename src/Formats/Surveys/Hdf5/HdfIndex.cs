using System.Numerics;
using SecondShore.Formats.Surveys.Arrays;

namespace SecondShore.Formats.Surveys.Hdf5;

/// <summary>Walks the trees that HDF5 keeps its indices in (specification III.A).</summary>
internal static class HdfIndex
{
    private const int Deepest = 16;

    /// <summary>Where each record of a tree of the second version stands.</summary>
    public static List<long> Records(HdfBytes file, long address)
    {
        file.Expect(address, "BTHD"u8);
        long nodeBytes = file.U32(address + 6);
        int recordBytes = file.U16(address + 10), depth = file.U16(address + 12);
        if (recordBytes < 1 || depth > Deepest || nodeBytes is < 32 or > 1 << 24) throw ArrayFault.Damaged();
        List<long> found = [];
        if (file.Address(address + 16) is not long root) return found;
        // Sizes of the pointers of each level follow from how many records a node of the level below can hold.
        long most = (nodeBytes - 10) / recordBytes, all = most;
        int countBytes = EncodedBytes(most);
        int[] pointerBytes = new int[depth + 1];
        for (int level = 1, totalBytes = 0; level <= depth; level++, totalBytes = EncodedBytes(all))
        {
            pointerBytes[level] = file.AddressBytes + countBytes + totalBytes;
            long inNode = (nodeBytes - 10 - pointerBytes[level]) / (recordBytes + pointerBytes[level]);
            if (inNode < 1 || all > long.MaxValue / (inNode + 2)) throw ArrayFault.Damaged();
            all = ((inNode + 1) * all) + inNode;
        }

        Node(root, file.U16(address + 16 + file.AddressBytes), depth);
        return found;

        void Node(long at, long records, int level)
        {
            file.Expect(at, level == 0 ? "BTLF"u8 : "BTIN"u8);
            if (records > nodeBytes / recordBytes) throw ArrayFault.Damaged();
            for (long r = 0; r < records; r++) found.Add(at + 6 + (r * recordBytes));
            file.Span(at + 6, records * recordBytes);
            if (level == 0) return;
            long pointers = at + 6 + (records * recordBytes);
            for (long p = 0; p <= records; p++, pointers += pointerBytes[level])
                Node(file.Needed(pointers), file.Number(pointers + file.AddressBytes, countBytes), level - 1);
        }
    }

    /// <summary>Keys and children of the leaves of a tree of the first version.</summary>
    /// <param name="file">The file.</param>
    /// <param name="address">Root.</param>
    /// <param name="kind">0 for groups, 1 for chunks.</param>
    /// <param name="keyBytes">Size of a key.</param>
    public static List<(long Key, long Child)> Leaves(HdfBytes file, long address, int kind, int keyBytes)
    {
        List<(long, long)> found = [];
        Node(address, Deepest);
        return found;

        void Node(long at, int above)
        {
            file.Expect(at, "TREE"u8);
            int level = file.U8(at + 5), entries = file.U16(at + 6);
            if (file.U8(at + 4) != kind || level >= above) throw ArrayFault.Damaged();
            long key = at + 8 + (2 * file.AddressBytes);
            for (int e = 0; e < entries; e++, key += keyBytes + file.AddressBytes)
            {
                file.Follow();
                long child = file.Needed(key + keyBytes);
                if (level == 0) found.Add((key, child));
                else Node(child, level);
            }
        }
    }

    private static int EncodedBytes(long most) => (BitOperations.Log2((ulong)Math.Max(1, most)) / 8) + 1;
}
