namespace SecondShore.Records;

/// <summary>
/// How far a device is with a host about one lake. Losing it, or keeping an older one, costs a repetition and nothing else.
/// </summary>
/// <param name="Epoch">Epoch of the host's store that the cursor speaks of; empty before the first sync.</param>
/// <param name="Cursor">Number of the last record pulled.</param>
public sealed record SyncPlace(string Epoch, long Cursor)
{
    /// <summary>Before the first sync.</summary>
    public static SyncPlace None { get; } = new("", 0);
}
