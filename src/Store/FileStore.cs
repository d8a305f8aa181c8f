using System.Runtime.CompilerServices;
using System.Security.Cryptography;

namespace SecondShore.Store;

/// <summary>How much of a file's bytes is kept.</summary>
/// <param name="Size">Whole length in bytes.</param>
/// <param name="Stored">Bytes kept so far, from the first.</param>
/// <param name="Complete">Whether all are kept and their hash was checked; 1 or 0.</param>
public sealed record StoredFile(long Size, long Stored, long Complete);

/// <summary>
/// Bytes of lakes' files, named by their SHA-256, in pieces: a file of any size passes through without being held in memory,
/// and an upload that broke off goes on where it stopped. A lake's bytes are its own: nothing tells whether another holds the same.
/// </summary>
public sealed class FileStore(IDatabase database, StoreQuota quota)
{
    /// <summary>Longest piece, bytes.</summary>
    public static readonly int PieceBytes = 1 << 20;

    /// <summary>How much of a file is kept; null for nothing.</summary>
    public Task<StoredFile?> StatusAsync(string lake, string sha256, CancellationToken cancel) => database.ReadAsync(work =>
        work.FirstAsync<StoredFile>("select size as Size, stored as Stored, complete as Complete from blobs where lake = @lake and sha256 = @sha256", new { lake, sha256 }), cancel);

    /// <summary>Appends a piece. On return it is on disk.</summary>
    /// <returns>Bytes kept now; when that differs from <paramref name="from"/> plus the piece, the piece did not fit and was not kept.</returns>
    /// <exception cref="StorageException">No room, or no such lake.</exception>
    public Task<long> AppendAsync(string lake, string sha256, long size, long from, byte[] piece, CancellationToken cancel) =>
        AppendAsync(lake, sha256, size, from, piece, Writer.Host, cancel);

    /// <summary>The same for a device that is held to the room granted to it.</summary>
    /// <exception cref="StorageException">No room, or no such lake.</exception>
    public Task<long> AppendAsync(string lake, string sha256, long size, long from, byte[] piece, Writer writer, CancellationToken cancel) => database.WriteAsync(async work =>
    {
        long? used = await work.FirstAsync<long?>("update lakes set bytes = bytes where id = @lake returning bytes", new { lake }).ConfigureAwait(false);
        if (used is null) throw new StorageException(StorageFault.Unreachable, "This host has no such lake. Add it first.");
        if (used + piece.Length > quota.BytesPerLake)
            throw RoomRules.Full("This lake has used the room that the host grants it: nothing of this was kept. Raise the limit in the host's settings.");
        await work.DoAsync("insert into blobs (lake, sha256, size, stored, complete) values (@lake, @sha256, @size, 0, 0) on conflict (lake, sha256) do nothing", new { lake, sha256, size }).ConfigureAwait(false);
        StoredFile now = (await work.FirstAsync<StoredFile>("select size as Size, stored as Stored, complete as Complete from blobs where lake = @lake and sha256 = @sha256", new { lake, sha256 }).ConfigureAwait(false))!;
        if (now.Stored != from || now.Size != size || from + piece.Length > size || piece.Length == 0) return now.Stored;
        await work.DoAsync("insert into blob_chunks (lake, sha256, n, bytes) values (@lake, @sha256, @from, @piece)", new { lake, sha256, from, piece }).ConfigureAwait(false);
        await work.DoAsync("update blobs set stored = stored + @length where lake = @lake and sha256 = @sha256", new { length = (long)piece.Length, lake, sha256 }).ConfigureAwait(false);
        await work.DoAsync("update lakes set bytes = bytes + @length where id = @lake", new { length = (long)piece.Length, lake }).ConfigureAwait(false);
        await RoomRules.CountAsync(work, database.Dialect, quota, writer, piece.Length).ConfigureAwait(false);
        return from + piece.Length;
    }, cancel, piece.Length);

    /// <summary>Checks the hash of a file whose last piece came; a file that is not what it was said to be is dropped.</summary>
    /// <returns>Whether the file is whole and right.</returns>
    public async Task<bool> FinishAsync(string lake, string sha256, CancellationToken cancel)
    {
        if (await StatusAsync(lake, sha256, cancel).ConfigureAwait(false) is not { } status || status.Stored != status.Size) return false;
        if (status.Complete != 0) return true;
        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        await foreach (byte[] piece in PiecesAsync(lake, sha256, 0, cancel).ConfigureAwait(false)) hash.AppendData(piece);
        bool right = string.Equals(Convert.ToHexStringLower(hash.GetHashAndReset()), sha256, StringComparison.Ordinal);
        await database.WriteAsync(async work =>
        {
            object key = new { lake, sha256, size = status.Size };
            if (right) return await work.DoAsync("update blobs set complete = 1 where lake = @lake and sha256 = @sha256", key).ConfigureAwait(false);
            await work.DoAsync("delete from blob_chunks where lake = @lake and sha256 = @sha256", key).ConfigureAwait(false);
            await work.DoAsync("update lakes set bytes = bytes - @size where id = @lake", key).ConfigureAwait(false);
            return await work.DoAsync("delete from blobs where lake = @lake and sha256 = @sha256", key).ConfigureAwait(false);
        }, cancel).ConfigureAwait(false);
        return right;
    }

    /// <summary>A file's bytes from an offset on, piece by piece.</summary>
    public async IAsyncEnumerable<byte[]> PiecesAsync(string lake, string sha256, long from, [EnumeratorCancellation] CancellationToken cancel)
    {
        while (true)
        {
            long at = from;
            Piece? piece = await database.ReadAsync(work => work.FirstAsync<Piece>(
                "select n as Start, bytes as Bytes from blob_chunks where lake = @lake and sha256 = @sha256 and n <= @at order by n desc limit 1", new { lake, sha256, at }), cancel).ConfigureAwait(false);
            if (piece is null || piece.Start + piece.Bytes.Length <= from) yield break;
            yield return from == piece.Start ? piece.Bytes : piece.Bytes[(int)(from - piece.Start)..];
            from = piece.Start + piece.Bytes.Length;
        }
    }

    private sealed record Piece(long Start, byte[] Bytes);
}
