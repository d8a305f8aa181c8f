namespace SecondShore.App.Sync;

/// <summary>How this device stands with the host.</summary>
public enum SyncMood
{
    /// <summary>No host is chosen.</summary>
    Off,

    /// <summary>It is being talked to.</summary>
    Talking,

    /// <summary>Everything went through.</summary>
    InStep,

    /// <summary>It does not answer; tried again later.</summary>
    Away,

    /// <summary>It does not know this device any more.</summary>
    NotPaired,

    /// <summary>It refuses; <see cref="SyncState.Said"/> is its sentence.</summary>
    Refused,
}

/// <summary>How this device stands with the host, for the page to say.</summary>
/// <param name="Mood">In one word.</param>
/// <param name="Waiting">Entries that the host does not have yet.</param>
/// <param name="At">When everything went through last; null before that.</param>
/// <param name="Said">The host's own sentence; empty where it gave none.</param>
/// <param name="Share">Share done of the files under way, 0 to 1; null where none are.</param>
public sealed record SyncState(SyncMood Mood, int Waiting = 0, DateTimeOffset? At = null, string Said = "", double? Share = null);
