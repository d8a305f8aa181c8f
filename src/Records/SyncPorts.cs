namespace SecondShore.Records;

/// <summary>The device's side of a sync: its records of one lake, and how far it is with the host about them.</summary>
public interface ILocalRecords
{
    /// <summary>How far the device is.</summary>
    Task<SyncPlace> PlaceAsync(CancellationToken cancel);

    /// <summary>Records that are not settled with the host, <see cref="RecordRules.MaxRecordsPerMessage"/> at most; none when all are.</summary>
    Task<IReadOnlyList<LakeRecord>> WaitingAsync(CancellationToken cancel);

    /// <summary>Adds records; one that is there is left as it is. Returns once they are on disk, and how many were new.</summary>
    Task<int> AddAsync(IReadOnlyList<LakeRecord> records, CancellationToken cancel);

    /// <summary>
    /// Keeps how far the device is, and which records are settled: the host has them, or refused them. A place of another epoch
    /// than the one kept first unsettles everything, since that host's store was made anew.
    /// </summary>
    /// <param name="place">How far the device is now.</param>
    /// <param name="acknowledged">Ids of records that the host has.</param>
    /// <param name="refused">Ids of records that it refused and that are not sent again.</param>
    /// <param name="cancel">Stops before anything is kept.</param>
    Task SettleAsync(SyncPlace place, IReadOnlyList<string> acknowledged, IReadOnlyList<string> refused, CancellationToken cancel);
}

/// <summary>The host's side of a sync, for one lake.</summary>
public interface IHostRecords
{
    /// <summary>Sends records. An answer means that they are on the host's disk, save those it refuses.</summary>
    Task<PushAnswer> PushAsync(PushRequest request, CancellationToken cancel);

    /// <summary>Asks for records after a cursor of an epoch; a host of another epoch starts from its first record.</summary>
    Task<PullAnswer> PullAsync(string epoch, long cursor, CancellationToken cancel);
}
