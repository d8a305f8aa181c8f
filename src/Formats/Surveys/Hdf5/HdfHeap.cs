using System.Numerics;
using SecondShore.Formats.Surveys.Arrays;

namespace SecondShore.Formats.Surveys.Hdf5;

/// <summary>A fractal heap: where groups of many links and objects of many attributes keep them (specification III.G).</summary>
internal sealed class HdfHeap
{
    private const int MostRows = 64;

    private readonly HdfBytes _file;
    private readonly long _root;
    private readonly int _rootRows;
    private readonly int _width;
    private readonly long _startBytes;
    private readonly long _mostDirectBytes;
    private readonly int _offsetBytes;
    private readonly int _lengthBytes;

    /// <summary>Reads the heap's head.</summary>
    public HdfHeap(HdfBytes file, long address)
    {
        _file = file;
        file.Expect(address, "FRHP"u8);
        int filterBytes = file.U16(address + 7), a = file.AddressBytes, l = file.LengthBytes;
        if (filterBytes > 0) throw new ArrayFault("the file packs its own table of contents, which is not read here; export the layer of depths as GeoTIFF and use that.");
        long mostManaged = file.U32(address + 10), at = address + 14 + (10 * l) + (2 * a);
        (_width, _startBytes, _mostDirectBytes) = (file.U16(at), file.Size(at + 2), file.Size(at + 2 + l));
        int bits = file.U16(at + 2 + (2 * l));
        long rootAt = at + 6 + (2 * l);
        (_root, _rootRows) = (file.Needed(rootAt), file.U16(rootAt + a));
        if (_width is < 1 or > 1024 || _startBytes < 1 || _mostDirectBytes < _startBytes || _mostDirectBytes > 1L << 31 || bits is < 1 or > 64 || _rootRows > MostRows) throw ArrayFault.Damaged();
        _offsetBytes = (bits + 7) / 8;
        _lengthBytes = Math.Min((BitOperations.Log2((ulong)_mostDirectBytes) + 7) / 8, (BitOperations.Log2((ulong)Math.Max(1, mostManaged)) / 8) + 1);
    }

    /// <summary>Where the object of an identifier stands; null for a kind that is not read.</summary>
    public (long At, long Length)? Find(long identifier)
    {
        _file.Follow();
        int kind = (_file.U8(identifier) >> 4) & 3;
        if (kind == 2) return (identifier + 1, (_file.U8(identifier) & 15) + 1);
        if (kind != 0) return null;
        long offset = _file.Number(identifier + 1, _offsetBytes), length = _file.Number(identifier + 1 + _offsetBytes, _lengthBytes);
        long at = _rootRows == 0 ? _root + offset : InRows(_root, _rootRows, offset, 0);
        _file.Span(at, length);
        return (at, length);
    }

    // Rows of blocks: the first two of the starting size, each further one of twice the size before.
    private long InRows(long block, int rows, long offset, int depth)
    {
        _file.Expect(block, "FHIB"u8);
        if (depth > 8) throw ArrayFault.Damaged();
        long entries = block + 5 + _file.AddressBytes + _offsetBytes, start = 0;
        for (int row = 0; row < rows; row++)
        {
            long size = row < 2 ? _startBytes : _startBytes << (row - 1);
            if (size <= 0) throw ArrayFault.Damaged();
            if (offset >= start + (size * _width))
            {
                start += size * _width;
                continue;
            }

            long column = (offset - start) / size, child = _file.Needed(entries + (((row * _width) + column) * _file.AddressBytes)), within = offset - start - (column * size);
            if (size <= _mostDirectBytes) return child + within;
            int childRows = BitOperations.Log2((ulong)size) - BitOperations.Log2((ulong)(_startBytes * _width)) + 1;
            return childRows is < 1 or > MostRows ? throw ArrayFault.Damaged() : InRows(child, childRows, within, depth + 1);
        }

        throw ArrayFault.Damaged();
    }
}
