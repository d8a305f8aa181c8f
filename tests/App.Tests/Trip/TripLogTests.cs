using SecondShore.Answers.Lake;
using SecondShore.Answers.Learn;
using SecondShore.Answers.Questions;
using SecondShore.App.Store;
using SecondShore.App.Trip;
using SecondShore.App.Words;
using SecondShore.Desk.Entries;
using SecondShore.Desk.Questions;
using SecondShore.Desk.Views;
using SecondShore.Engine.Learn;
using SecondShore.Engine.Season;
using SecondShore.Formats;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;

namespace SecondShore.App.Tests.Trip;

/// <summary>What the keys make of a trip: stretches with minutes, rig and place, that the learning can use.</summary>
public class TripLogTests
{
    private static readonly RigOn Drag = new("drag", 21.26, "slim craw", "brown", null);

    [Fact]
    public async Task Learning_gets_rates_from_the_trip_file_of_a_day_logged_with_keys()
    {
        TripPage page = new();
        DayView day = await page.PlannedAsync();
        await page.Trip.TieOnAsync(Drag);
        page.Clock.Now = day.Stops[0].Arrive.AddMinutes(5);
        await page.Trip.LogAsync(RecordKinds.Bite, new Entry());
        page.Clock.Now = page.Clock.Now.AddMinutes(20);
        await page.Trip.LogAsync(RecordKinds.Fish, new Entry());
        page.Clock.Now = page.Clock.Now.AddMinutes(5);
        await page.Trip.GoOnAsync();
        page.Clock.Now = page.Clock.Now.AddMinutes(45);
        await page.Trip.LogAsync(RecordKinds.Nothing, new Entry());

        LakeFolder folder = Folder(page);
        LearnDocument learned = LearnDocument.Of(LearnAnswer.Of(folder, null, new LearnWish(), UnitSystem.Feet, TestContext.Current.CancellationToken), []);
        double second = 45 - day.Stops[1].RunMin;
        Assert.Equal((2, 1, 0, 1), (learned.Bites, learned.Fish, learned.WithoutEffort, learned.Blanks));
        Assert.Equal((30 + second) / 60, learned.HoursH, 0.02);
        LearnDocument.ChoiceTable trailers = Assert.Single(learned.Choices, c => c.Factor == "trailer");
        Assert.Contains(trailers.Rates, r => r.Bites == 2 && r.HoursH > 0.9);
        Assert.All(folder.Log.Where(r => r.Kind != Formats.Lake.LogKind.Note), r => Assert.Equal(("drag", "slim craw", "brown"), (r.Jig, r.Trailer, r.Colour)));
        Assert.Contains(folder.Log, r => r.Kind == Formats.Lake.LogKind.Nothing && r.Spot == day.Stops[1].Name && r.Form.Length > 0);
    }

    [Fact]
    public async Task Arriving_opens_a_stretch_and_running_away_closes_it_when_the_run_began()
    {
        TripPage page = new();
        DayView day = await page.PlannedAsync();
        StopView stop = day.Stops[0];
        page.Clock.Now = stop.Arrive.AddMinutes(12);
        await page.FixAsync(stop.XM + 900, stop.YM, 8);
        Assert.Null(page.Trip.Open);
        await page.FixAsync(stop.XM + 5, stop.YM, 0.3);
        Assert.Equal(page.Clock.Now, page.Trip.Open!.From);
        Assert.Equal(stop.Name, page.Trip.Open.Where.Spot);
        page.Clock.Now = page.Clock.Now.AddMinutes(30);
        DateTimeOffset left = page.Clock.Now;
        await page.FixAsync(stop.XM + 400, stop.YM, 9);
        page.Clock.Now = left.AddSeconds(40);
        await page.FixAsync(stop.XM + 800, stop.YM, 9);
        Assert.Null(page.Trip.Open);
        RecordRow kept = Assert.Single(page.Records);
        Assert.Equal(RecordKinds.Effort, kept.Kind);
        Assert.Equal(30, Entry.Of(kept).Minutes!.Value, 1);
    }

    [Fact]
    public async Task An_entry_away_from_every_stop_names_none_and_stands_where_the_jig_is()
    {
        TripPage page = new() { ChartM = 9.5 };
        DayView day = await page.PlannedAsync();
        StopView stop = day.Stops[0];
        page.Clock.Now = stop.Arrive;
        for (int i = 0; i <= 20; i++)
        {
            page.Clock.Now = page.Clock.Now.AddSeconds(15);
            await page.FixAsync(stop.XM + 1500 + (5 * i), stop.YM, 0.3, accuracyM: 4);
        }

        RecordRow row = (await page.Trip.LogAsync(RecordKinds.Bite, new Entry()))!;
        Entry bite = Entry.Of(row);
        Assert.Null(bite.Spot);
        Assert.Equal(9.5, bite.DepthM);
        Assert.Equal(4, bite.AccuracyM);
        var at = page.Session.Plane!.ToPlane(new(bite.LatDeg!.Value, bite.LonDeg!.Value));
        Assert.Equal(stop.XM + 1600 - stop.BehindM, at.XM, 1.0);
        Assert.True(stop.BehindM > 3);
        // The haze stands under the boat.
        Entry haze = Entry.Of((await page.Trip.LogAsync(RecordKinds.Haze, new Entry { Value = 9 }))!);
        Assert.Equal(stop.XM + 1600, page.Session.Plane.ToPlane(new(haze.LatDeg!.Value, haze.LonDeg!.Value)).XM, 0.5);
        Assert.Equal(4, haze.AccuracyM);
        Assert.Contains("accuracy_m", System.Text.Encoding.UTF8.GetString(Files(page).Read("readings.csv")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Another_rig_begins_another_stretch()
    {
        TripPage page = new();
        DayView day = await page.PlannedAsync();
        page.Clock.Now = day.Stops[0].Arrive;
        await page.Trip.LogAsync(RecordKinds.Snag, new Entry());
        page.Clock.Now = page.Clock.Now.AddMinutes(10);
        await page.Trip.TieOnAsync(Drag);
        page.Clock.Now = page.Clock.Now.AddMinutes(15);
        await page.Trip.GoHomeAsync();
        RecordRow[] stretches = [.. page.Records.Where(r => r.Kind == RecordKinds.Effort)];
        Assert.Equal([10.0, 15.0], stretches.Select(r => Entry.Of(r).Minutes!.Value));
        Assert.Equal(["", "drag"], stretches.Select(r => Entry.Of(r).Jig ?? ""));
    }

    [Fact]
    public async Task Taking_nothing_here_back_goes_on_with_the_same_stretch()
    {
        TripPage page = new();
        DayView day = await page.PlannedAsync();
        page.Clock.Now = day.Stops[0].Arrive;
        await page.Trip.LogAsync(RecordKinds.Snag, new Entry());
        DateTimeOffset from = page.Trip.Open!.From;
        page.Clock.Now = from.AddMinutes(20);
        RecordRow nothing = (await page.Trip.LogAsync(RecordKinds.Nothing, new Entry()))!;
        Assert.Equal((RecordKinds.Nothing, 20.0), (nothing.Kind, Entry.Of(nothing).Minutes!.Value));
        Assert.Null(page.Trip.Open);
        Assert.True(await page.Trip.TakeBackAsync(nothing));
        Assert.Equal(from, page.Trip.Open!.From);
        page.Clock.Now = from.AddMinutes(40);
        await page.Trip.LogAsync(RecordKinds.Bite, new Entry());
        // With a bite in it, nothing here was not nothing.
        RecordRow closed = (await page.Trip.LogAsync(RecordKinds.Nothing, new Entry()))!;
        Assert.Equal((RecordKinds.Effort, 40.0), (closed.Kind, Entry.Of(closed).Minutes!.Value));
    }

    [Fact]
    public async Task Taps_quicker_than_the_device_writes_count_in_turn_and_at_their_own_moments()
    {
        TripPage page = new();
        DayView day = await page.PlannedAsync();
        Assert.True(day.Stops.Count > 1, "one stop has no next one");
        page.Clock.Now = day.Stops[0].Arrive;
        await page.Trip.LogAsync(RecordKinds.Snag, new Entry());
        page.Clock.Now = page.Clock.Now.AddMinutes(20);
        TaskCompletionSource written = new(TaskCreationOptions.RunContinuationsAsynchronously);
        page.Disk = written.Task;
        Task on = page.Trip.GoOnAsync();
        page.Clock.Now = page.Clock.Now.AddMinutes(50);
        Task<RecordRow?> nothing = page.Trip.LogAsync(RecordKinds.Nothing, new Entry());
        page.Clock.Now = page.Clock.Now.AddHours(1);
        written.SetResult();
        await on;
        Entry there = Entry.Of((await nothing)!);
        Assert.Equal((day.Stops[1].Name, 50 - day.Stops[1].RunMin), (there.Spot, there.Minutes!.Value));
    }

    [Fact]
    public async Task A_killed_tab_keeps_the_stretch_and_the_rig_and_a_forgotten_one_ends_at_its_last_sign()
    {
        TripPage page = new();
        DayView day = await page.PlannedAsync();
        await page.Trip.TieOnAsync(Drag);
        page.Clock.Now = day.Stops[0].Arrive;
        await page.Trip.LogAsync(RecordKinds.Bite, new Entry());
        DateTimeOffset from = page.Trip.Open!.From;
        await page.KilledAsync();
        Assert.Equal(Drag, page.Trip.Rig);
        Assert.Equal(from, page.Trip.Open!.From);
        page.Clock.Now = from.AddHours(9);
        await page.Trip.GoHomeAsync();
        Assert.Equal(10, Entry.Of(page.Records.Single(r => r.Kind == RecordKinds.Effort)).Minutes!.Value, 1);
    }

    [Fact]
    public async Task A_haze_deeper_than_planned_moves_the_answer_and_tells_what_the_plan_loses()
    {
        TripPage page = new();
        DayView day = await page.PlannedAsync();
        double wasM = day.ThermoclineM!.Value.P50;
        page.Clock.Now = day.Launch.AddMinutes(30);
        RecordRow haze = (await page.Trip.LogAsync(RecordKinds.Haze, new Entry { Value = wasM + 2 }))!;
        await page.Session.WorkOutAsync();
        Assert.Equal(page.Clock.Now, page.Session.Outlook!.At);
        Assert.Empty(page.Session.Outlook.Unused);
        double nowM = page.Session.Outlook.ThermoclineM!.Value.P50;
        Assert.True(nowM > wasM + 0.5, $"{wasM} to {nowM} m");
        HoldView hold = page.Session.Hold!;
        Assert.True(hold.Changed);
        Wording words = page.Session.Words;
        string said = TripWords.Hold(hold, words)!;
        Assert.StartsWith(words.Depth(nowM) + " now, not " + words.DepthNumber(wasM), said, StringComparison.Ordinal);
        Assert.Contains(hold.Slides.Count > 0 ? "down" : "no longer cross", said, StringComparison.Ordinal);
        Assert.StartsWith("Kept. With it", TripWords.Fate(haze, page.Session.Outlook, words), StringComparison.Ordinal);
        await page.Session.PlanAnewAsync();
        Assert.True(page.Session.Day!.FromHere);
        Assert.Null(page.Session.Hold);
        Assert.Equal(nowM, page.Session.Day.ThermoclineM!.Value.P50, 2);
    }

    [Fact]
    public async Task A_haze_dated_ahead_is_told_as_not_used()
    {
        TripPage page = new();
        await page.Session.OpenAsync(new LakeRow("x", "Test Bowl", ""));
        RecordRow ahead = new Entry { Value = 9 }.ToRow("x", RecordKinds.Haze, DateTimeOffset.UtcNow.AddDays(40));
        await page.Session.KeepAsync(ahead);
        await page.Session.WorkOutAsync();
        Assert.Contains("not used", TripWords.Fate(ahead, page.Session.Outlook, page.Session.Words), StringComparison.Ordinal);
        Assert.DoesNotContain(page.Session.Outlook!.Assumed.Select(a => TripWords.Named(a, page.Session.Records, page.Session.Words)), a => a.Contains(ahead.Id, StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_tackle_box_keeps_a_new_jig_and_what_it_does_not_know_of_the_file()
    {
        TripPage page = new();
        await page.PlannedAsync();
        Assert.True(await page.Session.ChangeTackleAsync(new ChangeJig("", "heavy", 28.35, "black")));
        Assert.True(await page.Session.ChangeTackleAsync(new ChangeJig("drag", "drag", 30, "")));
        Assert.Equal(["drag", "light", "heavy"], page.Session.View!.Tackle.Jigs.Select(j => j.Name));
        Assert.Equal(30, page.Session.View.Tackle.Jigs[0].WeightG);
        Assert.Equal("brown", page.Session.View.Tackle.Jigs[0].Colour);
        string text = System.Text.Encoding.UTF8.GetString(Files(page).Read("tackle.json"));
        Assert.Contains("my_key", text, StringComparison.Ordinal);
        Assert.Contains("mine", text, StringComparison.Ordinal);
        Assert.DoesNotContain("weight_oz", text, StringComparison.Ordinal);
        Assert.False(await page.Session.ChangeTackleAsync(new ChangeJig("", "nameless weight", null, "")));
        Assert.Contains("weight", page.Session.Trouble, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_the_app_learns_is_what_the_trip_file_teaches_and_the_time_to_leave_moves_with_a_bite()
    {
        TripPage page = new();
        DayView day = await page.PlannedAsync();
        await page.Trip.TieOnAsync(Drag);
        page.Clock.Now = day.Stops[0].Arrive;
        await page.Trip.LogAsync(RecordKinds.Snag, new Entry());
        Lessons lessons = new(page.Session);
        await lessons.FreshAsync();
        DateTimeOffset before = LeaveTime.Of(page.Trip.Open, lessons.Learned!.Leave.Rows, page.Session.Records)!.Value;
        page.Clock.Now = page.Clock.Now.AddMinutes(10);
        await page.Trip.LogAsync(RecordKinds.Bite, new Entry());
        DateTimeOffset after = LeaveTime.Of(page.Trip.Open, lessons.Learned.Leave.Rows, page.Session.Records)!.Value;
        Assert.True(before > day.Stops[0].Arrive && after > before, $"{before:HH:mm} to {after:HH:mm}");
        page.Clock.Now = page.Clock.Now.AddMinutes(30);
        await page.Trip.GoHomeAsync();
        await lessons.FreshAsync();
        LearnDocument own = lessons.Learned!;
        LearnDocument filed = LearnDocument.Of(LearnAnswer.Of(Folder(page), null, new LearnWish(), UnitSystem.Feet, TestContext.Current.CancellationToken), []);
        Assert.Equal((filed.HoursH, filed.Bites, filed.Snags), (own.HoursH, own.Bites, own.Snags));
        Assert.Equal(filed.Choices.SelectMany(c => c.Rates).Select(r => (r.Choice, r.HoursH, r.Bites)).Order(), own.Choices.SelectMany(c => c.Rates).Select(r => (r.Choice, r.HoursH, r.Bites)).Order());
        Assert.Equal(filed.LastTrip!.HoursH, own.LastTrip!.HoursH);
        Assert.Equal(40.0 / 60, own.HoursH, 0.02);

        // Asked with what the log cannot know, it is what the command line says to the same.
        await lessons.AskAsync(new LearnAsk("sunfish", LowLight: true, HoursAheadH: 1, TravelMin: 45));
        LearnWish wish = new() { Eats = ["sunfish"], LowLight = true, HoursAheadH = 1, TravelH = 0.75 };
        PreparedLake lake = PreparedLake.From(Folder(page), null, TestContext.Current.CancellationToken);
        Outlook outlook = OutlookAnswer.Compute(lake, page.Session.Outlook!.At, new EnsembleOptions(), null, TestContext.Current.CancellationToken);
        LearnDocument asked = LearnDocument.Of(LearnAnswer.Of(Folder(page), outlook, wish, UnitSystem.Feet, TestContext.Current.CancellationToken), []);
        Assert.Equal(Said(asked), Said(lessons.Learned!));
        Assert.NotEqual(Said(own), Said(asked));

        static string Said(LearnDocument document) => string.Join('\n', document.TieOn.Concat(document.NextTry).Select(a => $"{a.Factor} {a.Choice} {a.Why}").Append(document.Leave.Words));
    }

    private static MemoryFiles Files(TripPage page) => Assert.IsType<MemoryFiles>(TripFile.Read("trip.zip", page.TripFile(), new ProblemLog()));

    private static LakeFolder Folder(TripPage page) => LakeFolderReader.Read(Files(page));
}
