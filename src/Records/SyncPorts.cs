namespace SecondShore.Records;

/// <summary>The device's side of a sync: its records of one lake, and how far it is.</summary>
public interface ILocalRecords
{
    /// <summary>All records of the lake on this device.</summary>
    Task<IReadOnlyList<LakeRecord>> AllAsync(CancellationToken cancel);

    /// <summary>Adds records; one that is there is left as it is. Returns once they are on disk, and how many were new.</summary>
    Task<int> AddAsync(IReadOnlyList<LakeRecord> records, CancellationToken cancel);

    /// <summary>How far the device is.</summary>
    Task<SyncState> StateAsync(CancellationToken cancel);

    /// <summary>Keeps how far the device is.</summary>
    Task SaveStateAsync(SyncState state, CancellationToken cancel);
}

/// <summary>The host's side of a sync, for one lake.</summary>
public interface IHostRecords
{
    /// <summary>Sends records. An answer means that they are on the host's disk, save those it refuses.</summary>
    Task<PushAnswer> PushAsync(PushRequest request, CancellationToken cancel);

    /// <summary>Asks for records after a cursor of an epoch; a host of another epoch starts from its first record.</summary>
    Task<PullAnswer> PullAsync(string epoch, long cursor, CancellationToken cancel);
}
