using System.Collections.Concurrent;

namespace SecondShore.Host.Api;

/// <summary>Hands bytes from a reader that cannot wait to a writer that must, in pieces of one size and only a few ahead.</summary>
internal sealed class PieceQueue(int pieceBytes, CancellationToken stop) : IDisposable
{
    private readonly BlockingCollection<byte[]> _pieces = new(boundedCapacity: 2);
    private readonly byte[] _open = new byte[pieceBytes];
    private int _filled;

    /// <summary>Adds bytes; waits when the writer is behind.</summary>
    public void Add(ReadOnlySpan<byte> bytes)
    {
        while (!bytes.IsEmpty)
        {
            int take = Math.Min(bytes.Length, _open.Length - _filled);
            bytes[..take].CopyTo(_open.AsSpan(_filled));
            _filled += take;
            bytes = bytes[take..];
            if (_filled == _open.Length) Flush();
        }
    }

    /// <summary>No more will come.</summary>
    public void Complete()
    {
        try { if (_filled > 0) Flush(); }
        finally { _pieces.CompleteAdding(); }
    }

    /// <summary>The pieces as they come.</summary>
    public async IAsyncEnumerable<byte[]> AllAsync()
    {
        while (true)
        {
            byte[]? piece = await Task.Run(() => _pieces.TryTake(out byte[]? next, Timeout.Infinite, stop) ? next : null, stop).ConfigureAwait(false);
            if (piece is null) yield break;
            yield return piece;
        }
    }

    public void Dispose() => _pieces.Dispose();

    private void Flush()
    {
        _pieces.Add(_open.AsSpan(0, _filled).ToArray(), stop);
        _filled = 0;
    }
}
