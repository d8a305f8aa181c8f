using SecondShore.App.Shell;
using SecondShore.App.Store;
using SecondShore.App.Trip;
using SecondShore.Desk.Entries;
using SecondShore.Desk.Questions;
using SecondShore.Desk.Views;

namespace SecondShore.App.Tests.Trip;

/// <summary>Two tabs of a device, and readings that come faster than the engine works.</summary>
public class TabTests
{
    [Fact]
    public async Task What_one_tab_logs_ties_on_and_goes_on_to_is_what_the_other_shows()
    {
        TripPage page = new();
        DayView day = await page.PlannedAsync();
        (Session other, TripLog trip) = await page.OtherTabAsync();
        page.Clock.Now = day.Stops[0].Arrive.AddMinutes(5);
        await trip.TieOnAsync(new RigOn("drag", 21.26, "slim craw", "brown", null));
        await trip.LogAsync(RecordKinds.Bite, new Entry());
        Assert.False(page.Trip.Rig.IsKnown);
        Assert.DoesNotContain(page.Session.Entries, e => e.Kind == RecordKinds.Bite);
        await page.Session.OnOtherTab("records", "x");
        await page.Session.OnOtherTab("trip", "x");
        Assert.Contains(page.Session.Entries, e => e.Kind == RecordKinds.Bite);
        Assert.Equal("slim craw", page.Trip.Rig.Trailer);
        Assert.Equal(trip.Open, page.Trip.Open);
        await trip.GoOnAsync();
        await page.Session.OnOtherTab("stop", "x");
        Assert.Equal((other.StopIndex, 1), (page.Session.StopIndex, 1));
    }

    [Fact]
    public async Task A_plan_made_in_another_tab_is_shown_and_is_the_one_that_is_changed()
    {
        TripPage page = new();
        await page.PlannedAsync();
        (Session other, _) = await page.OtherTabAsync();
        await other.PlanAsync(new DayAsk(new DateOnly(2026, 8, 23), null, new TimeOnly(12, 0), new TimeOnly(18, 0)));
        await page.Session.OnOtherTab("papers", "x");
        Assert.Equal(new DateOnly(2026, 8, 23), page.Session.Day!.Date);
        await page.Session.SetMetricAsync(true);
        Assert.Equal(new DateOnly(2026, 8, 23), page.Session.Day.Date);
    }

    [Fact]
    public async Task What_belongs_to_another_lake_changes_nothing()
    {
        TripPage page = new();
        await page.PlannedAsync();
        int asked = page.Questions.Count;
        foreach (string what in (string[])["records", "files", "papers", "stop", "trip"]) await page.Session.OnOtherTab(what, "y");
        Assert.Equal(asked, page.Questions.Count);
    }

    [Fact]
    public async Task Readings_typed_one_after_another_are_worked_in_once()
    {
        TripPage page = new();
        await page.PlannedAsync();
        TaskCompletionSource busy = new();
        page.Busy = busy.Task;
        page.Questions.Clear();
        Task first = page.Session.WorkOutAsync();
        Assert.NotNull(page.Session.Work);
        foreach (double depthM in (double[])[8.5, 9, 9.5])
        {
            page.Clock.Now = page.Clock.Now.AddMinutes(5);
            await page.Session.KeepAsync(new Entry { Value = depthM }.ToRow("x", RecordKinds.Haze, page.Clock.Now));
            _ = page.Session.WorkOutAsync();
        }

        Task last = page.Session.WorkOutAsync();
        busy.SetResult();
        await first;
        await last;
        // One for what was known when it began, one for all three readings.
        Assert.Equal(2, page.Questions.OfType<FindOutlook>().Count());
        Assert.Equal(9.5, page.Session.Outlook!.Haze!.DepthM);
        await page.Session.WorkOutAsync();
        Assert.Equal(3, page.Questions.OfType<FindOutlook>().Count());
    }
}
