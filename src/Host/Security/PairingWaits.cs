using System.Net;

namespace SecondShore.Host.Security;

/// <summary>
/// How long an address waits before its next try to pair: a few wrong ones are free, then the wait doubles. Counts by address, so that a
/// stranger costs nobody else a try; holds only so many addresses, the longest quiet ones going first.
/// </summary>
internal sealed class PairingWaits(TimeProvider clock)
{
    private static readonly int FreeTries = 3;
    private static readonly int MostAddresses = 10_000;
    private static readonly TimeSpan LongestWait = TimeSpan.FromMinutes(10), Forgotten = TimeSpan.FromHours(1);

    private readonly Lock _lock = new();
    private readonly Dictionary<string, (int Wrong, DateTimeOffset Last)> _tries = new(StringComparer.Ordinal);

    /// <summary>How long the address still waits; zero for not at all.</summary>
    public TimeSpan Of(IPAddress? address)
    {
        lock (_lock)
        {
            if (!_tries.TryGetValue(CallerAddress.KeyOf(address), out (int Wrong, DateTimeOffset Last) tries) || tries.Wrong < FreeTries) return TimeSpan.Zero;
            double seconds = Math.Min(LongestWait.TotalSeconds, Math.Pow(2, Math.Min(20, tries.Wrong - FreeTries + 1)));
            TimeSpan left = tries.Last + TimeSpan.FromSeconds(seconds) - clock.GetUtcNow();
            return left > TimeSpan.Zero ? left : TimeSpan.Zero;
        }
    }

    /// <summary>
    /// A wrong try. How many that makes, where the list of what happened is to tell of it: at the first, the second, the fourth and so on,
    /// so that nobody can flood it; else null.
    /// </summary>
    public int? Wrong(IPAddress? address)
    {
        string key = CallerAddress.KeyOf(address);
        DateTimeOffset now = clock.GetUtcNow();
        lock (_lock)
        {
            if (_tries.Count >= MostAddresses && !_tries.ContainsKey(key)) MakeRoom(now);
            int wrong = _tries.TryGetValue(key, out (int Wrong, DateTimeOffset Last) tries) && now - tries.Last < Forgotten ? tries.Wrong + 1 : 1;
            _tries[key] = (wrong, now);
            return int.IsPow2(wrong) ? wrong : null;
        }
    }

    /// <summary>The address paired.</summary>
    public void Right(IPAddress? address)
    {
        lock (_lock) _tries.Remove(CallerAddress.KeyOf(address));
    }

    private void MakeRoom(DateTimeOffset now)
    {
        foreach (string old in _tries.Where(t => now - t.Value.Last >= Forgotten).Select(t => t.Key).ToArray()) _tries.Remove(old);
        if (_tries.Count < MostAddresses) return;
        foreach (string old in _tries.OrderBy(t => t.Value.Last).Take(MostAddresses / 10).Select(t => t.Key).ToArray()) _tries.Remove(old);
    }
}
