using SecondShore.Answers.Lake;
using SecondShore.Engine.Water;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Questions;

/// <summary>The hours of a day on the water, on the lake's own clock.</summary>
/// <param name="Launch">First moment the boat may leave.</param>
/// <param name="HomeBy">Time to be back.</param>
/// <param name="LightAt">First light (civil); null on a day without one.</param>
/// <param name="DarkAt">Dark (end of civil twilight); null on a day without one.</param>
public sealed record DayClock(DateTimeOffset Launch, DateTimeOffset HomeBy, DateTimeOffset? LightAt, DateTimeOffset? DarkAt)
{
    /// <summary>The instant of the outlook that a day is planned by: launch, or now on the water, or the newest reading of that day before it is over.</summary>
    /// <param name="folder">The lake.</param>
    /// <param name="here">Where the boat is, when the day is planned anew on the water.</param>
    public DateTimeOffset OutlookAt(LakeFolder folder, BoatNow? here)
    {
        DateTimeOffset from = here is not null && here.At > Launch ? here.At.ToOffset(Launch.Offset) : Launch;
        return AnswerTime.NewestRead(folder, from, here?.At ?? HomeBy);
    }

    /// <summary>The hours a wish leaves: from sunrise unless another launch is asked, home by dark at the latest.</summary>
    /// <exception cref="CouldNotComputeException">Home comes before launch.</exception>
    public static DayClock Of(PreparedLake lake, DayWish wish, TimeOnly usualHomeBy)
    {
        ArgumentNullException.ThrowIfNull(lake);
        ArgumentNullException.ThrowIfNull(wish);
        DayLight sun = DayLight.On(wish.Date, lake.Site.Position), twilight = DayLight.On(wish.Date, lake.Site.Position, DayLight.CivilTwilightZenithDeg);
        DateTimeOffset? light = Local(twilight.Rise), dark = Local(twilight.Set);
        DateTimeOffset launch = wish.Launch is { } asked
            ? AnswerTime.At(wish.Date, asked, lake.Folder)
            : UpToFiveMinutes(Local(sun.Rise) ?? AnswerTime.At(wish.Date, new TimeOnly(7, 0), lake.Folder));
        DateTimeOffset home = AnswerTime.At(wish.Date, wish.HomeBy ?? usualHomeBy, lake.Folder);
        if (dark is { } limit && home > limit) home = limit;
        if (home <= launch.AddMinutes(30))
            throw new CouldNotComputeException(AnswerFindings.NoTimeToFish.Of(launch, home));
        return new DayClock(launch, home, light, dark);

        DateTimeOffset? Local(DateTimeOffset? utc) => utc is { } at ? AnswerTime.ToLocal(at, lake.Folder) : null;
    }

    private static DateTimeOffset UpToFiveMinutes(DateTimeOffset at)
    {
        long step = TimeSpan.FromMinutes(5).Ticks;
        return new DateTimeOffset((at.Ticks + step - 1) / step * step, at.Offset);
    }
}
