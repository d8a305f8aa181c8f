using SecondShore.App.Store;
using SecondShore.App.Tests.Trip;
using SecondShore.Desk.Entries;
using SecondShore.Desk.Views;

namespace SecondShore.App.Tests;

/// <summary>One date for all places.</summary>
public class InstantTests
{
    [Fact]
    public async Task All_places_answer_for_the_instant_chosen_and_go_back_to_the_lakes_own()
    {
        TripPage page = new();
        await page.Session.OpenAsync(new LakeRow("x", "Test Bowl", ""));
        DateTimeOffset own = page.Session.Outlook!.At, chosen = new(2026, 9, 12, 15, 0, 0, TimeSpan.Zero);
        await page.Session.AnswerForAsync(chosen);
        Assert.Null(page.Session.Trouble);
        Assert.Equal((chosen, chosen, chosen), (page.Session.ChosenAt, page.Session.View!.At, page.Session.Outlook.At));
        await page.Session.TryDayAsync(new DateOnly(2026, 9, 13));
        Assert.Equal(new DateOnly(2026, 9, 13), page.Session.Shore!.Date);
        await page.Session.PlanAsync(new DayAsk(HomeBy: new TimeOnly(19, 0)));
        Assert.Equal(new DateOnly(2026, 9, 13), page.Session.Day!.Date);
        await page.Session.AnswerForAsync(null);
        Assert.Equal((own, own), (page.Session.View.At, page.Session.Outlook.At));
    }

    [Fact]
    public async Task On_the_second_of_days_in_a_row_its_own_plan_is_one_tap_away()
    {
        TripPage page = new();
        await page.Session.OpenAsync(new LakeRow("x", "Test Bowl", ""));
        await page.Session.PlanAsync(new DayAsk(new DateOnly(2026, 8, 22), null, new TimeOnly(11, 0), new TimeOnly(19, 0), Days: 2));
        Assert.Null(page.Session.TodayInRow);
        page.Clock.Now = TripPage.Dawn.AddDays(1);
        Assert.Equal(1, page.Session.TodayInRow);
        await page.Session.ChooseDayAsync(1);
        Assert.Equal(new DateOnly(2026, 8, 23), page.Session.Day!.Date);
        Assert.True(page.Session.IsPlanForToday);
        Assert.Null(page.Session.TodayInRow);
    }

    [Fact]
    public async Task Another_lake_and_another_visit_begin_at_their_own()
    {
        TripPage page = new();
        await page.Session.OpenAsync(new LakeRow("x", "Test Bowl", ""));
        DateTimeOffset own = page.Session.Outlook!.At;
        await page.Session.AnswerForAsync(own.AddDays(20));
        await page.Session.OpenAsync(new LakeRow("x", "Test Bowl", ""));
        Assert.Null(page.Session.ChosenAt);
        Assert.Equal(own, page.Session.Outlook.At);
        await page.Session.AnswerForAsync(own.AddDays(20));
        await page.KilledAsync();
        Assert.Equal(own, page.Session.Outlook!.At);
    }
}
