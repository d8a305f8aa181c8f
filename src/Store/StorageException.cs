namespace SecondShore.Store;

/// <summary>Why the store does not do what was asked.</summary>
public enum StorageFault
{
    /// <summary>The disk, or the room granted, is full.</summary>
    Full,

    /// <summary>The disk may not be written.</summary>
    ReadOnly,

    /// <summary>Too much is waiting already.</summary>
    Busy,

    /// <summary>The file is damaged, or no database of ours.</summary>
    Damaged,

    /// <summary>The database is of a newer program.</summary>
    Newer,

    /// <summary>The database cannot be reached or opened.</summary>
    Unreachable,
}

/// <summary>A fault of the store, in one sentence that says what to do. Nothing of the refused work was kept.</summary>
public sealed class StorageException(StorageFault fault, string message, Exception? inner = null) : Exception(message, inner)
{
    /// <summary>What kind of fault.</summary>
    public StorageFault Fault { get; } = fault;
}
