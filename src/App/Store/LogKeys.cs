using SecondShore.Desk.Entries;

namespace SecondShore.App.Store;

/// <summary>What is logged with one tap.</summary>
internal static class LogKeys
{
    /// <summary>The four keys.</summary>
    public static IReadOnlyList<string> Kinds { get; } = [RecordKinds.Bite, RecordKinds.Fish, RecordKinds.Snag, RecordKinds.Nothing];
}
