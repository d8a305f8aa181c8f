using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Lake;

/// <summary>The instant a question stands for when the user names none.</summary>
public static class AnswerTime
{
    /// <summary>The end of the measured weather where the folder says where that is, else now; in the lake's zone.</summary>
    /// <param name="folder">The lake.</param>
    /// <param name="clock">The present.</param>
    public static DateTimeOffset Default(LakeFolder folder, TimeProvider clock)
    {
        ArgumentNullException.ThrowIfNull(folder);
        ArgumentNullException.ThrowIfNull(clock);
        return ToLocal(folder.MeasuredUntil ?? clock.GetUtcNow(), folder);
    }

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
