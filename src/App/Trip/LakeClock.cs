using SecondShore.Desk.Views;

namespace SecondShore.App.Trip;

/// <summary>
/// What time it is at the lake. A lake that exists has the time of this device. The invented one lives in the season of its files:
/// looked at in another, its present is the day planned, or its files' own, at this device's time of day.
/// </summary>
public static class LakeClock
{
    private static readonly TimeSpan ForecastHolds = TimeSpan.FromDays(1);

    /// <summary>The time that a reading typed at a desk is taken to be of until the user says another: now, else where the files of an old season end.</summary>
    /// <param name="now">The present at the lake.</param>
    /// <param name="view">The lake; null before one is open.</param>
    public static DateTimeOffset OfReading(DateTimeOffset now, LakeView? view) =>
        view is not null && now > Later(view.At, view.ForecastUntil) + ForecastHolds ? view.At : now;

    private static DateTimeOffset Later(DateTimeOffset a, DateTimeOffset? b) => b is { } other && other > a ? other : a;

    /// <summary>The present at a lake, on its own clock.</summary>
    /// <param name="device">The present by this device.</param>
    /// <param name="view">The lake; null before one is open.</param>
    /// <param name="planned">The day planned; null without a plan.</param>
    /// <param name="zone">The lake's time zone.</param>
    public static DateTimeOffset Now(DateTimeOffset device, LakeView? view, DateOnly? planned, TimeZoneInfo zone)
    {
        DateTimeOffset local = TimeZoneInfo.ConvertTime(device, zone);
        if (view is not { IsInvented: true, WeatherUntil: { } measured }) return local;
        DateOnly today = DateOnly.FromDateTime(local.DateTime), first = DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(measured, zone).DateTime).AddDays(-1);
        DateOnly last = DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(view.ForecastUntil ?? measured, zone).DateTime);
        if (today >= first && today <= last) return local;
        DateOnly day = planned ?? first.AddDays(1);
        DateTime there = day.ToDateTime(TimeOnly.FromDateTime(local.DateTime));
        while (zone.IsInvalidTime(there)) there = there.AddMinutes(15);
        return new DateTimeOffset(there, zone.GetUtcOffset(there));
    }
}
