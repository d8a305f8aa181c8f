using SecondShore.Formats.Surveys.Arrays;

namespace SecondShore.Formats.Surveys.Hdf5;

/// <summary>An array of an HDF5 file and how its elements are laid out.</summary>
internal sealed class HdfDataset
{
    private const int Compact = 0, Contiguous = 1, Chunked = 2, MostDimensions = 4;

    private readonly HdfBytes _file;
    private readonly long[] _shape;
    private readonly int _elementBytes;
    private readonly long _layout;
    private readonly HdfFilters _filters;

    private HdfDataset(HdfBytes file, long[] shape, int elementBytes, long layout, HdfFilters filters) =>
        (_file, _shape, _elementBytes, _layout, _filters) = (file, shape, elementBytes, layout, filters);

    /// <summary>The array of an object whose header holds these messages; null where it is none.</summary>
    public static FiledArray? Of(HdfBytes file, string name, List<HdfMessage> messages)
    {
        HdfMessage? Find(int kind) => messages.Where(m => m.Kind == kind).Cast<HdfMessage?>().FirstOrDefault();
        if (Find(HdfMessage.Type) is not { } type || Find(HdfMessage.Space) is not { } space || Find(HdfMessage.Layout) is not { } layout) return null;
        if (HdfFacts.Shape(file, space.At) is not long[] shape) return null;
        ElementType of = HdfFacts.Type(file, type.At);
        HdfDataset dataset = new(file, shape, of.Bytes, layout.At, HdfFilters.Of(file, Find(HdfMessage.Filters)));
        return new FiledArray(name, shape, [], of, HdfFacts.Attributes(file, messages), dataset.Read);
    }

    private void Read(TakeElement take, CancellationToken cancel)
    {
        int version = _file.U8(_layout), kind = _file.U8(_layout + 1);
        if (version is not (3 or 4) || kind > Chunked || _shape.Length > MostDimensions) throw Unusual();
        if (kind == Compact) Whole(_layout + 4, _file.U16(_layout + 2), take);
        else if (kind == Contiguous) Contents(take);
        else if (version == 3) Chunks(take, cancel);
        else IndexedChunks(take, cancel);
    }

    private void Contents(TakeElement take)
    {
        if (_file.Address(_layout + 2) is long at) Whole(at, _file.Size(_layout + 2 + _file.AddressBytes), take);
    }

    private void Whole(long at, long bytes, TakeElement take)
    {
        long count = FiledArray.CountOf(_shape);
        ReadOnlySpan<byte> elements = _file.Span(at, bytes);
        if (bytes < count * _elementBytes) throw ArrayFault.Damaged();
        for (int i = 0; i < count; i++) take(i, elements.Slice(i * _elementBytes, _elementBytes));
    }

    private void Chunks(TakeElement take, CancellationToken cancel)
    {
        int rank = _file.U8(_layout + 2) - 1;
        if (rank != _shape.Length) throw ArrayFault.Damaged();
        if (_file.Address(_layout + 3) is not long tree) return;
        long[] chunk = new long[rank], corner = new long[rank];
        for (int k = 0; k < rank; k++) chunk[k] = _file.U32(_layout + 3 + _file.AddressBytes + (4 * k));
        long bytes = ChunkBytes(chunk), total = 0;
        foreach ((long key, long at) in HdfIndex.Leaves(_file, tree, 1, 8 + (8 * (rank + 1))))
        {
            cancel.ThrowIfCancellationRequested();
            bool inside = true;
            for (int k = 0; k < rank; k++) inside &= (corner[k] = _file.Number(key + 8 + (8 * k), 8)) < _shape[k];
            if (!inside) continue;
            // Chunks tile the array: those that hold more than it does, all told, are a forgery.
            total += bytes;
            if (total > MostBytes(chunk)) throw ArrayFault.Damaged();
            Spread(_filters.Undo(_file, at, _file.U32(key), _file.U32(key + 4), bytes, _elementBytes), chunk, corner, take);
        }
    }

    // The fourth version of the layout knows further indices of chunks; the two for grids of fixed size are read.
    private void IndexedChunks(TakeElement take, CancellationToken cancel)
    {
        const int single = 1, fixedArray = 3;
        int flags = _file.U8(_layout + 2), rank = _file.U8(_layout + 3) - 1, sizeBytes = _file.U8(_layout + 4);
        if (rank != _shape.Length || sizeBytes is < 1 or > 8) throw ArrayFault.Damaged();
        long[] chunk = new long[rank];
        for (int k = 0; k < rank; k++) chunk[k] = _file.Number(_layout + 5 + (k * sizeBytes), sizeBytes);
        long index = _layout + 5 + ((rank + 1) * sizeBytes), bytes = ChunkBytes(chunk);
        int kind = _file.U8(index++);
        if (kind == fixedArray && _file.Address(index + 1) is long array)
        {
            foreach (HdfChunk part in HdfFixedArray.Chunks(_file, array, bytes))
            {
                cancel.ThrowIfCancellationRequested();
                if (Corner(part.Number, chunk) is long[] corner) Spread(_filters.Undo(_file, part.At, part.Stored, part.Skipped, bytes, _elementBytes), chunk, corner, take);
            }
        }
        else if (kind == single)
        {
            bool filtered = (flags & 2) != 0;
            long address = index + (filtered ? _file.LengthBytes + 4 : 0), stored = filtered ? _file.Size(index) : bytes, skipped = filtered ? _file.U32(index + _file.LengthBytes) : 0;
            if (_file.Address(address) is long at) Spread(_filters.Undo(_file, at, stored, skipped, bytes, _elementBytes), chunk, new long[rank], take);
        }
        else if (kind != fixedArray)
        {
            throw Unusual();
        }
    }

    // First element of a chunk by its number, in rows of chunks; null past the last one.
    private long[]? Corner(long number, long[] chunk)
    {
        long[] corner = new long[chunk.Length];
        for (int k = chunk.Length - 1; k >= 0; k--)
        {
            long along = (_shape[k] + chunk[k] - 1) / chunk[k];
            if (along == 0) return null;
            corner[k] = number % along * chunk[k];
            number /= along;
        }

        return number == 0 ? corner : null;
    }

    private long ChunkBytes(long[] chunk)
    {
        long bytes = _elementBytes;
        foreach (long side in chunk)
        {
            if (side < 1 || bytes > (256L << 20) / side) throw ArrayFault.Damaged();
            bytes *= side;
        }

        return bytes;
    }

    private long MostBytes(long[] chunk)
    {
        long bytes = _elementBytes;
        for (int k = 0; k < chunk.Length; k++) bytes *= (_shape[k] + chunk[k] - 1) / chunk[k] * chunk[k];
        return bytes;
    }

    // Row by row of the last dimension; what stands over the array's edge is padding.
    private void Spread(ReadOnlySpan<byte> elements, long[] chunk, long[] corner, TakeElement take)
    {
        int last = chunk.Length - 1;
        if (last < 0) { take(0, elements[.._elementBytes]); return; }
        long rows = elements.Length / _elementBytes / chunk[last];
        int width = (int)Math.Min(chunk[last], _shape[last] - corner[last]);
        for (long row = 0; row < rows; row++)
        {
            long rest = row, index = 0, stride = _shape[last];
            bool inside = true;
            for (int k = last - 1; k >= 0; k--, rest /= chunk[k + 1])
            {
                long place = corner[k] + (rest % chunk[k]);
                inside &= place < _shape[k];
                index += place * stride;
                stride *= _shape[k];
            }

            if (!inside) continue;
            for (int i = 0; i < width; i++) take(index + corner[last] + i, elements.Slice((int)(((row * chunk[last]) + i) * _elementBytes), _elementBytes));
        }
    }

    private static ArrayFault Unusual() => new("the file lays its grid out in a way that is not read here; export the layer of depths as GeoTIFF and use that.");
}
