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
