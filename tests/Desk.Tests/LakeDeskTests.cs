using SecondShore.Answers.Lake;
using SecondShore.Answers.Questions;
using SecondShore.Answers.Rig;
using SecondShore.Desk.Entries;
using SecondShore.Desk.Questions;
using SecondShore.Desk.Views;
using SecondShore.Engine.Basin;
using SecondShore.Formats;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;

namespace SecondShore.Desk.Tests;

public class LakeDeskTests
{
    [Fact]
    public void A_survey_with_a_place_is_enough_for_a_first_answer_and_a_haze_moves_it()
    {
        KeptTray tray = new();
        LakeDesk desk = new(tray);
        desk.Lay("x", Bowl.Files());
        LakeView view = desk.Ask(new OpenLake([], Bowl.Noon));
        Assert.Equal("Test Bowl", view.Name);
        Assert.InRange(view.MaxDepthM!.Value, 19, 21);
        Assert.Equal(view.MaxDepthM, Assert.IsType<WaterDrawing>(Assert.Single(tray.Drawn)).MaxDepthM);
        Assert.NotNull(tray.LastGrid);
        OutlookView before = desk.Ask(new FindOutlook());
        Assert.NotEmpty(before.Assumed);
        Assert.Equal(before.DepthM.Length, before.TempC.Length);
        double beforeM = before.ThermoclineM!.Value.P50, seenM = beforeM + 3;
        RecordRow haze = new Entry { Value = seenM }.ToRow("x", RecordKinds.Haze, new DateTimeOffset(2026, 8, 20, 12, 0, 0, TimeSpan.Zero));
        desk.Ask(new OpenLake([haze], Bowl.Noon));
        OutlookView after = desk.Ask(new FindOutlook());
        Assert.InRange(after.ThermoclineM!.Value.P50, beforeM + 0.5, seenM + 0.5);
    }

    [Fact]
    public void A_depth_that_is_tried_moves_the_second_shore_and_keeps_the_doubt()
    {
        (LakeDesk desk, KeptTray tray) = Opened();
        OutlookView outlook = desk.Ask(new FindOutlook());
        Assert.NotNull(outlook.ThermoclineM);
        ShoreView at = desk.Ask(new RankPlaces());
        ShoreView deeper = desk.Ask(new SliceShore(ThermoclineM: at.ThermoclineM!.Value.P50 + 3));
        Assert.True(deeper.WhatIf);
        Assert.False(at.WhatIf);
        Assert.True(deeper.LengthM < at.LengthM, "in a bowl a deeper line is shorter");
        Assert.Equal(at.ThermoclineM.Value.P90 - at.ThermoclineM.Value.P50, deeper.ThermoclineM!.Value.P90 - deeper.ThermoclineM.Value.P50, 6);
        Assert.Contains("second-shore.points", tray.All.Keys);
    }

    [Fact]
    public void A_tried_depth_draws_at_once_and_the_places_follow_when_asked()
    {
        (LakeDesk desk, KeptTray tray) = Opened();
        OutlookView outlook = desk.Ask(new FindOutlook());
        ShoreView full = desk.Ask(new RankPlaces());
        Assert.NotNull(full.Spots);
        ShoreView quick = desk.Ask(new SliceShore(PoolDropM: 2));
        Assert.Null(quick.Spots);
        Assert.Null(Assert.IsType<BeltDrawing>(tray.Drawn[^1]).Spots);
        Assert.Equal(2, quick.BelowFullPoolM);
        Assert.InRange(Deepest(tray.LastGrid!), 17, 19);
        ShoreView back = desk.Ask(new SliceShore());
        Assert.False(back.WhatIf);
        Assert.InRange(Deepest(tray.LastGrid!), 19, 21);
        ShoreView day = desk.Ask(new SliceShore(Date: outlook.FirstDay.AddDays(1)));
        Assert.Equal(outlook.FirstDay.AddDays(1), day.Date);
    }

    [Fact]
    public void New_records_leave_the_gridded_bottom_as_it_is()
    {
        (LakeDesk desk, KeptTray tray) = Opened();
        double before = Deepest(tray.LastGrid!);
        RecordRow haze = new Entry { Value = 6 }.ToRow("x", RecordKinds.Haze, new DateTimeOffset(2026, 8, 20, 15, 0, 0, TimeSpan.Zero));
        LakeView view = desk.Ask(new OpenLake([haze], Bowl.Noon));
        Assert.Single(desk.Worked.All, w => w.Node == "bottom");
        Assert.Equal("Test Bowl", view.Name);
        Assert.Equal(before, Deepest(tray.LastGrid!));
        OutlookView outlook = desk.Ask(new FindOutlook());
        Assert.True(outlook.Haze is { DepthM: 6, Own: true });
    }

    [Fact]
    public void A_day_keeps_its_musts_and_nevers_leaves_as_files_and_goes_on_from_here()
    {
        (LakeDesk desk, KeptTray tray) = Opened();
        desk.Ask(new FindOutlook());
        DayAsk ask = new(new DateOnly(2026, 8, 22), HomeBy: new TimeOnly(15, 0));
        DayView day = desk.Ask(new PlanDay(ask));
        Assert.NotEmpty(day.Stops);
        Assert.All(day.Stops, stop => Assert.True(stop.Arrive < stop.Leave && stop.Leave <= day.Home));
        Assert.All(day.Stops, stop => Assert.NotEmpty(stop.Rig));
        HandedOut papers = desk.Ask(new DayPapers(day.Asked));
        Assert.Equal(tray.Files.Keys.Order(), papers.Files.Order());
        Assert.All((string[])["day.html", "day.gpx", "day.geojson", "day.ics"], name => Assert.Contains(name, tray.Files.Keys));
        Assert.True(day.OthersWait && day.Alternatives.Count == 0);
        DayView whole = desk.Ask(new PlanOthers(day.Asked));
        Assert.False(whole.OthersWait);
        Assert.Equal(day.Stops.Select(s => s.Id), whole.Stops.Select(s => s.Id));
        // One water, one rig: asked of a stop, Rig says what Day says.
        foreach (StopView stop in day.Stops)
        {
            RigView rig = desk.Ask(new RigFor(new RigAsk(3, 0.1, 5.4, stop.Id), day.Asked));
            Assert.Equal(stop.JigWeightG, rig.MassKg * 1000, 0.1);
            Assert.Equal(stop.Id, rig.Asked.Stop);
        }

        string left = day.Stops[0].Id;
        DayView without = desk.Ask(new PlanDay(ask with { Never = [left] }));
        Assert.DoesNotContain(left, without.Stops.Select(s => s.Id));
        HereAsk here = new(day.Stops[0].Leave, 45, -90, new Dictionary<string, double> { [left] = 1.0 });
        DayView rest = desk.Ask(new PlanDay(ask with { Here = here }));
        Assert.True(rest.FromHere);
        Assert.True(rest.Launch >= here.At);
        DayView again = MetricOf(desk, rest.Asked);
        Assert.Equal(rest.Stops.Select(s => s.Id), again.Stops.Select(s => s.Id));
    }

    [Fact]
    public void Minutes_in_hand_bring_the_boat_home_sooner_and_a_break_takes_its_time()
    {
        (LakeDesk desk, _) = Opened();
        desk.Ask(new FindOutlook());
        DayAsk ask = new(new DateOnly(2026, 8, 22), HomeBy: new TimeOnly(20, 0));
        DayView usual = desk.Ask(new PlanDay(ask));
        DayMore more = new(ReserveMin: 90, Breaks: [new BreakAsk(new TimeOnly(14, 0), new TimeOnly(15, 0), 120)]);
        DayView careful = desk.Ask(new PlanDay(ask with { More = more }));
        Assert.True(careful.Home <= new DateTimeOffset(2026, 8, 22, 18, 30, 0, TimeSpan.Zero), $"home at {careful.Home:HH:mm}");
        Assert.True(careful.Home < usual.Home);
        Assert.True(Fished(careful) < Fished(usual) - 1.9, "the break is time not fished");
        Assert.Equal(more.Breaks, careful.Asked.More!.Breaks);

        static double Fished(DayView day) => day.Stops.Sum(s => (s.Leave - s.Arrive).TotalHours);
    }

    [Fact]
    public void The_command_line_plans_the_apps_day_from_the_apps_trip_file()
    {
        (LakeDesk desk, KeptTray tray) = Opened();
        desk.Ask(new FindOutlook());
        ShoreView shore = desk.Ask(new RankPlaces());
        DayView day = desk.Ask(new PlanDay(new DayAsk(new DateOnly(2026, 8, 22), HomeBy: new TimeOnly(15, 0))));
        desk.Ask(new ExportTrip([Haze]));
        PreparedLake lake = PreparedLake.From(LakeFolderReader.Read(TripFile.Read("trip.zip", tray.Files["trip.zip"], new ProblemLog())!));
        DayResult plan = DayAnswer.Compute(lake, new DayWish { Date = new DateOnly(2026, 8, 22), StandsAt = Bowl.Noon }, UnitSystem.Feet);
        Assert.Equal(plan.Plan.Stops.Select(s => (s.Candidate.Letter, s.Candidate.Name, s.Arrive, s.Leave)), day.Stops.Select(s => (s.Letter, s.Name, s.Arrive, s.Leave)));
        Assert.Equal(plan.Plan.Stops.Select(s => RigWords.Short(plan.Rigs[s.Candidate.Id])), day.Stops.Select(s => s.Rig));
        Assert.All(day.Stops, stop => Assert.Contains(shore.Spots!, spot => spot.Id == stop.Id && spot.Letter == stop.Letter && spot.Name == stop.Name));
        Assert.Equal(plan.Shore.Outlook.Lake.ThermoclineM!.Quantile(0.5), day.ThermoclineM!.Value.P50, 9);
    }

    [Fact]
    public void Days_in_a_row_are_the_command_lines_and_another_of_them_plans_nothing_anew()
    {
        (LakeDesk desk, KeptTray tray) = Opened();
        desk.Ask(new FindOutlook());
        DayAsk ask = new(new DateOnly(2026, 8, 22), HomeBy: new TimeOnly(15, 0), Days: 2);
        DayView first = desk.Ask(new PlanDay(ask));
        Assert.Equal([new RowDayView(new DateOnly(2026, 8, 22), true), new RowDayView(new DateOnly(2026, 8, 23), false)], first.Row);
        Assert.StartsWith("Practice:", first.Title, StringComparison.Ordinal);
        Assert.False(first.OthersWait);
        int told = tray.Told;
        DayView second = desk.Ask(new PlanDay(first.Asked with { Which = 1 }));
        Assert.Equal(told, tray.Told);
        Assert.Equal((new DateOnly(2026, 8, 22), new DateOnly(2026, 8, 23)), (second.Asked.Date!.Value, second.Date));
        Assert.True(second.OthersWait);

        desk.Ask(new ExportTrip([Haze]));
        PreparedLake lake = PreparedLake.From(LakeFolderReader.Read(TripFile.Read("trip.zip", tray.Files["trip.zip"], new ProblemLog())!));
        IReadOnlyList<DayResult> plans = PracticeDays.Compute(lake, new DayWish { Date = new DateOnly(2026, 8, 22), StandsAt = Bowl.Noon }, 2, lastCounts: true, UnitSystem.Feet);
        DayView[] days = [first, second];
        for (int d = 0; d < 2; d++) Assert.Equal(plans[d].Plan.Stops.Select(s => (s.Candidate.Letter, s.Arrive, s.Leave)), days[d].Stops.Select(s => (s.Letter, s.Arrive, s.Leave)));

        DayView rest = desk.Ask(new PlanDay(first.Asked with { Here = new HereAsk(first.Stops[0].Leave, 45, -90, new Dictionary<string, double>()) }));
        Assert.True(rest.FromHere && rest.Launch >= first.Stops[0].Leave);
        Assert.StartsWith("Practice:", rest.Title, StringComparison.Ordinal);
        desk.Reader = new Reader(Language: "de");
        DayView alone = desk.Ask(new PlanDay(ask with { Days = 1, AllPractice = true }));
        Assert.StartsWith("Training:", alone.Title, StringComparison.Ordinal);
        Assert.True(Assert.Single(alone.Row).IsPractice);
    }

    private static readonly RecordRow Haze = new Entry { Value = 8 }.ToRow("x", RecordKinds.Haze, new DateTimeOffset(2026, 8, 20, 12, 0, 0, TimeSpan.Zero));

    private static (LakeDesk Desk, KeptTray Tray) Opened()
    {
        KeptTray tray = new();
        LakeDesk desk = new(tray);
        desk.Lay("x", Bowl.Files());
        desk.Ask(new OpenLake([Haze], Bowl.Noon));
        return (desk, tray);
    }

    private static DayView MetricOf(LakeDesk desk, DayAsk ask)
    {
        desk.Reader = new Reader(Metric: true);
        return desk.Ask(new PlanDay(ask));
    }

    private static double Deepest(DepthGrid grid) => grid.DepthM.Max(d => float.IsNaN(d) ? 0 : d);

    [Fact]
    public void Files_that_are_no_lake_are_told_in_a_sentence()
    {
        Dictionary<string, byte[]> files = new() { ["holiday.jpg"] = [1, 2, 3, 4, 5] };
        InspectView view = new LakeDesk(new KeptTray()).Ask(new InspectFiles(), files);
        Assert.False(view.HasSite);
    }
}
