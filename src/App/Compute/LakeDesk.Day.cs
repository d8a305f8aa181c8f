using SecondShore.Answers;
using SecondShore.Answers.Files;
using SecondShore.Answers.Lake;
using SecondShore.Answers.Questions;
using SecondShore.Answers.Sheet;
using SecondShore.Answers.Words;
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
    private static readonly TimeSpan SameOutlook = TimeSpan.FromHours(40);
    // A phone has one slow thread: the middle pair of layers alone, and a shorter run-up than the desktop's. Pairs differ by a
    // centimetre or two in how far the wind moves them; what the outlook does not know of the depth itself stays in the plan.
    private static readonly WindFieldOptions OnAPhone = new() { Members = 1, SpinUpDays = 3 };
    private DayResult? _day;
    private Moved? _moved;

    private DayView Day(AskAbout about)
    {
        DayAsk ask = about.Day ?? new DayAsk();
        UnitSystem units = about.Units;
        DayResult? kept = _day;
        if (ask.Take is { } kind && kept is not null && Enum.TryParse(kind, out AlternativeKind taken)) _day = DayAnswer.Take(kept, taken, units);
        else if (ask.Others && kept is not null) _day = Others(kept);
        else if (!ask.Again || kept is null) _day = Plan(ask, units);
        DayResult day = _day!;
        return DayViews.Of(day, ask with { Take = null, Again = false, Others = false, Date = day.Wish.Date, Ramp = day.RampName }, units);
    }

    private DayResult Others(DayResult day)
    {
        tray.Progress(0, Steps.Others);
        return DayAnswer.WithOthers(day);
    }

    /// <summary>The sheet and the files of the day planned last.</summary>
    private string Papers(AskAbout about)
    {
        DayResult day = _day ?? throw new CouldNotComputeException("No day is planned yet.");
        tray.Progress(0, Steps.Papers);
        ILakeFiles files = DayFiles.Of(day, about.Units, TimeProvider.System.GetUtcNow());
        foreach (LakeFileEntry file in files.Entries) tray.Put("file:" + file.Name, files.Read(file.Name));
        return "{}";
    }

    private DayResult Plan(DayAsk ask, UnitSystem units)
    {
        PreparedLake lake = Opened();
        lake.RequireGrid();
        DayWish wish = Wish(ask, lake);
        DayClock clock = DayClock.Of(lake, wish, DayAnswer.UsualHomeBy);
        Outlook outlook = OutlookFor(lake, clock.Launch);
        _forms ??= ShoreAnswer.Forms(lake, Share(Steps.Forms, 0.3, 0.5));
        Moved moved = WaterFor(lake, outlook, clock);
        tray.Progress(0.8, Steps.Places);
        ShoreResult shore = SpotsFor(lake, outlook, units);
        tray.Progress(0.85, Steps.Route);
        if (shore.Spots.Count == 0)
            throw new CouldNotComputeException("No place on this bottom is worth a stop: the survey may be too coarse, or read the wrong way up. Look at the chart on Shore.");
        DayResult day = DayAnswer.Plan(lake, wish, units, clock, shore, moved.Motion, moved.Wind, moved.Assumed, withOthers: false);
        tray.Progress(1, Steps.Route);
        return day;
    }

    // The day stops at the places that Shore shows, under the same letters, and calls them by the same names.
    private ShoreResult SpotsFor(PreparedLake lake, Outlook outlook, UnitSystem units)
    {
        ShoreResult shore = _ranked is { } shown && _outlook is { } kept && (outlook.At - kept.At).Duration() <= SameOutlook
            ? shown with { Outlook = outlook }
            : ShoreAnswer.Compute(lake, _forms!, outlook, maxSpots: MostSpots);
        return shore with { Spots = [.. shore.Spots.Select(s => s with { Name = SpotViews.Name(s, shore, units) })] };
    }

    private DayWish Wish(DayAsk ask, PreparedLake lake) => new()
    {
        Date = ask.Date ?? DateOnly.FromDateTime(_at.DateTime).AddDays(1),
        Ramp = ask.Ramp is { Length: > 0 } ramp && lake.Folder.Ramps.Count > 0 ? ramp : null,
        Launch = ask.Here is { } now ? TimeOnly.FromDateTime(AnswerTime.ToLocal(now.At, lake.Folder).DateTime) : ask.Launch,
        HomeBy = ask.HomeBy,
        MaxSpots = MostSpots,
        Must = ask.Must ?? [],
        Never = ask.Never ?? [],
        Here = ask.Here is { } here ? new BoatNow(here.At, new GeoPoint(here.LatDeg, here.LonDeg), here.FishedH) : null,
        Ensemble = new EnsembleOptions(Members),
    };

    // A day near the outlook's own instant takes that day of its course; a later one is run anew up to it.
    private Outlook OutlookFor(PreparedLake lake, DateTimeOffset launch)
    {
        if (_outlook is { } kept && (launch - kept.At).Duration() <= SameOutlook && Has(kept.Lake, launch))
            return OnDay(kept, DateOnly.FromDateTime(launch.DateTime)) with { At = launch };
        return OutlookAnswer.Compute(lake, launch, new EnsembleOptions(Members), Share(Steps.Season, 0, 0.3));

        static bool Has(ArmOutlook arm, DateTimeOffset at) => arm.Days.Any(d => d.Date == DateOnly.FromDateTime(at.DateTime));
    }

    // The water in motion is the slow part, and the same for every plan of the same hours.
    private Moved WaterFor(PreparedLake lake, Outlook outlook, DayClock clock)
    {
        if (_moved is { } kept && ReferenceEquals(kept.Lake, lake) && kept.Clock.Launch <= clock.Launch && kept.Clock.HomeBy >= clock.HomeBy
            && clock.Launch - kept.Clock.Launch < TimeSpan.FromHours(18)) return kept;
        // What Wind has set in motion already covers the day's hours.
        if (_wind is { } shown && ReferenceEquals(shown.Outlook, _outlook) && shown.Field.Hours[0] <= clock.Launch && shown.Field.Hours[^1] >= clock.HomeBy)
            return new Moved(lake, clock, shown.Field, DayAnswer.Strip(shown, clock), shown.Assumed);
        (IWaterMotion motion, IReadOnlyList<SheetWind> wind, IReadOnlyList<string> assumed) = DayAnswer.Motion(lake, outlook, clock, OnAPhone, Share(Steps.Water, 0.5, 0.8));
        return _moved = new Moved(lake, clock, motion, wind, assumed);
    }

    /// <summary>The water in motion over a day's hours.</summary>
    private sealed record Moved(PreparedLake Lake, DayClock Clock, IWaterMotion Motion, IReadOnlyList<SheetWind> Wind, IReadOnlyList<string> Assumed);
}
