using System.Buffers.Binary;
using System.Globalization;

namespace SecondShore.Formats.Files;

/// <summary>
/// Looks at the list of a zip file before it is read: the reader makes an object of every entry, and a small file may list a million. The
/// end record's own count is not believed, entry headers are walked.
/// </summary>
internal static class ZipDirectory
{
    private const int EndBytes = 22, HeaderBytes = 46, LocatorBytes = 20, End64Bytes = 56;

    /// <summary>Refuses a list of more entries than are taken; leaves the stream at its start. What is no zip file is left to the reader.</summary>
    /// <exception cref="TripRefusedException">There are more.</exception>
    public static void RequireAtMost(Stream stream, int most)
    {
        try
        {
            if (StartOf(stream) is not { } at) return;
            Span<byte> header = stackalloc byte[HeaderBytes];
            for (int count = 0; at >= 0 && at + HeaderBytes <= stream.Length; count++)
            {
                stream.Position = at;
                stream.ReadExactly(header);
                if (BinaryPrimitives.ReadUInt32LittleEndian(header) != 0x02014b50) return;
                if (count == most) throw new TripRefusedException(string.Create(CultureInfo.InvariantCulture, $"the trip file holds more than {most} files, and at most {most} are taken."));
                at += HeaderBytes + Two(header, 28) + Two(header, 30) + Two(header, 32);
            }
        }
        catch (EndOfStreamException)
        {
            // Cut off: the reader says so.
        }
        finally
        {
            stream.Position = 0;
        }
    }

    // Where the list begins: the end record stands before a comment of 64 KB at most.
    private static long? StartOf(Stream stream)
    {
        int tail = (int)Math.Min(stream.Length, EndBytes + ushort.MaxValue);
        if (tail < EndBytes) return null;
        byte[] bytes = new byte[tail];
        stream.Position = stream.Length - tail;
        stream.ReadExactly(bytes);
        for (int i = tail - EndBytes; i >= 0; i--)
        {
            if (BinaryPrimitives.ReadUInt32LittleEndian(bytes.AsSpan(i)) != 0x06054b50) continue;
            uint start = BinaryPrimitives.ReadUInt32LittleEndian(bytes.AsSpan(i + 16));
            return start == uint.MaxValue ? StartOf64(stream, stream.Length - tail + i - LocatorBytes) : start;
        }

        return null;
    }

    private static long? StartOf64(Stream stream, long locatorAt)
    {
        if (locatorAt < 0) return null;
        Span<byte> bytes = stackalloc byte[End64Bytes];
        stream.Position = locatorAt;
        stream.ReadExactly(bytes[..LocatorBytes]);
        if (BinaryPrimitives.ReadUInt32LittleEndian(bytes) != 0x07064b50) return null;
        long endAt = BinaryPrimitives.ReadInt64LittleEndian(bytes[8..]);
        if (endAt < 0 || endAt + End64Bytes > stream.Length) return null;
        stream.Position = endAt;
        stream.ReadExactly(bytes);
        return BinaryPrimitives.ReadInt64LittleEndian(bytes[48..]);
    }

    private static int Two(ReadOnlySpan<byte> header, int at) => BinaryPrimitives.ReadUInt16LittleEndian(header[at..]);
}
