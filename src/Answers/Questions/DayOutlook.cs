using SecondShore.Engine.Season;

namespace SecondShore.Answers.Questions;

/// <summary>
/// The outlook that a day is planned by: the lake's own as it stands, on that day of its course. So a plan speaks of the same water as the
/// outlook and the second shore beside it, wherever it is asked for.
/// </summary>
public static class DayOutlook
{
    /// <summary>Days within this time of the outlook's instant are days of its own course; one further away is run up to by itself.</summary>
    public static readonly TimeSpan SameCourse = TimeSpan.FromHours(40);

    /// <summary>Whether a moment lies on an outlook's own course.</summary>
    /// <param name="standing">The outlook as it stands.</param>
    /// <param name="at">The moment.</param>
    public static bool Covers(Outlook standing, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(standing);
        return (at - standing.At).Duration() <= SameCourse && standing.Lake.Days.Any(d => d.Date == DateOnly.FromDateTime(at.DateTime));
    }

    /// <summary>The outlook to plan a day by.</summary>
    /// <param name="standing">The outlook as it stands.</param>
    /// <param name="launch">When the day begins.</param>
    /// <returns>That day of its course; null where the day must be run up to by itself.</returns>
    public static Outlook? Of(Outlook standing, DateTimeOffset launch) =>
        Covers(standing, launch) ? OnDay(standing, DateOnly.FromDateTime(launch.DateTime)) with { At = launch } : null;

    /// <summary>An outlook as of another day of its own course, at the same hour.</summary>
    /// <param name="outlook">The outlook.</param>
    /// <param name="date">The day; one that the course does not hold leaves the layers as they are.</param>
    public static Outlook OnDay(Outlook outlook, DateOnly date)
    {
        ArgumentNullException.ThrowIfNull(outlook);
        int shift = date.DayNumber - DateOnly.FromDateTime(outlook.At.DateTime).DayNumber;
        if (shift == 0) return outlook;
        return outlook with { At = outlook.At.AddDays(shift), Lake = On(outlook.Lake, date), Arms = [.. outlook.Arms.Select(a => On(a, date))] };
    }

    private static ArmOutlook On(ArmOutlook arm, DateOnly date)
    {
        OutlookDay? day = arm.Days.FirstOrDefault(d => d.Date == date);
        if (day is null) return arm;
        LayerState state = day.ChanceStratified >= 0.5 ? LayerState.Stratified : arm.State == LayerState.Stratified ? LayerState.Turning : arm.State;
        return arm with { ThermoclineM = day.ThermoclineM, ChanceStratified = day.ChanceStratified, State = state };
    }
}
