using System.Globalization;
using Microsoft.JSInterop;
using SecondShore.App.Trip;
using SecondShore.Desk;
using SecondShore.Desk.Questions;
using SecondShore.Desk.Views;

namespace SecondShore.App.Shell;

/// <summary>The day's plan and where the boat is in it.</summary>
public sealed partial class Session
{
    // A plan outlives updates of the app: it is in use when an update comes.
    // A day said in another language is not the one to show.
    private string DayStamp => "day-1" + Words.Text.Language;
    private int _stopAt;

    /// <summary>The plan; null until one was made.</summary>
    public DayView? Day { get; private set; }

    /// <summary>Ids of spots that the next plan must stop at.</summary>
    public IReadOnlyList<string> Must { get; private set; } = [];

    /// <summary>Ids of spots that the next plan leaves out.</summary>
    public IReadOnlyList<string> Never { get; private set; } = [];

    /// <summary>The stop the boat is at or going to.</summary>
    public StopView? Stop => Day is { } day && _stopAt < day.Stops.Count ? day.Stops[_stopAt] : null;

    /// <summary>The stop after that.</summary>
    public StopView? NextStop => Day is { } day && _stopAt + 1 < day.Stops.Count ? day.Stops[_stopAt + 1] : null;

    /// <summary>This device's clock.</summary>
    internal TimeProvider Clock { get; set; } = TimeProvider.System;

    /// <summary>What time it is at the lake.</summary>
    public DateTimeOffset LakeNow => LakeClock.Now(Clock.GetUtcNow(), View, Day?.Date, Words.Zone);

    /// <summary>Whether the plan is for the day that it is at the lake.</summary>
    public bool IsPlanForToday => Day is { } day && day.Date == DateOnly.FromDateTime(LakeNow.DateTime);

    /// <summary>What the water as it is known now does to the plan; null where it was not asked.</summary>
    public HoldView? Hold { get; private set; }

    // A reading may have moved the layer away from the plan's stops: that is said, not left for the user to find.
    private async Task AskHoldAsync(string lake)
    {
        if (Day is not { } day || View is not { HasBottom: true }) return;
        HoldView hold = await AskAsync(new HoldPlan(HoldAsk.Of(day, IsPlanForToday ? _stopAt : 0)), lake);
        if (Lake?.Id == lake && ReferenceEquals(Day, day)) Hold = hold;
    }

    /// <summary>Plans again what is left of the plan's day: from here and now on that day, else the whole day.</summary>
    public Task PlanAnewAsync() => Day is not { } day ? Task.CompletedTask : IsPlanForToday ? PlanFromHereAsync() : PlanAsync(day.Asked.Anew());

    /// <summary>Boat, breaks and what is kept in hand, as kept on this device; null takes the usual.</summary>
    public DayMore? More { get; private set; }

    /// <summary>Keeps them for every lake and day to come.</summary>
    public async Task KeepMoreAsync(DayMore? more)
    {
        More = more;
        await browser.Do("saveSetting", "day.more", DayMoreDraft.ToJson(more));
    }

    /// <summary>Plans a day, with what must be in and what is left out by now.</summary>
    public Task PlanAsync(DayAsk ask) => ShowDayAsync(ask with { Must = Must, Never = Never }, 0);

    /// <summary>Takes an alternative of the plan in its place.</summary>
    public Task TakeAlternativeAsync(string kind) => Day is { } day
        ? ShowDayAsync(day.Asked with { Taken = [.. day.Asked.Taken ?? [], kind] }, 0)
        : Task.CompletedTask;

    // The plan is shown first; what differs in kind from it and what carries it out of the app follow.
    private Task ShowDayAsync(DayAsk ask, int stop) => DoAsync("work.day", DayWork(ask), async () =>
    {
        if (Lake is not { } lake) return;
        Keep keep = new(Keep.Day, DayStamp);
        DayView day = await AskAsync(ask.Taken is null ? new PlanDay(ask) : (Question<DayView>)new PlanOthers(ask), lake.Id, keep);
        if (Lake?.Id != lake.Id) return;
        (Day, HasPapers, Hold) = (day, false, null);
        await GoToStopAsync(stop);
        await Browser.BreatheAsync();
        if (day.OthersWait)
        {
            DayView whole = await AskAsync(new PlanOthers(day.Asked), lake.Id, keep);
            if (Lake?.Id != lake.Id) return;
            day = Day = whole;
            Tell();
        }

        await AskAsync(new DayPapers(day.Asked), lake.Id, new Keep(Keep.Papers, PapersStamp(day)));
        HasPapers = true;
    });

    // Another plan of a day that is there takes a moment: it says nothing of how long a plan takes.
    private WorkKey? DayWork(DayAsk ask) => Lake is { } lake && ask.Taken is null && ask != Day?.Asked && !IsOfRow(ask)
        ? new(ask.Days > 1 ? "days" + ask.Days.ToString(CultureInfo.InvariantCulture) : "day", lake.Id,
            [WorkPart.Of<PlanDay>(3.2 * ask.Days), WorkPart.Of<PlanOthers>(0.8), WorkPart.Of<DayPapers>(0.8)])
        : null;

    // A day of the row that stands, as far as the page can tell.
    private bool IsOfRow(DayAsk ask) => Day is { Row.Count: > 1 } day && ask.Here is null && ask.Which != day.Asked.Which;

    /// <summary>Whether the plan's sheet and files are made.</summary>
    public bool HasPapers { get; private set; }

    /// <summary>What tells one plan's papers from another's.</summary>
    public string PapersStamp(DayView day) => string.Join(' ', (string[])[DayStamp, Words.Units.IsMetric ? "m" : "ft",
        .. day.Stops.Select(s => s.Letter + s.Arrive.ToUnixTimeSeconds().ToString(CultureInfo.InvariantCulture))]);

    /// <summary>Plans the rest of the day from where the boat is: from the phone's position, else from the stop at hand.</summary>
    public Task PlanFromHereAsync()
    {
        if (Day is not { } day || Plane is not { } plane) return Task.CompletedTask;
        DateTimeOffset now = LakeNow;
        // Away from the plan's own day (the evening before, a try-out) its clock stands at the stop at hand.
        if (DateOnly.FromDateTime(Words.AtLake(now).DateTime) != day.Date || now < day.Launch || (View is { IsInvented: true } && now > day.Home.AddMinutes(-45))) now = Stop is { } here ? Middle(here) : day.Launch;
        Engine.Core.Geo.GeoPoint place = Fix is { } fix ? fix.Place : plane.ToGeo(Stop is { } s ? new(s.XM, s.YM) : new(0, 0));
        Dictionary<string, double> fishedH = [];
        for (int i = 0; i <= _stopAt && i < day.Stops.Count; i++)
        {
            double hoursH = ((day.Stops[i].Leave < now ? day.Stops[i].Leave : now) - day.Stops[i].Arrive).TotalHours;
            if (hoursH > 0) fishedH[day.Stops[i].Id] = hoursH;
        }

        return PlanAsync(day.Asked.Anew() with { Here = new HereAsk(now, place.LatDeg, place.LonDeg, fishedH) });
    }

    /// <summary>Wishes a spot into the day, or takes the wish back.</summary>
    public void WishFor(string id, bool wanted)
    {
        Must = wanted ? [.. Must.Append(id).Distinct()] : [.. Must.Where(m => m != id)];
        Never = [.. Never.Where(n => n != id)];
        Tell();
    }

    /// <summary>Which of the days in a row is today, where the plan shows another of them; null otherwise.</summary>
    public int? TodayInRow
    {
        get
        {
            if (Day is not { Row.Count: > 1 } day || IsPlanForToday) return null;
            int today = DateOnly.FromDateTime(LakeNow.DateTime).DayNumber - day.Row[0].Date.DayNumber;
            return today >= 0 && today < day.Row.Count ? today : null;
        }
    }

    /// <summary>Shows another of the days in a row.</summary>
    public Task ChooseDayAsync(int which) => Day is { } day && Work is null && which != day.Asked.Which
        ? PlanAsync(day.Asked with { Which = which, Here = null, Taken = null })
        : Task.CompletedTask;

    /// <summary>Plans the kept plan's day again, with what must be in and what is left out by now.</summary>
    public Task PlanByWishesAsync() => Day is { } day && Work is null ? PlanAsync(day.Asked.Anew() with { Here = null }) : Task.CompletedTask;

    /// <summary>Leaves a spot out of the day, or lets it in again.</summary>
    public void LeaveOut(string id, bool left)
    {
        Never = left ? [.. Never.Append(id).Distinct()] : [.. Never.Where(n => n != id)];
        Must = [.. Must.Where(m => m != id)];
        Tell();
    }

    /// <summary>Hands out a file of the plan.</summary>
    public async Task<bool> HandOutAsync(string file)
    {
        if (Lake is null || Day is not { } day) return false;
        string name = $"{FileName(Lake.Name)}-{day.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}{Path.GetExtension(file)}";
        return await browser.Flag("downloadPaper", Lake.Id, PapersStamp(day), file, name);
    }

    /// <summary>What to tie on; null until asked.</summary>
    public RigView? Rig { get; private set; }

    /// <summary>The rig set aside to be held against another; null for none.</summary>
    public RigView? RigAside { get; private set; }

    /// <summary>Sets the rig at hand aside.</summary>
    public void SetRigAside()
    {
        RigAside = Rig;
        Tell();
    }

    /// <summary>Asks what to tie on.</summary>
    public async Task AskRigAsync(RigAsk ask)
    {
        try
        {
            Rig = await AskBesideAsync(new RigFor(ask, ask.Stop is null ? null : Day?.Asked), null);
            Tell();
        }
        catch (JSException error)
        {
            SayUnlessStopped(error);
        }
    }

    /// <summary>Goes on to the next stop.</summary>
    public Task GoOnAsync() => NextStop is not null ? GoToStopAsync(_stopAt + 1) : Task.CompletedTask;

    /// <summary>Goes to a stop by its place in the plan.</summary>
    public Task GoToAsync(int index) => Day is { } day && index >= 0 && index < day.Stops.Count && index != _stopAt ? GoToStopAsync(index) : Task.CompletedTask;

    /// <summary>Place in the plan of the stop at hand, from 0.</summary>
    public int StopIndex => _stopAt;

    private static DateTimeOffset Middle(StopView stop) => stop.Arrive + (0.5 * (stop.Leave - stop.Arrive));

    private async Task GoToStopAsync(int index)
    {
        _stopAt = index;
        if (Lake is not null) await browser.Do("saveSetting", "stop:" + Lake.Id, index.ToString(CultureInfo.InvariantCulture));
        await browser.Do("goToStop", Stop?.Letter ?? "");
        Tell();
    }

    private async Task RecallDayAsync(string lake)
    {
        DayView? day = await RecallAsync(lake, Keep.Day, DayStamp, DeskJson.Default.DayView);
        if (day is null || Lake?.Id != lake) return;
        (Day, HasPapers) = (day, true);
        int.TryParse(await browser.Text("setting", "stop:" + lake), NumberStyles.Integer, CultureInfo.InvariantCulture, out _stopAt);
        await browser.Do("goToStop", Stop?.Letter ?? "");
    }

    // Sentences carry units: they are said again where the engine has them at hand.
    private async Task SayAgainAsync()
    {
        if (Outlook is not null && Work is null && Spots.Count > 0) await TryAsync(Trying);
        if (Rig is { } rig) await AskRigAsync(rig.Asked);
        if (Wind is { } wind && Work is null) await AskWindAsync(wind.Asked);
        if (Day is { } day && Work is null) await ShowDayAsync(day.Asked, _stopAt);
    }
}
