using SecondShore.Desk.Entries;

namespace SecondShore.App.Trip;

/// <summary>
/// Time on one place with one rig, under way: without it a bite teaches no rate. It opens on arriving or with the first entry, and
/// closes with the next stop, with nothing here, on the way home, or with another rig. Immutable.
/// </summary>
/// <param name="From">When it began.</param>
/// <param name="LastSign">When last something was logged or the boat was seen there.</param>
/// <param name="Where">Place, depth, form and rig, as an entry without minutes.</param>
public sealed record Stretch(DateTimeOffset From, DateTimeOffset LastSign, Entry Where)
{
    /// <summary>Without a sign for so long, the stretch ended unsaid: a phone in a pocket fishes nothing.</summary>
    public static TimeSpan Forgotten { get; } = TimeSpan.FromHours(3);

    // A stretch that ended unsaid is taken to have gone on a little after its last sign.
    private static readonly TimeSpan AfterLastSign = TimeSpan.FromMinutes(10);
    private static readonly double LeastMin = 0.5;

    /// <summary>Whether it must have ended unsaid.</summary>
    public bool IsForgotten(DateTimeOffset now) => now - LastSign > Forgotten;

    /// <summary>The stretch with a sign of life.</summary>
    public Stretch Signed(DateTimeOffset at) => at > LastSign ? this with { LastSign = at } : this;

    /// <summary>When it ends if it is closed now.</summary>
    public DateTimeOffset EndAt(DateTimeOffset now) => IsForgotten(now) ? LastSign + AfterLastSign : now;

    /// <summary>The record that closes it; null for one too short to have fished in.</summary>
    /// <param name="lake">The lake's id.</param>
    /// <param name="now">When it is closed.</param>
    /// <param name="nothing">Whether the user says that nothing is here.</param>
    /// <param name="standing">Records that stand: a bite among them in this time makes it effort, whatever was said at its end.</param>
    public RecordRow? Close(string lake, DateTimeOffset now, bool nothing, IEnumerable<RecordRow> standing)
    {
        DateTimeOffset until = EndAt(now);
        double minutes = Math.Round((until - From).TotalMinutes, 1);
        if (minutes < LeastMin) return null;
        bool bitten = standing.Any(r => (r.Kind == RecordKinds.Bite || r.Kind == RecordKinds.Fish) && RecordSet.At(r) is var at && at >= From && at <= until);
        return (Where with { Minutes = minutes }).ToRow(lake, nothing && !bitten ? RecordKinds.Nothing : RecordKinds.Effort, From);
    }
}
