using System.Text.Json;
using SecondShore.Answers;
using SecondShore.Answers.Lake;
using SecondShore.Answers.Questions;
using SecondShore.Answers.Sheet;
using SecondShore.Desk.Views;
using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Day;
using SecondShore.Engine.Motion;
using SecondShore.Engine.Season;

namespace SecondShore.Desk.Graph;

/// <summary>The water in motion over a day, the day planned on the ranked places, and days in a row.</summary>
internal sealed partial class LakeGraph
{
    private static readonly double UsualReserveMin = new DayWish { Date = default }.Reserve.TotalMinutes;
    private Memo<Moved>? _moved;
    private Memo<DayResult>? _day;
    private Memo<DayResult>? _whole;
    private Memo<DayResult>? _taken;
    private Memo<Row>? _row;

    /// <summary>A day as asked for, planned alone: the plans that differ in kind from it may be left for later.</summary>
    public DayResult Day(DayAsk ask)
    {
        ask = Meant(ask);
        return (_day ??= new("day", _worked)).Of(DayId(ask), () => ask.IsRow ? OfRow(ask) : Plan(Wish(ask), 0, 1));
    }

    /// <summary>The same day with the plans that differ in kind from it, and with those taken that were.</summary>
    public DayResult Whole(DayAsk ask, Action? finding = null)
    {
        ask = Meant(ask);
        DayAsk first = ask with { Taken = null };
        DayResult alone = Day(first);
        DayResult all = (_whole ??= new("others", _worked)).Of(DayId(first), () =>
        {
            finding?.Invoke();
            return DayAnswer.WithOthers(alone);
        });
        return ask.Taken is not { Count: > 0 } taken ? all
            : (_taken ??= new("taken", _worked)).Of(DayId(ask), () => taken.Aggregate(all, Take));
    }

    /// <summary>The day where it is known already; null works nothing out.</summary>
    public DayResult? KnownDay(DayAsk ask)
    {
        if (!HasLake || _day is null) return null;
        ask = Meant(ask);
        ContentId id = DayId(ask with { Taken = null });
        return _whole?.Known(id) is not null ? Whole(ask) : _day.Known(id);
    }

    /// <summary>The ask with the day that it means, and with the ramp that was named, not the one that was found.</summary>
    public DayAsk Meant(DayAsk ask) => ask.Bounded() with
    {
        Date = ask.Date ?? DateOnly.FromDateTime(At().DateTime).AddDays(1),
        Ramp = ask.RampOpen || ask.Ramp is not { Length: > 0 } ramp ? null : ramp,
        RampOpen = false,
    };

    private DayResult Take(DayResult day, string kind) => Enum.TryParse(kind, out AlternativeKind taken)
        ? DayAnswer.Take(day, taken, Units)
        : throw new CouldNotComputeException(AnswerFindings.NoSuchAlternative.Of());

    // The log teaches what a place is worth, and the plan is worded as it is made.
    private ContentId DayId(DayAsk ask) => ContentId.Of(StandingId.Hex, Files.AllButTackle.Hex, Files.Tackle.Hex, _recordsId.Hex,
        Units.IsMetric ? "m" : "ft", Units.Speech.Language, JsonSerializer.Serialize(ask, DeskJson.Default.DayAsk));

    // From and to are the shares of the work that it is.
    private DayResult Plan(DayWish wish, double from, double to)
    {
        PreparedLake lake = Lake();
        lake.RequireGrid();
        DayClock hours = DayClock.Of(lake, wish, DayAnswer.UsualHomeBy);
        Outlook standing = Outlook(Share(Steps.Season, At(0), At(0.3)));
        Outlook outlook = DayOutlook.Of(standing, hours.Launch)
            ?? OutlookAt(hours.OutlookAt(lake.Folder, wish.Here), Share(Steps.Season, At(0), At(0.3)));
        FormMap forms = Forms(Share(Steps.Forms, At(0.3), At(0.5)));
        Moved moved = WaterFor(lake, outlook, hours, Share(Steps.Water, At(0.5), At(0.8)));
        tray.Progress(At(0.8), Steps.Places);
        // A day on the outlook's own course takes the places as the lake stands, under their letters.
        ShoreResult? ranked = DayOutlook.Covers(standing, outlook.At) ? Ranked(Tried.Nothing) : null;
        ShoreResult shore = DayAnswer.Spots(lake, forms, standing, outlook, MostSpots, ranked);
        tray.Progress(At(0.85), Steps.Route);
        if (shore.Spots.Count == 0)
            throw new CouldNotComputeException(AnswerFindings.NoStopWorth.Of());
        DayResult day = DayAnswer.Plan(lake, wish, Units, hours, shore, moved.Motion, moved.Wind, moved.Assumed, withOthers: false);
        tray.Progress(At(1), Steps.Route);
        return day;

        double At(double share) => from + (share * (to - from));
    }

    private DayWish Wish(DayAsk ask) => new()
    {
        Date = ask.Date!.Value,
        Ramp = ask.Ramp is { } ramp && Lake().Folder.Ramps.Count > 0 ? ramp : null,
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
        StandsAt = At(),
    };

    // The water in motion is the slow part, and the same for every plan of the same hours in the same water.
    private Moved WaterFor(PreparedLake lake, Outlook outlook, DayClock hours, IProgress<double> progress)
    {
        ContentId id = ContentId.Of(StandingId.Hex, ContentId.Word(outlook.At), ContentId.Word(hours.Launch), ContentId.Word(hours.HomeBy));
        return (_moved ??= new("moved", _worked)).Of(id, () =>
        {
            (IWaterMotion motion, IReadOnlyList<SheetWind> wind, IReadOnlyList<Finding> assumed) =
                DayAnswer.Motion(lake, outlook, hours, progress);
            return new Moved(motion, wind, assumed);
        });
    }

    // One day of the row. Another day of a row that stands plans nothing anew.
    private DayResult OfRow(DayAsk ask)
    {
        DayAsk row = ask with { Which = 0, Here = null, Taken = null };
        DayWish first = Wish(row);
        IReadOnlyList<DayResult> planned = RowOf(row, first).Days;
        if (ask.Here is null) return planned[ask.Which];
        // What is left of a day on the water is planned on what practice covered in the days before it.
        PracticeSoFar before = planned.Take(ask.Which).Aggregate(PracticeSoFar.Nothing, (so, day) => so.After(day));
        DayWish rest = Wish(row with { Here = ask.Here }) with { Date = first.Date.AddDays(ask.Which) };
        return Plan(rest with { Practice = row.IsPractice(ask.Which) ? before : null }, 0, 1);
    }

    private Row RowOf(DayAsk row, DayWish first) => (_row ??= new("row", _worked)).Of(DayId(row), () =>
    {
        int done = 0;
        return new Row(PracticeDays.InTurn(first, row.Days, lastCounts: !row.AllPractice, day =>
        {
            DayResult planned = Plan(day, (double)done / row.Days, (done + 1.0) / row.Days);
            done++;
            return planned;
        }));
    });

    /// <summary>The water in motion over a day's hours.</summary>
    private sealed record Moved(IWaterMotion Motion, IReadOnlyList<SheetWind> Wind, IReadOnlyList<Finding> Assumed);

    /// <summary>Days in a row.</summary>
    private sealed record Row(IReadOnlyList<DayResult> Days);
}
