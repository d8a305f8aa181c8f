using SecondShore.Answers;
using SecondShore.Answers.Files;
using SecondShore.Answers.Lake;
using SecondShore.Answers.Questions;
using SecondShore.Answers.Sheet;
using SecondShore.App.Compute.Views;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Day;
using SecondShore.Engine.Motion;
using SecondShore.Engine.Season;
using SecondShore.Formats.Files;

namespace SecondShore.App.Compute;

/// <summary>A day planned on the spots, and the files that carry it out of the app.</summary>
internal sealed partial class LakeDesk
{
    private static readonly double UsualReserveMin = new DayWish { Date = default }.Reserve.TotalMinutes;
    private DayResult? _day;
    private Moved? _moved;

    private DayView Day(AskAbout about)
    {
        DayAsk ask = (about.Day ?? new DayAsk()).Bounded();
        UnitSystem units = about.Units;
        DayResult? kept = _day;
        if (ask.Take is { } kind && kept is not null && Enum.TryParse(kind, out AlternativeKind taken)) _day = DayAnswer.Take(kept, taken, units);
        else if (ask.Others && kept is not null) _day = Others(kept);
        else if (!ask.Again || kept is null) _day = ask.IsRow ? OfRow(ask, units) : Plan(Wish(ask, Opened()), units, 0, 1);
        DayResult day = _day!;
        DayAsk asked = ask with { Take = null, Again = false, Others = false, Date = day.Wish.Date.AddDays(-ask.Which), Ramp = day.RampName };
        return DayViews.Of(day, asked, units) with { Row = Row(asked) };
    }

    private DayResult Others(DayResult day)
    {
        tray.Progress(0, Steps.Others);
        return DayAnswer.WithOthers(day);
    }

    /// <summary>The sheet and the files of the day planned last.</summary>
    private string Papers(AskAbout about)
    {
        DayResult day = _day ?? throw new CouldNotComputeException(DeskFindings.NoDay.Of());
        tray.Progress(0, Steps.Papers);
        ILakeFiles files = DayFiles.Of(day, about.Units, TimeProvider.System.GetUtcNow());
        Hand(files);
        return "{}";
    }

    // Another tab of the device has planned another day since.
    private string ForgetDay()
    {
        _day = null;
        return "{}";
    }

    // From and to are the shares of the work that it is.
    private DayResult Plan(DayWish wish, UnitSystem units, double from, double to)
    {
        PreparedLake lake = Opened();
        lake.RequireGrid();
        DayClock clock = DayClock.Of(lake, wish, DayAnswer.UsualHomeBy);
        // What the pages know already is not worked out again: the day is the one that the command line plans of the same lake.
        Outlook outlook = (_outlook is { } standing ? DayOutlook.Of(standing, clock.Launch) : null) ?? DayAnswer.UpTo(lake, wish, clock, Share(Steps.Season, At(0), At(0.3)));
        _forms ??= ShoreAnswer.Forms(lake, Share(Steps.Forms, At(0.3), At(0.5)));
        Moved moved = WaterFor(lake, outlook, clock, Share(Steps.Water, At(0.5), At(0.8)));
        tray.Progress(At(0.8), Steps.Places);
        ShoreResult shore = DayAnswer.Spots(lake, _forms, _outlook, outlook, MostSpots, _ranked);
        tray.Progress(At(0.85), Steps.Route);
        if (shore.Spots.Count == 0)
            throw new CouldNotComputeException(AnswerFindings.NoStopWorth.Of());
        DayResult day = DayAnswer.Plan(lake, wish, units, clock, shore, moved.Motion, moved.Wind, moved.Assumed, withOthers: false);
        tray.Progress(At(1), Steps.Route);
        return day;

        double At(double share) => from + (share * (to - from));
    }

    private DayWish Wish(DayAsk ask, PreparedLake lake) => new()
    {
        Date = ask.Date ?? DateOnly.FromDateTime(_at.DateTime).AddDays(1),
        Ramp = ask.Ramp is { Length: > 0 } ramp && lake.Folder.Ramps.Count > 0 ? ramp : null,
        Launch = ask.Launch,
        HomeBy = ask.HomeBy,
        MaxSpots = MostSpots,
        Boat = BoatWish.Of(ask.More?.CruiseMps, ask.More?.DraftM, ask.More?.FuelL),
        WindLimitMps = ask.More?.WindLimitMps,
        Reserve = TimeSpan.FromMinutes(ask.More?.ReserveMin ?? UsualReserveMin),
        Breaks = [.. (ask.More?.Breaks ?? []).Select(b => new BreakWish(b.From, b.To, b.Minutes))],
        Must = ask.Must ?? [],
        Never = ask.Never ?? [],
        Here = ask.Here is { } here ? new BoatNow(here.At, new GeoPoint(here.LatDeg, here.LonDeg), here.FishedH) : null,
        StandsAt = _at,
    };

    // The water in motion is the slow part, and the same for every plan of the same hours in the same water.
    private Moved WaterFor(PreparedLake lake, Outlook outlook, DayClock clock, IProgress<double> progress)
    {
        if (_moved is { } kept && ReferenceEquals(kept.Lake, lake) && ReferenceEquals(kept.Standing, _outlook) && kept.Clock == clock) return kept;
        (IWaterMotion motion, IReadOnlyList<SheetWind> wind, IReadOnlyList<Finding> assumed) = DayAnswer.Motion(lake, outlook, clock, progress);
        return _moved = new Moved(lake, _outlook, clock, motion, wind, assumed);
    }

    /// <summary>The water in motion over a day's hours.</summary>
    private sealed record Moved(PreparedLake Lake, Outlook? Standing, DayClock Clock, IWaterMotion Motion, IReadOnlyList<SheetWind> Wind, IReadOnlyList<Finding> Assumed);
}
