using System.IO.Compression;
using SecondShore.Formats.Surveys.Arrays;

namespace SecondShore.Formats.Surveys.Hdf5;

/// <summary>What was done to the bytes of a chunk before they were filed, in that order.</summary>
internal sealed class HdfFilters
{
    private const int Deflate = 1, Shuffle = 2, Checksum = 3;

    private readonly List<int> _kinds = [];

    /// <summary>The filters that a message names.</summary>
    public static HdfFilters Of(HdfBytes file, HdfMessage? message)
    {
        HdfFilters filters = new();
        if (message is not { } m) return filters;
        int version = file.U8(m.At), count = file.U8(m.At + 1);
        long at = m.At + (version == 1 ? 8 : 2);
        for (int k = 0; k < count; k++)
        {
            int kind = file.U16(at), values;
            if (version == 1 || kind >= 256)
            {
                int name = file.U16(at + 2);
                values = file.U16(at + 6);
                at += 8 + (version == 1 ? (name + 7) & ~7 : name);
            }
            else
            {
                values = file.U16(at + 4);
                at += 6;
            }

            at += 4 * (values + (version == 1 ? values % 2 : 0));
            filters._kinds.Add(kind);
        }

        return filters;
    }

    /// <summary>The bytes of a chunk as they were.</summary>
    /// <param name="file">The file.</param>
    /// <param name="at">Where the chunk stands.</param>
    /// <param name="stored">Bytes that it takes there.</param>
    /// <param name="skipped">Bits of the filters that were left out for this chunk.</param>
    /// <param name="bytes">Bytes that it held.</param>
    /// <param name="elementBytes">Bytes of an element.</param>
    public ReadOnlySpan<byte> Undo(HdfBytes file, long at, long stored, long skipped, long bytes, int elementBytes)
    {
        file.Span(at, stored);
        long start = at, length = stored;
        byte[]? held = null;
        for (int k = _kinds.Count - 1; k >= 0; k--)
        {
            if (k < 32 && (skipped >> k & 1) != 0) continue;
            switch (_kinds[k])
            {
                case Checksum when held is null: length -= 4; break;
                case Checksum: held = held[..Math.Max(0, held.Length - 4)]; break;
                case Deflate: held = Inflate(held ?? file.All, held is null ? start : 0, held is null ? length : held.Length, bytes); break;
                case Shuffle: held = Unshuffle(held ?? file.Span(start, length), elementBytes); break;
                default: throw new ArrayFault("the file packs its grid in a way that is not read here; save it again without packing or with deflate, or export the layer of depths as GeoTIFF.");
            }
        }

        ReadOnlySpan<byte> result = held ?? file.Span(start, length);
        return result.Length >= bytes ? result[..(int)bytes] : throw ArrayFault.Damaged();
    }

    private static byte[] Inflate(byte[] from, long at, long length, long bytes)
    {
        // Deflate packs a thousandfold at best. A checksum of four bytes may stand behind the elements.
        if (length < 0 || bytes > (1100 * length) + 1024) throw ArrayFault.Damaged();
        byte[] held = new byte[bytes + 4];
        try
        {
            using ZLibStream stream = new(new MemoryStream(from, (int)at, (int)length, writable: false), CompressionMode.Decompress);
            int read = stream.ReadAtLeast(held, held.Length, throwOnEndOfStream: false);
            return read == held.Length ? held : held[..read];
        }
        catch (Exception e) when (e is InvalidDataException or IOException) // The inflater's own exception is an IOException.
        {
            throw new ArrayFault("a part of the grid cannot be unpacked; the file is damaged. Copy or export it again.");
        }
    }

    private static byte[] Unshuffle(ReadOnlySpan<byte> shuffled, int elementBytes)
    {
        int count = shuffled.Length / elementBytes;
        byte[] elements = shuffled.ToArray();
        for (int b = 0; b < elementBytes; b++)
            for (int i = 0; i < count; i++) elements[(i * elementBytes) + b] = shuffled[(b * count) + i];
        return elements;
    }
}
