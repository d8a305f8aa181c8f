using SecondShore.Records;

namespace SecondShore.Store.Tests;

/// <summary>The real store on a real database, whose power goes and whose room ends.</summary>
internal abstract class SimulatedHost : IAsyncDisposable
{
    public RecordStore Store { get; private set; } = null!;

    /// <summary>Ids that a device was told are safe.</summary>
    public HashSet<string> Acknowledged { get; protected set; } = new(StringComparer.Ordinal);

    /// <summary>Requests that will come once more.</summary>
    public List<IReadOnlyList<LakeRecord>> Late { get; } = [];

    /// <summary>The host's clock, which may be set wrong and put right again.</summary>
    public JumpingClock Clock { get; } = new();

    /// <summary>The disk is full but for so many pages; null frees it.</summary>
    public abstract Task FillDiskAsync(int? pagesLeft);

    /// <summary>The power goes: what the next life finds is what lay on the disk at this moment.</summary>
    public abstract Task CutPowerAsync();

    public abstract ValueTask DisposeAsync();

    /// <summary>The first life, with the one lake of the tests.</summary>
    protected async Task BeginAsync(IDatabase database)
    {
        await OpenAsync(database);
        await Store.AddLakeAsync("lake", "Lake", default);
    }

    protected async Task OpenAsync(IDatabase database)
    {
        Store = new RecordStore(database, Clock, StoreQuota.Default);
        await Store.OpenAsync(default);
    }
}

/// <summary>A clock that is set wrong.</summary>
internal sealed class JumpingClock : TimeProvider
{
    /// <summary>How far off it is.</summary>
    public TimeSpan Off { get; set; }

    public override DateTimeOffset GetUtcNow() => TimeProvider.System.GetUtcNow() + Off;
}
