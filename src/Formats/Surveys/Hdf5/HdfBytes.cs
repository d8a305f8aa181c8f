using System.Buffers.Binary;
using SecondShore.Formats.Surveys.Arrays;

namespace SecondShore.Formats.Surveys.Hdf5;

/// <summary>The bytes of an HDF5 file: every look is held to its length, and the number of structures followed is bounded.</summary>
internal sealed class HdfBytes(byte[] bytes)
{
    /// <summary>Structures followed, at most: a hostile file may point in circles.</summary>
    private int _left = 1_000_000;

    /// <summary>Size of an address in this file, bytes.</summary>
    public int AddressBytes { get; set; } = 8;

    /// <summary>Size of a length in this file, bytes.</summary>
    public int LengthBytes { get; set; } = 8;

    /// <summary>Where addresses count from.</summary>
    public long Base { get; set; }

    /// <summary>Length of the file.</summary>
    public long Length => bytes.Length;

    /// <summary>The file.</summary>
    public byte[] All => bytes;

    /// <summary>Counts a structure that is followed.</summary>
    public void Follow()
    {
        if (--_left < 0) throw ArrayFault.Damaged();
    }

    /// <summary>Some bytes.</summary>
    public ReadOnlySpan<byte> Span(long at, long count) => FiledBytes.Span(bytes, at, count);

    public int U8(long at) => Span(at, 1)[0];

    public int U16(long at) => BinaryPrimitives.ReadUInt16LittleEndian(Span(at, 2));

    public long U32(long at) => BinaryPrimitives.ReadUInt32LittleEndian(Span(at, 4));

    /// <summary>A whole number of 1 to 8 bytes; what does not fit in 63 bits is damage.</summary>
    public long Number(long at, int size)
    {
        ulong value = 0;
        ReadOnlySpan<byte> span = Span(at, size);
        for (int i = 0; i < size; i++) value |= (ulong)span[i] << (8 * i);
        return value <= long.MaxValue ? (long)value : throw ArrayFault.Damaged();
    }

    /// <summary>An address within the file; null where it says that there is none.</summary>
    public long? Address(long at)
    {
        ReadOnlySpan<byte> span = Span(at, AddressBytes);
        if (!span.ContainsAnyExcept((byte)0xFF)) return null;
        long address = Number(at, AddressBytes);
        return address <= bytes.Length - Base ? Base + address : throw ArrayFault.Damaged();
    }

    /// <summary>An address that must be there.</summary>
    public long Needed(long at) => Address(at) ?? throw ArrayFault.Damaged();

    /// <summary>A length that is held in the file's own size of lengths.</summary>
    public long Size(long at) => Number(at, LengthBytes);

    /// <summary>Holds a structure to its signature.</summary>
    public void Expect(long at, ReadOnlySpan<byte> signature)
    {
        if (!Span(at, signature.Length).SequenceEqual(signature)) throw ArrayFault.Damaged();
        Follow();
    }
}
