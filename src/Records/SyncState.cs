namespace SecondShore.Records;

/// <summary>
/// How far a device is with a host about one lake. Losing it, or keeping an older one, costs a repetition and nothing else.
/// </summary>
/// <param name="Epoch">Epoch of the host's store that the rest speaks of; empty before the first sync.</param>
/// <param name="Cursor">Number of the last record pulled.</param>
/// <param name="Acknowledged">Ids of records that the host has.</param>
/// <param name="Refused">Ids of records that the host refused, not sent again.</param>
public sealed record SyncState(string Epoch, long Cursor, IReadOnlyList<string> Acknowledged, IReadOnlyList<string> Refused)
{
    /// <summary>Before the first sync.</summary>
    public static SyncState None { get; } = new("", 0, [], []);
}
