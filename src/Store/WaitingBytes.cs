namespace SecondShore.Store;

/// <summary>Bounds the memory of writes that wait: beyond it a caller is told to come back, instead of all being slowed down.</summary>
internal sealed class WaitingBytes(long most)
{
    private long _waiting;

    /// <summary>Takes room for a write until it is disposed.</summary>
    /// <exception cref="StorageException">Too much is waiting.</exception>
    public Room Take(long bytes)
    {
        if (Interlocked.Add(ref _waiting, bytes) <= most || bytes == 0) return new Room(this, bytes);
        Interlocked.Add(ref _waiting, -bytes);
        throw new StorageException(StorageFault.Busy, "Too much is waiting to be written. Try again in a moment.");
    }

    internal readonly struct Room(WaitingBytes of, long bytes) : IDisposable
    {
        public void Dispose() => Interlocked.Add(ref of._waiting, -bytes);
    }
}
