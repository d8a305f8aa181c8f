using System.Text;
using System.Text.Json;
using SecondShore.Answers.Lake;
using SecondShore.Answers.Questions;
using SecondShore.Answers.Rig;
using SecondShore.App.Compute;
using SecondShore.App.Compute.Views;
using SecondShore.App.Store;
using SecondShore.App.Words;
using SecondShore.Engine.Basin;
using SecondShore.Formats;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;

namespace SecondShore.App.Tests;

public class LakeDeskTests
{
    [Fact]
    public void A_survey_with_a_place_is_enough_for_a_first_answer_and_a_haze_moves_it()
    {
        Tray tray = new();
        LakeDesk desk = new(tray);
        Dictionary<string, byte[]> files = Bowl();
        AskAbout about = new(At: new DateTimeOffset(2026, 8, 21, 12, 0, 0, TimeSpan.Zero));
        LakeView view = Ask(desk, "open", about, files, ViewsJson.Default.LakeView);
        Assert.Equal("Test Bowl", view.Name);
        Assert.NotNull(view.Chart);
        Assert.InRange(view.Chart.MaxDepthM, 19, 21);
        Assert.NotNull(tray.LastGrid);
        OutlookView before = Ask(desk, "outlook", about, files, ViewsJson.Default.OutlookView);
        Assert.NotEmpty(before.Assumed);
        Assert.Equal(before.DepthM.Length, before.TempC.Length);
        double beforeM = before.ThermoclineM!.Value.P50, seenM = beforeM + 3;
        RecordRow haze = new Entry { Value = seenM }.ToRow("x", RecordKinds.Haze, new DateTimeOffset(2026, 8, 20, 12, 0, 0, TimeSpan.Zero));
        about = about with { Records = [haze] };
        Ask(desk, "reopen", about, [], ViewsJson.Default.LakeView);
        OutlookView after = Ask(desk, "outlook", about, [], ViewsJson.Default.OutlookView);
        Assert.InRange(after.ThermoclineM!.Value.P50, beforeM + 0.5, seenM + 0.5);
    }

    [Fact]
    public void A_haze_that_cannot_be_is_said_as_refused_and_is_not_what_the_answer_rests_on()
    {
        LakeDesk desk = new(new Tray());
        RecordRow sound = new Entry { Value = 8 }.ToRow("x", RecordKinds.Haze, new DateTimeOffset(2026, 8, 20, 12, 0, 0, TimeSpan.Zero));
        RecordRow absurd = new Entry { Value = 45 }.ToRow("x", RecordKinds.Haze, new DateTimeOffset(2026, 8, 21, 11, 0, 0, TimeSpan.Zero));
        AskAbout about = new(At: new DateTimeOffset(2026, 8, 21, 12, 0, 0, TimeSpan.Zero), Records: [sound, absurd]);
        Ask(desk, "open", about, Bowl(), ViewsJson.Default.LakeView);
        OutlookView outlook = Ask(desk, "outlook", about, [], ViewsJson.Default.OutlookView);
        Assert.Equal(8, outlook.Haze!.DepthM);
        Assert.Equal(absurd.Id, Assert.Single(outlook.Refused).Source);
        Wording feet = new(TextBook.For("en"), new LocaleInfo(), UnitSystem.Feet, TimeZoneInfo.Utc);
        string fate = TripWords.Fate(absurd, outlook, feet);
        Assert.StartsWith("Kept, but not used.", fate, StringComparison.Ordinal);
        Assert.Contains("cannot stand in", fate, StringComparison.Ordinal);
        Assert.Null(TripWords.NotUsed(sound, outlook, feet));
        Assert.StartsWith("Kept. With it", TripWords.Fate(sound, outlook, feet), StringComparison.Ordinal);
    }

    [Fact]
    public void A_depth_that_is_tried_moves_the_second_shore_and_keeps_the_doubt()
    {
        Tray tray = new();
        LakeDesk desk = new(tray);
        Dictionary<string, byte[]> files = Bowl();
        RecordRow haze = new Entry { Value = 8 }.ToRow("x", RecordKinds.Haze, new DateTimeOffset(2026, 8, 20, 12, 0, 0, TimeSpan.Zero));
        AskAbout about = new(At: new DateTimeOffset(2026, 8, 21, 12, 0, 0, TimeSpan.Zero), Records: [haze]);
        Ask(desk, "open", about, files, ViewsJson.Default.LakeView);
        OutlookView outlook = Ask(desk, "outlook", about, files, ViewsJson.Default.OutlookView);
        Assert.NotNull(outlook.ThermoclineM);
        ShoreView at = Ask(desk, "shore", about, files, ViewsJson.Default.ShoreView);
        ShoreView deeper = Ask(desk, "slice", about with { ThermoclineM = at.ThermoclineM!.Value.P50 + 3 }, files, ViewsJson.Default.ShoreView);
        Assert.True(deeper.WhatIf);
        Assert.False(at.WhatIf);
        Assert.True(deeper.LengthM < at.LengthM, "in a bowl a deeper line is shorter");
        Assert.Equal(at.ThermoclineM.Value.P90 - at.ThermoclineM.Value.P50, deeper.ThermoclineM!.Value.P90 - deeper.ThermoclineM.Value.P50, 6);
        Assert.Contains("second-shore.points", tray.Names);
    }

    [Fact]
    public void A_tried_depth_draws_at_once_and_the_places_follow_when_asked()
    {
        (LakeDesk desk, Tray tray, AskAbout about) = Opened();
        OutlookView outlook = Ask(desk, "outlook", about, [], ViewsJson.Default.OutlookView);
        ShoreView full = Ask(desk, "shore", about, [], ViewsJson.Default.ShoreView);
        Assert.NotNull(full.Spots);
        ShoreView quick = Ask(desk, "slice", about with { PoolDropM = 2 }, [], ViewsJson.Default.ShoreView);
        Assert.Null(quick.Spots);
        Assert.Null(quick.Chart!.Spots);
        Assert.Equal(2, quick.BelowFullPoolM);
        Assert.InRange(Deepest(tray.LastGrid!), 17, 19);
        ShoreView back = Ask(desk, "slice", about, [], ViewsJson.Default.ShoreView);
        Assert.False(back.WhatIf);
        Assert.InRange(Deepest(tray.LastGrid!), 19, 21);
        ShoreView day = Ask(desk, "slice", about with { Date = outlook.FirstDay.AddDays(1) }, [], ViewsJson.Default.ShoreView);
        Assert.Equal(outlook.FirstDay.AddDays(1), day.Date);
    }

    [Fact]
    public void New_records_leave_the_gridded_bottom_as_it_is()
    {
        (LakeDesk desk, Tray tray, AskAbout about) = Opened();
        double before = Deepest(tray.LastGrid!);
        RecordRow haze = new Entry { Value = 6 }.ToRow("x", RecordKinds.Haze, new DateTimeOffset(2026, 8, 20, 15, 0, 0, TimeSpan.Zero));
        // No file is handed over: a lake that was read anew would not open.
        LakeView view = Ask(desk, "reopen", about with { Records = [haze] }, [], ViewsJson.Default.LakeView);
        Assert.Equal("Test Bowl", view.Name);
        Assert.Equal(before, Deepest(tray.LastGrid!));
        OutlookView outlook = Ask(desk, "outlook", about with { Records = [haze] }, [], ViewsJson.Default.OutlookView);
        Assert.True(outlook.Haze is { DepthM: 6, Own: true });
    }

    [Fact]
    public void A_day_keeps_its_musts_and_nevers_leaves_as_files_and_goes_on_from_here()
    {
        (LakeDesk desk, Tray tray, AskAbout about) = Opened();
        Ask(desk, "outlook", about, [], ViewsJson.Default.OutlookView);
        DayAsk ask = new(new DateOnly(2026, 8, 22), HomeBy: new TimeOnly(15, 0));
        DayView day = Ask(desk, "day", about with { Day = ask }, [], ViewsJson.Default.DayView);
        Assert.NotEmpty(day.Stops);
        Assert.All(day.Stops, stop => Assert.True(stop.Arrive < stop.Leave && stop.Leave <= day.Home));
        Assert.All(day.Stops, stop => Assert.NotEmpty(stop.Rig));
        desk.Answer("papers", JsonSerializer.Serialize(about, ViewsJson.Default.AskAbout), new Dictionary<string, byte[]>());
        Assert.All((string[])["file:day.html", "file:day.gpx", "file:day.geojson", "file:day.ics"], name => Assert.Contains(name, tray.Names));
        Assert.True(day.OthersWait && day.Alternatives.Count == 0);
        DayView whole = Ask(desk, "day", about with { Day = day.Asked with { Others = true } }, [], ViewsJson.Default.DayView);
        Assert.False(whole.OthersWait);
        Assert.Equal(day.Stops.Select(s => s.Id), whole.Stops.Select(s => s.Id));
        // One water, one rig: asked of a stop, Rig says what Day says.
        foreach (StopView stop in day.Stops)
        {
            RigView rig = Ask(desk, "rig", about with { Rig = new RigAsk(3, 0.1, 5.4, stop.Id) }, [], ViewsJson.Default.RigView);
            Assert.Equal(stop.JigWeightG, rig.MassKg * 1000, 0.1);
            Assert.Equal(stop.Id, rig.Asked.Stop);
        }

        string left = day.Stops[0].Id;
        DayView without = Ask(desk, "day", about with { Day = ask with { Never = [left] } }, [], ViewsJson.Default.DayView);
        Assert.DoesNotContain(left, without.Stops.Select(s => s.Id));
        HereAsk here = new(day.Stops[0].Leave, 45, -90, new Dictionary<string, double> { [left] = 1.0 });
        DayView rest = Ask(desk, "day", about with { Day = ask with { Here = here } }, [], ViewsJson.Default.DayView);
        Assert.True(rest.FromHere);
        Assert.True(rest.Launch >= here.At);
        DayView again = Ask(desk, "day", about with { Metric = true, Day = ask with { Again = true } }, [], ViewsJson.Default.DayView);
        Assert.Equal(rest.Stops.Select(s => s.Id), again.Stops.Select(s => s.Id));
    }

    [Fact]
    public void Minutes_in_hand_bring_the_boat_home_sooner_and_a_break_takes_its_time()
    {
        (LakeDesk desk, _, AskAbout about) = Opened();
        Ask(desk, "outlook", about, [], ViewsJson.Default.OutlookView);
        DayAsk ask = new(new DateOnly(2026, 8, 22), HomeBy: new TimeOnly(20, 0));
        DayView usual = Ask(desk, "day", about with { Day = ask }, [], ViewsJson.Default.DayView);
        DayMore more = new(ReserveMin: 90, Breaks: [new BreakAsk(new TimeOnly(14, 0), new TimeOnly(15, 0), 120)]);
        DayView careful = Ask(desk, "day", about with { Day = ask with { More = more } }, [], ViewsJson.Default.DayView);
        Assert.True(careful.Home <= new DateTimeOffset(2026, 8, 22, 18, 30, 0, TimeSpan.Zero), $"home at {careful.Home:HH:mm}");
        Assert.True(careful.Home < usual.Home);
        Assert.True(Fished(careful) < Fished(usual) - 1.9, "the break is time not fished");
        Assert.Equal(more.Breaks, careful.Asked.More!.Breaks);

        static double Fished(DayView day) => day.Stops.Sum(s => (s.Leave - s.Arrive).TotalHours);
    }

    [Fact]
    public void The_command_line_plans_the_apps_day_from_the_apps_trip_file()
    {
        (LakeDesk desk, Tray tray, AskAbout about) = Opened();
        Ask(desk, "outlook", about, [], ViewsJson.Default.OutlookView);
        ShoreView shore = Ask(desk, "shore", about, [], ViewsJson.Default.ShoreView);
        DayView day = Ask(desk, "day", about with { Day = new DayAsk(new DateOnly(2026, 8, 22), HomeBy: new TimeOnly(15, 0)) }, [], ViewsJson.Default.DayView);
        desk.Answer("export", JsonSerializer.Serialize(about, ViewsJson.Default.AskAbout), new Dictionary<string, byte[]>());
        PreparedLake lake = PreparedLake.From(LakeFolderReader.Read(TripFile.Read("trip.zip", tray.TripFile, new ProblemLog())!));
        DayResult plan = DayAnswer.Compute(lake, new DayWish { Date = new DateOnly(2026, 8, 22), StandsAt = about.At }, UnitSystem.Feet);
        Assert.Equal(plan.Plan.Stops.Select(s => (s.Candidate.Letter, s.Candidate.Name, s.Arrive, s.Leave)), day.Stops.Select(s => (s.Letter, s.Name, s.Arrive, s.Leave)));
        Assert.Equal(plan.Plan.Stops.Select(s => RigWords.Short(plan.Rigs[s.Candidate.Id])), day.Stops.Select(s => s.Rig));
        Assert.All(day.Stops, stop => Assert.Contains(shore.Spots!, spot => spot.Id == stop.Id && spot.Letter == stop.Letter && spot.Name == stop.Name));
        Assert.Equal(plan.Shore.Outlook.Lake.ThermoclineM!.Quantile(0.5), day.ThermoclineM!.Value.P50, 9);
    }

    [Fact]
    public void Days_in_a_row_are_the_command_lines_and_another_of_them_plans_nothing_anew()
    {
        (LakeDesk desk, Tray tray, AskAbout about) = Opened();
        Ask(desk, "outlook", about, [], ViewsJson.Default.OutlookView);
        DayAsk ask = new(new DateOnly(2026, 8, 22), HomeBy: new TimeOnly(15, 0), Days: 2);
        DayView first = Ask(desk, "day", about with { Day = ask }, [], ViewsJson.Default.DayView);
        Assert.Equal([new RowDayView(new DateOnly(2026, 8, 22), true), new RowDayView(new DateOnly(2026, 8, 23), false)], first.Row);
        Assert.StartsWith("Practice:", first.Title, StringComparison.Ordinal);
        Assert.False(first.OthersWait);
        int told = tray.Told;
        DayView second = Ask(desk, "day", about with { Day = first.Asked with { Which = 1 } }, [], ViewsJson.Default.DayView);
        Assert.Equal(told, tray.Told);
        Assert.Equal((new DateOnly(2026, 8, 22), new DateOnly(2026, 8, 23)), (second.Asked.Date!.Value, second.Date));
        Assert.True(second.OthersWait);

        desk.Answer("export", JsonSerializer.Serialize(about, ViewsJson.Default.AskAbout), new Dictionary<string, byte[]>());
        PreparedLake lake = PreparedLake.From(LakeFolderReader.Read(TripFile.Read("trip.zip", tray.TripFile, new ProblemLog())!));
        IReadOnlyList<DayResult> plans = PracticeDays.Compute(lake, new DayWish { Date = new DateOnly(2026, 8, 22), StandsAt = about.At }, 2, lastCounts: true, UnitSystem.Feet);
        DayView[] days = [first, second];
        for (int d = 0; d < 2; d++) Assert.Equal(plans[d].Plan.Stops.Select(s => (s.Candidate.Letter, s.Arrive, s.Leave)), days[d].Stops.Select(s => (s.Letter, s.Arrive, s.Leave)));

        DayView rest = Ask(desk, "day", about with { Day = first.Asked with { Here = new HereAsk(first.Stops[0].Leave, 45, -90, new Dictionary<string, double>()) } }, [], ViewsJson.Default.DayView);
        Assert.True(rest.FromHere && rest.Launch >= first.Stops[0].Leave);
        Assert.StartsWith("Practice:", rest.Title, StringComparison.Ordinal);
        DayView alone = Ask(desk, "day", about with { Language = "de", Day = ask with { Days = 1, AllPractice = true } }, [], ViewsJson.Default.DayView);
        Assert.StartsWith("Training:", alone.Title, StringComparison.Ordinal);
        Assert.True(Assert.Single(alone.Row).IsPractice);
    }

    private static (LakeDesk Desk, Tray Tray, AskAbout About) Opened()
    {
        Tray tray = new();
        LakeDesk desk = new(tray);
        RecordRow haze = new Entry { Value = 8 }.ToRow("x", RecordKinds.Haze, new DateTimeOffset(2026, 8, 20, 12, 0, 0, TimeSpan.Zero));
        AskAbout about = new(At: new DateTimeOffset(2026, 8, 21, 12, 0, 0, TimeSpan.Zero), Records: [haze]);
        Ask(desk, "open", about, Bowl(), ViewsJson.Default.LakeView);
        return (desk, tray, about);
    }

    private static double Deepest(DepthGrid grid) => grid.DepthM.Max(d => float.IsNaN(d) ? 0 : d);

    [Fact]
    public void Files_that_are_no_lake_are_told_in_a_sentence()
    {
        Dictionary<string, byte[]> files = new() { ["holiday.jpg"] = [1, 2, 3, 4, 5] };
        InspectView view = Ask(new LakeDesk(new Tray()), "inspect", new AskAbout(), files, ViewsJson.Default.InspectView);
        Assert.False(view.HasSite);
    }

    private static T Ask<T>(LakeDesk desk, string verb, AskAbout about, Dictionary<string, byte[]> files, System.Text.Json.Serialization.Metadata.JsonTypeInfo<T> type) =>
        JsonSerializer.Deserialize(desk.Answer(verb, JsonSerializer.Serialize(about, ViewsJson.Default.AskAbout), files), type)!;

    internal static Dictionary<string, byte[]> Bowl()
    {
        StringBuilder xyz = new("lat,lon,depth_m\n");
        for (int i = -20; i <= 20; i++)
        {
            for (int j = -20; j <= 20; j++)
            {
                double r = Math.Sqrt((i * i) + (j * j)) / 20;
                xyz.Append(FormattableString.Invariant($"{45 + (i * 0.0006):0.00000},{-90 + (j * 0.0008):0.00000},{Math.Max(0, 20 * (1 - (r * r))):0.00}\n"));
            }
        }

        return new()
        {
            ["survey.csv"] = Encoding.UTF8.GetBytes(xyz.ToString()),
            ["lake.json"] = Encoding.UTF8.GetBytes("""{"name":"Test Bowl","latitude_deg":45,"longitude_deg":-90,"time_zone":"UTC","secchi_m":3}"""),
        };
    }

    internal sealed class Tray : ITray
    {
        public HashSet<string> Names { get; } = [];

        public DepthGrid? LastGrid { get; private set; }

        /// <summary>Steps of work told so far.</summary>
        public int Told { get; private set; }

        public void Progress(double share, string what)
        {
            Assert.InRange(share, 0, 1.0001);
            Told++;
        }

        public byte[] TripFile { get; private set; } = [];

        public void Put(string name, ReadOnlySpan<byte> bytes)
        {
            Names.Add(name);
            if (name == "file:trip.zip") TripFile = bytes.ToArray();
        }

        public void Grid(DepthGrid grid) => LastGrid = grid;
    }
}
