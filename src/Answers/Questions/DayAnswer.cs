using SecondShore.Answers.Lake;
using SecondShore.Answers.Sheet;
using SecondShore.Answers.Wind;
using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Day;
using SecondShore.Engine.Motion;
using SecondShore.Engine.Season;

namespace SecondShore.Answers.Questions;

/// <summary>In which order, along which passes, with what tied on, and home before dark and before the wind?</summary>
public static class DayAnswer
{
    /// <summary>Local time to be home by when none is wished.</summary>
    public static readonly TimeOnly UsualHomeBy = new(15, 0);

    // A phone aboard has one slow thread, and a plan is one wherever it is made: the middle pair of layers alone, and three days to run
    // up. Pairs differ by a centimetre or two in how far the wind moves them; what the outlook does not know of the depth stays in the plan.
    private static readonly WindFieldOptions Water = new() { Members = 1, SpinUpDays = 3 };

    /// <summary>Plans a day from the lake alone: outlook, wind, spots, rigs, plan.</summary>
    /// <param name="lake">The lake, with a survey.</param>
    /// <param name="wish">What is asked.</param>
    /// <param name="units">Units of the words.</param>
    /// <param name="progress">Share done, 0 to 1.</param>
    /// <param name="knownForms">The bottom's forms where they are known already: they take the longest.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="CouldNotComputeException">No survey, no spot, or no time between launch and home; the message says what would help.</exception>
    public static DayResult Compute(PreparedLake lake, DayWish wish, UnitSystem units, IProgress<double>? progress = null,
        FormMap? knownForms = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(lake);
        ArgumentNullException.ThrowIfNull(wish);
        lake.RequireGrid();
        DayClock clock = DayClock.Of(lake, wish, UsualHomeBy);
        StagedProgress staged = new(progress, 0.35, 0.25, 0.3, 0.1);
        IProgress<double> season = staged.Next();
        Outlook? standing = wish.StandsAt is { } at ? OutlookAnswer.Compute(lake, at, wish.Ensemble, season, cancel) : null;
        Outlook outlook = standing is null ? UpTo(lake, wish, clock, season, cancel) : DayOutlook.Of(standing, clock.Launch) ?? UpTo(lake, wish, clock, season, cancel);
        IProgress<double> reading = staged.Next();
        FormMap forms = knownForms ?? ShoreAnswer.Forms(lake, reading, cancel);
        (IWaterMotion motion, IReadOnlyList<SheetWind> wind, IReadOnlyList<Finding> windAssumed) = Motion(lake, outlook, clock, staged.Next(), cancel);
        ShoreResult shore = Spots(lake, forms, standing, outlook, wish.MaxSpots, cancel: cancel);
        if (shore.Spots.Count == 0)
            throw new CouldNotComputeException(AnswerFindings.NoStopWorth.Of());
        DayResult result = Plan(lake, wish, units, clock, shore, motion, wind, windAssumed, cancel: cancel);
        progress?.Report(1);
        return result;
    }

    /// <summary>The outlook of a day that lies far from the lake's as it stands: run up to the day itself.</summary>
    /// <param name="lake">The lake.</param>
    /// <param name="wish">What is asked.</param>
    /// <param name="clock">The day's hours.</param>
    /// <param name="progress">Share done, 0 to 1.</param>
    /// <param name="cancel">Stops the work.</param>
    public static Outlook UpTo(PreparedLake lake, DayWish wish, DayClock clock, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(lake);
        ArgumentNullException.ThrowIfNull(wish);
        ArgumentNullException.ThrowIfNull(clock);
        return OutlookAnswer.Compute(lake, clock.OutlookAt(lake.Folder, wish.Here), wish.Ensemble, progress, cancel);
    }

    /// <summary>The spots of a day: those of the lake as it stands, under the same letters, where the day lies on its course.</summary>
    /// <param name="lake">The lake.</param>
    /// <param name="forms">The bottom's forms.</param>
    /// <param name="standing">The outlook as it stands; null where the day has one of its own.</param>
    /// <param name="outlook">The outlook of the day.</param>
    /// <param name="maxSpots">Most spots wanted.</param>
    /// <param name="ranked">The spots of the lake as it stands where they are known already.</param>
    /// <param name="cancel">Stops the work.</param>
    public static ShoreResult Spots(PreparedLake lake, FormMap forms, Outlook? standing, Outlook outlook, int maxSpots, ShoreResult? ranked = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(outlook);
        bool onCourse = standing is not null && DayOutlook.Covers(standing, outlook.At);
        ShoreResult shore = onCourse && ranked is not null ? ranked : ShoreAnswer.Compute(lake, forms, onCourse ? standing! : outlook, maxSpots: maxSpots, cancel: cancel);
        return shore with { Outlook = outlook };
    }

    /// <summary>Plans a day on spots already found, in water already set in motion.</summary>
    /// <param name="lake">The lake, with a survey.</param>
    /// <param name="wish">What is asked.</param>
    /// <param name="units">Units of the words.</param>
    /// <param name="clock">The day's hours.</param>
    /// <param name="shore">Spots of the day.</param>
    /// <param name="motion">The water over those hours.</param>
    /// <param name="wind">The wind over them.</param>
    /// <param name="windAssumed">What had to be assumed of it.</param>
    /// <param name="withOthers">Whether to find the plans that differ in kind at once; <see cref="WithOthers"/> does it later.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="CouldNotComputeException">No time between launch and home; the message says what would help.</exception>
    public static DayResult Plan(PreparedLake lake, DayWish wish, UnitSystem units, DayClock clock, ShoreResult shore, IWaterMotion motion,
        IReadOnlyList<SheetWind> wind, IReadOnlyList<Finding> windAssumed, bool withOthers = true, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(lake);
        ArgumentNullException.ThrowIfNull(wish);
        ArgumentNullException.ThrowIfNull(clock);
        ArgumentNullException.ThrowIfNull(shore);
        DayPlanning day = new(lake, wish, units, clock, SpotNames.Named(shore, units), motion, wind);
        return day.Plan(windAssumed, withOthers, cancel);
    }

    /// <summary>The water in motion over the day's hours, with the wind strip; still water where there is no weather, and that is said.</summary>
    /// <param name="lake">The lake, with a survey.</param>
    /// <param name="outlook">Its outlook for about that time.</param>
    /// <param name="clock">The day's hours.</param>
    /// <param name="progress">Share done, 0 to 1.</param>
    /// <param name="cancel">Stops the work.</param>
    public static (IWaterMotion Motion, IReadOnlyList<SheetWind> Wind, IReadOnlyList<Finding> Assumed) Motion(
        PreparedLake lake, Outlook outlook, DayClock clock, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(clock);
        try
        {
            int hours = (int)Math.Ceiling((clock.HomeBy - clock.Launch).TotalHours) + 1;
            WindResult wind = WindAnswer.Compute(lake, outlook, new WindQuestion { At = clock.Launch, Hours = hours, Field = Water }, progress, cancel);
            return (wind.Field, Strip(wind, clock), wind.Assumed);
        }
        catch (CouldNotComputeException e)
        {
            // No weather for that day: the plan still stands on still water, and says so.
            return (StillWater.Instance, [], [AnswerFindings.CalmTaken.Of(e.Finding)]);
        }
    }

    /// <summary>The wind of the day's hours.</summary>
    /// <param name="wind">Water set in motion over them at least.</param>
    /// <param name="clock">The day's hours.</param>
    public static IReadOnlyList<SheetWind> Strip(WindResult wind, DayClock clock)
    {
        ArgumentNullException.ThrowIfNull(wind);
        ArgumentNullException.ThrowIfNull(clock);
        WindHistory history = wind.Field.Wind;
        List<SheetWind> strip = [];
        // Whole hours, as the clock on the wall has them: bars, hours and stops then stand on one axis.
        DateTimeOffset first = clock.Launch.AddTicks(-(clock.Launch.Ticks % TimeSpan.TicksPerHour));
        for (DateTimeOffset hour = first; hour < clock.HomeBy.AddHours(2); hour = hour.AddHours(1))
        {
            if (hour > wind.Field.Hours[^1]) break;
            int step = history.StepAt(hour);
            strip.Add(new SheetWind(hour, history.WindMps(step), history.GustMps(step), history.FromDeg(step)));
        }

        return strip;
    }

    /// <summary>The same day with the plans that differ in kind from its own.</summary>
    /// <param name="day">The day.</param>
    /// <param name="cancel">Stops the work.</param>
    public static DayResult WithOthers(DayResult day, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(day);
        return day.Others is { } find ? day with { Plan = day.Plan with { Alternatives = find(cancel) }, Others = null } : day;
    }

    /// <summary>The same day with one of its alternatives in the plan's place.</summary>
    /// <param name="day">The day.</param>
    /// <param name="kind">Which alternative.</param>
    /// <param name="units">Whose language the words are in; null takes English.</param>
    /// <exception cref="CouldNotComputeException">The day has none of that kind.</exception>
    public static DayResult Take(DayResult day, AlternativeKind kind, UnitSystem? units = null)
    {
        ArgumentNullException.ThrowIfNull(day);
        DayAlternative taken = day.Plan.Alternatives.FirstOrDefault(a => a.Kind == kind)
            ?? throw new CouldNotComputeException(AnswerFindings.NoSuchAlternative.Of());
        DayAlternative left = new(kind, (units ?? UnitSystem.Feet).Speech.Plain("The plan as first made."), day.Plan with { Alternatives = [] });
        DayPlan plan = taken.Plan with { Alternatives = [left, .. day.Plan.Alternatives.Where(a => a.Kind != kind)] };
        return day.By?.Invoke(plan) ?? day with { Plan = plan };
    }
}
