using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Lake;

/// <summary>The instant a question stands for when the user names none.</summary>
public static class AnswerTime
{
    // A clock or a date may be a day out; what is written further ahead has not been seen yet.
    private static readonly TimeSpan ClockMayBeOut = TimeSpan.FromDays(1);

    /// <summary>The later of the end of the measured weather and of the newest reading, in the lake's zone; now where the folder has no such end.</summary>
    /// <param name="folder">The lake.</param>
    /// <param name="clock">The present.</param>
    /// <param name="now">The present where the question is about now: the answer then stands no earlier.</param>
    /// <remarks>
    /// A reading is news, so the answer stands where it was made, carried there by the forecast rows of the weather or, past them, by
    /// past years. One dated ahead of the present carries it nowhere; that it is not used is said (<see cref="UnusedReadings"/>).
    /// </remarks>
    public static DateTimeOffset Default(LakeFolder folder, TimeProvider clock, DateTimeOffset? now = null)
    {
        ArgumentNullException.ThrowIfNull(folder);
        ArgumentNullException.ThrowIfNull(clock);
        DateTimeOffset present = clock.GetUtcNow(), at = folder.MeasuredUntil ?? present;
        if (now > at) at = now.Value;
        return ToLocal(NewestRead(folder, at, (at > present ? at : present) + ClockMayBeOut), folder);
    }

    /// <summary>The newest reading or cast before an instant, if it is later than another; else that other.</summary>
    /// <param name="folder">The lake.</param>
    /// <param name="from">The least that is given.</param>
    /// <param name="until">Readings after it are not looked at.</param>
    public static DateTimeOffset NewestRead(LakeFolder folder, DateTimeOffset from, DateTimeOffset until)
    {
        ArgumentNullException.ThrowIfNull(folder);
        DateTimeOffset newest = from;
        foreach (DateTimeOffset read in Read(folder))
            if (read > newest && read <= until) newest = read;
        return newest.ToOffset(from.Offset);
    }

    private static IEnumerable<DateTimeOffset> Read(LakeFolder folder) =>
        folder.Readings.Concat(folder.Secchi).Select(r => r.At).Concat(folder.Profiles.Select(p => p.At));

    /// <summary>The day to plan for when none is named: the day after <see cref="Default"/>.</summary>
    public static DateOnly DefaultDay(LakeFolder folder, TimeProvider clock) =>
        DateOnly.FromDateTime(Default(folder, clock).DateTime).AddDays(1);

    /// <summary>An instant on the lake's own clock.</summary>
    public static DateTimeOffset ToLocal(DateTimeOffset at, LakeFolder folder)
    {
        ArgumentNullException.ThrowIfNull(folder);
        return TimeZoneInfo.ConvertTime(at, folder.TimeZone);
    }

    /// <summary>A local clock time on a date; a time skipped by the clock change moves forward by the gap, a doubled one takes the first.</summary>
    public static DateTimeOffset At(DateOnly date, TimeOnly time, LakeFolder folder)
    {
        ArgumentNullException.ThrowIfNull(folder);
        DateTime local = date.ToDateTime(time);
        while (folder.TimeZone.IsInvalidTime(local)) local = local.AddMinutes(15);
        TimeSpan offset = folder.TimeZone.IsAmbiguousTime(local)
            ? folder.TimeZone.GetAmbiguousTimeOffsets(local).Max()
            : folder.TimeZone.GetUtcOffset(local);
        return new DateTimeOffset(local, offset);
    }
}
