using SecondShore.Engine.Core;

namespace SecondShore.Engine.Learn;

/// <summary>
/// The clock that counts time with the jig in the water. It stops for retying and running, and a change of rig or spot
/// begins a new stretch. Immutable: each press gives the next clock and the entry, if one is done.
/// </summary>
/// <param name="Running">The stretch under way: an entry without an end; null when the clock stands.</param>
public sealed record EffortClock(LogEntry? Running)
{
    /// <summary>A clock that stands.</summary>
    public static readonly EffortClock Standing = new((LogEntry?)null);

    /// <summary>Whether time counts.</summary>
    public bool IsRunning => Running is not null;

    /// <summary>Starts a stretch; one under way ends first.</summary>
    /// <param name="what">The stretch as an effort entry with its id, start, place and rig; its end is ignored.</param>
    /// <exception cref="ArgumentException">The entry is not an effort.</exception>
    public (EffortClock Clock, LogEntry? Done) Start(LogEntry what)
    {
        Require.NotNull(what);
        if (what.Kind != LogKind.Effort) throw new ArgumentException($"A stretch of effort is expected, not {what.Kind}.", nameof(what));
        LogEntry? done = Stop(what.At).Done;
        return (new EffortClock(what with { Until = null }), done);
    }

    /// <summary>Stops the clock.</summary>
    /// <param name="at">When; before the start, nothing was fished and nothing is logged.</param>
    public (EffortClock Clock, LogEntry? Done) Stop(DateTimeOffset at) =>
        Running is null || at <= Running.At ? (Standing, null) : (Standing, Running with { Until = at });

    /// <summary>Goes on with another rig or at another pass: ends the stretch and starts the next at once.</summary>
    /// <param name="nextId">Id of the next stretch.</param>
    /// <param name="at">When.</param>
    /// <param name="rig">What is tied on now; null keeps the rig.</param>
    /// <param name="pass">The pass now; null keeps it.</param>
    public (EffortClock Clock, LogEntry? Done) Change(string nextId, DateTimeOffset at, RigUsed? rig = null, int? pass = null)
    {
        Require.NotNull(nextId);
        if (Running is null) return (this, null);
        LogEntry next = Running with { Id = nextId, At = at, Rig = rig ?? Running.Rig, Pass = pass ?? Running.Pass };
        return Start(next);
    }

    /// <summary>Time counted in the stretch under way, S (seconds).</summary>
    public double RunningS(DateTimeOffset now) => Running is null ? 0 : Math.Max(0, (now - Running.At).TotalSeconds);
}
