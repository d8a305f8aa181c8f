using SecondShore.Formats.Surveys.Arrays;

namespace SecondShore.Formats.Surveys.Hdf5;

/// <summary>A chunk of an array: its number, where it stands, the bytes it takes there, and the filters left out for it.</summary>
internal readonly record struct HdfChunk(long Number, long At, long Stored, long Skipped);

/// <summary>Index of the chunks of an array of fixed size (specification VII.D).</summary>
internal static class HdfFixedArray
{
    private const int MostPageBits = 24;

    /// <summary>The chunks that the index at an address names.</summary>
    /// <param name="file">The file.</param>
    /// <param name="address">The index.</param>
    /// <param name="chunkBytes">Bytes of a chunk that no filter changed.</param>
    public static IEnumerable<HdfChunk> Chunks(HdfBytes file, long address, long chunkBytes)
    {
        file.Expect(address, "FAHD"u8);
        int filtered = file.U8(address + 5), entryBytes = file.U8(address + 6), pageBits = file.U8(address + 7);
        long entries = file.Size(address + 8);
        if (pageBits > MostPageBits || entryBytes < file.AddressBytes + (filtered == 1 ? 5 : 0) || entryBytes > 64) throw ArrayFault.Damaged();
        if (file.Address(address + 8 + file.LengthBytes) is not long block) yield break;
        file.Expect(block, "FADB"u8);
        long first = block + 6 + file.AddressBytes, inPage = 1L << pageBits, pages = entries > inPage ? (entries + inPage - 1) / inPage : 0;
        // Pages that were never written are marked in bits, from the highest of each byte on; a checksum follows them, and each page.
        long start = pages > 0 ? first + ((pages + 7) / 8) + 4 : first;
        for (long n = 0; n < entries; n++)
        {
            file.Follow();
            long page = pages > 0 ? n / inPage : 0, at = start + (n * entryBytes) + (4 * page);
            if (pages > 0 && (file.U8(first + (page / 8)) >> (int)(7 - (page % 8)) & 1) == 0) continue;
            if (file.Address(at) is not long chunk) continue;
            int sizeBytes = entryBytes - file.AddressBytes - 4;
            yield return filtered == 1
                ? new HdfChunk(n, chunk, file.Number(at + file.AddressBytes, Math.Min(8, sizeBytes)), file.U32(at + entryBytes - 4))
                : new HdfChunk(n, chunk, chunkBytes, 0);
        }
    }
}
