using System.Globalization;
using SecondShore.Records;

namespace SecondShore.Store.Tests;

/// <summary>Cut off: the device stopped, or the signal went.</summary>
internal sealed class CutOffException : Exception;

/// <summary>A device with a disk, a wrong clock, and a chance to stop between any two of its steps.</summary>
internal sealed class SimulatedDevice(string name, TimeSpan clockError) : ILocalRecords
{
    /// <summary>How far its clock is off.</summary>
    public TimeSpan ClockError { get; set; } = clockError;

    /// <summary>A device of a newer program: half of what it makes is of a kind, or carries values, that this program does not know.</summary>
    public bool IsNewer { get; init; }

    private readonly Dictionary<string, LakeRecord> _disk = new(StringComparer.Ordinal);
    // How far it is, and what is settled, as of the last few times that was written.
    private readonly List<(SyncPlace Place, HashSet<string> Settled)> _states = [(SyncPlace.None, [])];
    private int _made;

    public string Name => name;

    public IReadOnlyDictionary<string, LakeRecord> Disk => _disk;

    /// <summary>Whether the next step on this device is its last before it stops; drawn by the test.</summary>
    public Func<bool> Stops { get; set; } = () => false;

    public LakeRecord Make(DateTimeOffset now, Random chance)
    {
        IReadOnlyList<LakeRecord> standing = RecordUnion.Standing(_disk.Values);
        int what = chance.Next(10);
        string? old = standing.Count > 0 && what < 4 ? standing[chance.Next(standing.Count)].Id : null;
        bool removed = old is not null && what < 2;
        string body = removed ? "{}" : string.Create(CultureInfo.InvariantCulture, $$"""{"mark":"{{name}}-{{_made++}}","value":{{chance.Next(100)}}}""");
        if (IsNewer && !removed && chance.Next(2) == 0) body = body[..^1] + ",\"tide\":{\"of\":[1,2]},\"latDeg\":91}";
        LakeRecord record = LakeRecord.Make(IsNewer && chance.Next(2) == 0 ? "tomorrow" : "haze", now + ClockError, old, removed, body);
        _disk[record.Id] = record;
        return record;
    }

    /// <summary>The device starts with a state as it was earlier: the newest was not yet on its disk.</summary>
    public void ForgetStates(int count) => _states.RemoveRange(Math.Max(1, _states.Count - count), Math.Min(count, _states.Count - 1));

    public Task<SyncPlace> PlaceAsync(CancellationToken cancel) => Step(() => _states[^1].Place);

    public Task<IReadOnlyList<LakeRecord>> WaitingAsync(CancellationToken cancel) => Step<IReadOnlyList<LakeRecord>>(() =>
        [.. _disk.Values.Where(r => !_states[^1].Settled.Contains(r.Id)).Take(RecordRules.MaxRecordsPerMessage)]);

    public Task<int> AddAsync(IReadOnlyList<LakeRecord> records, CancellationToken cancel) => Step(() => records.Count(r => _disk.TryAdd(r.Id, r)));

    public Task SettleAsync(SyncPlace place, IReadOnlyList<string> acknowledged, IReadOnlyList<string> refused, CancellationToken cancel) => Step(() =>
    {
        HashSet<string> settled = place.Epoch == _states[^1].Place.Epoch ? new(_states[^1].Settled, StringComparer.Ordinal) : new(StringComparer.Ordinal);
        settled.UnionWith(acknowledged);
        settled.UnionWith(refused);
        _states.Add((place, settled));
        if (_states.Count > 4) _states.RemoveAt(0);
        return 0;
    });

    private Task<T> Step<T>(Func<T> what)
    {
        if (Stops()) throw new CutOffException();
        T done = what();
        if (Stops()) throw new CutOffException();
        return Task.FromResult(done);
    }
}
