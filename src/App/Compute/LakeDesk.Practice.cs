using System.Text.Json;
using SecondShore.Answers.Lake;
using SecondShore.Answers.Questions;
using SecondShore.App.Compute.Views;
using SecondShore.Engine.Season;

namespace SecondShore.App.Compute;

/// <summary>Several days in a row: practice, then the day that counts.</summary>
internal sealed partial class LakeDesk
{
    private PlannedRow? _row;

    // One day of the row. Another day of a row that stands plans nothing anew.
    private DayResult OfRow(DayAsk ask, UnitSystem units)
    {
        DayAsk row = ask with { Which = 0, Here = null, Take = null, Again = false, Others = false };
        DayWish first = Wish(row, Opened());
        PlannedRow planned = RowOf(row, first, units);
        if (ask.Here is null) return planned.Days[ask.Which];
        // What is left of a day on the water is planned on what practice covered in the days before it.
        PracticeSoFar before = planned.Days.Take(ask.Which).Aggregate(PracticeSoFar.Nothing, (so, day) => so.After(day));
        DayWish rest = Wish(row with { Here = ask.Here }, Opened()) with { Date = first.Date.AddDays(ask.Which) };
        return Plan(rest with { Practice = IsPractice(row, ask.Which) ? before : null }, units, 0, 1);
    }

    private PlannedRow RowOf(DayAsk row, DayWish first, UnitSystem units)
    {
        string asked = Key(row with { Date = first.Date });
        if (_row is { } kept && (asked == kept.Asked || asked == kept.Told) && ReferenceEquals(kept.Lake, _lake) && ReferenceEquals(kept.Standing, _outlook)) return kept;
        int done = 0;
        IReadOnlyList<DayResult> days = PracticeDays.InTurn(first, row.Days, lastCounts: !row.AllPractice, day =>
        {
            DayResult planned = Plan(day, units, (double)done / row.Days, (done + 1.0) / row.Days);
            done++;
            return planned;
        });
        return _row = new PlannedRow(asked, Key(row with { Date = first.Date, Ramp = days[0].RampName }), _lake, _outlook, days);

        // Words of a plan are said when it is made: in other units or another language it is another row.
        string Key(DayAsk ask) => $"{units.IsMetric} {units.Speech.Language} {JsonSerializer.Serialize(ask, ViewsJson.Default.DayAsk)}";
    }

    private static RowDayView[] Row(DayAsk asked) => asked is { IsRow: true, Date: { } first }
        ? [.. Enumerable.Range(0, asked.Days).Select(d => new RowDayView(first.AddDays(d), IsPractice(asked, d)))]
        : [];

    private static bool IsPractice(DayAsk asked, int which) => asked.AllPractice || which < asked.Days - 1;

    /// <summary>A row of days as planned: as it was asked for, and as the page asks for it from then on, by the ramp's name.</summary>
    private sealed record PlannedRow(string Asked, string Told, PreparedLake? Lake, Outlook? Standing, IReadOnlyList<DayResult> Days);
}
