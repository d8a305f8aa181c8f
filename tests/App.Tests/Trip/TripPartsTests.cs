using SecondShore.App.Shell;
using SecondShore.App.Store;
using SecondShore.App.Trip;
using SecondShore.App.Words;
using SecondShore.Desk.Entries;
using SecondShore.Desk.Views;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.App.Tests.Trip;

public class TripPartsTests
{
    private static readonly DateTimeOffset Start = new(2026, 10, 6, 12, 0, 0, TimeSpan.Zero);
    private static readonly Wording Feet = new(TextBook.For("en"), new LocaleInfo(), UnitSystem.Feet, TimeZoneInfo.Utc);

    [Fact]
    public void The_jig_follows_the_boats_way_round_a_corner()
    {
        BoatTrack track = new();
        Assert.Null(track.Behind(10));
        for (int i = 0; i <= 10; i++) track.Add(Fix(i, 4.0 * i, 0));
        for (int i = 1; i <= 3; i++) track.Add(Fix(10 + i, 40, 4.0 * i));
        PlanePoint jig = track.Behind(20)!.Value;
        Assert.Equal(32, jig.XM, 6);
        Assert.Equal(0, jig.YM, 6);
        // A way too short is carried on straight.
        Assert.Equal(-48, track.Behind(100)!.Value.XM, 6);
    }

    [Fact]
    public void What_the_phones_error_could_have_made_is_no_step()
    {
        BoatTrack track = new();
        for (int i = 0; i < 30; i++) track.Add(Fix(i, i % 2 == 0 ? 0 : 3.5, 0, accuracyM: 12));
        Assert.InRange(track.Points.Count, 1, 2);
    }

    [Fact]
    public void The_invented_lake_has_the_time_of_its_own_season_and_every_other_lake_this_devices()
    {
        LakeView view = new() { Name = "x", ZoneId = "UTC", At = Start, WeatherUntil = Start, ForecastUntil = Start.AddDays(10), IsInvented = true };
        DateTimeOffset far = new(2027, 3, 4, 9, 30, 0, TimeSpan.Zero), near = Start.AddDays(2);
        Assert.Equal(new DateTimeOffset(2026, 10, 7, 9, 30, 0, TimeSpan.Zero), LakeClock.Now(far, view, new DateOnly(2026, 10, 7), TimeZoneInfo.Utc));
        Assert.Equal(new DateTimeOffset(2026, 10, 6, 9, 30, 0, TimeSpan.Zero), LakeClock.Now(far, view, null, TimeZoneInfo.Utc));
        Assert.Equal(near, LakeClock.Now(near, view, new DateOnly(2026, 10, 7), TimeZoneInfo.Utc));
        Assert.Equal(far, LakeClock.Now(far, view with { IsInvented = false }, new DateOnly(2026, 10, 7), TimeZoneInfo.Utc));
    }

    [Fact]
    public void A_plan_that_no_longer_holds_is_told_in_one_line_in_both_languages()
    {
        HoldView hold = new(8.53, 9.45, ["H", "B"], ["F"]);
        Assert.Equal("31 ft now, not 28: H and B slide 3 ft down; F no longer crosses.", TripWords.Hold(hold, Feet));
        Assert.Equal("Jetzt 31 ft, nicht 28: H und B rücken 3 ft tiefer; F trifft sie nicht mehr.", TripWords.Hold(hold, Feet with { Text = TextBook.For("de") }));
        Assert.Equal("25 ft now, not 28: H slides 3 ft up.", TripWords.Hold(new HoldView(8.53, 7.62, ["H"], []), Feet));
        Assert.Equal("No layer now, planned for 28 ft: nothing crosses at H and F.", TripWords.Hold(new HoldView(8.53, null, [], ["H", "F"]), Feet));
        Assert.Null(TripWords.Hold(new HoldView(8.53, 8.6, [], []), Feet));
    }

    [Fact]
    public void What_is_not_touched_in_the_form_keeps_its_last_digit_and_what_is_changed_is_turned_to_si()
    {
        Entry was = new() { Value = 1234.5678, DepthM = 8.7654321, LatDeg = 45.1234567, LonDeg = -90.1, AccuracyM = 4, JigWeightG = 21.26, LengthM = 0.4321, Spot = "Kiln", Form = "bluff", Mark = "m" };
        EntryDraft draft = new(RecordKinds.Fish, was, Start.AddSeconds(17), Feet);
        Assert.Equal(was with { Note = "" }, draft.ToEntry(Feet));
        Assert.Equal(Start.AddSeconds(17), draft.At);
        draft.When = draft.When.AddMinutes(3);
        (draft.Weight, draft.Length, draft.Ate, draft.Depth, draft.Lat) = (2, 18, "crayfish", 30, 45.2);
        Entry now = draft.ToEntry(Feet);
        Assert.Equal(Start.AddMinutes(3), draft.At);
        Assert.Equal(907.18474, now.Value!.Value, 6);
        Assert.Equal(0.4572, now.LengthM!.Value, 9);
        Assert.Equal(9.144, now.DepthM!.Value, 9);
        Assert.Null(now.AccuracyM);
        Assert.Equal(("crayfish", "bluff"), (now.Ate, now.Form));
        draft.Lon = null;
        Assert.Contains("both", draft.Complaint(30, Feet), StringComparison.Ordinal);
    }

    [Fact]
    public void Boat_and_breaks_are_typed_in_the_readers_units_and_kept_in_si()
    {
        DayMoreDraft draft = DayMoreDraft.Of(null, Feet);
        Assert.Null(draft.ToMore(Feet));
        (draft.Cruise, draft.Draft, draft.Fuel, draft.Wind, draft.Reserve) = (30, 2, 10, 20, 45);
        draft.Breaks.Add(new BreakDraft { From = new TimeOnly(11, 30), To = new TimeOnly(12, 30), Minutes = 20 });
        DayMore more = draft.ToMore(Feet)!;
        Assert.Equal(13.4112, more.CruiseMps!.Value, 6);
        Assert.Equal((0.6096, 37.85411784, 8.9408), (Math.Round(more.DraftM!.Value, 6), Math.Round(more.FuelL!.Value, 8), Math.Round(more.WindLimitMps!.Value, 6)));
        Assert.Equal(more.Breaks, DayMoreDraft.OfJson(DayMoreDraft.ToJson(more))!.Breaks);
        DayMoreDraft metric = DayMoreDraft.Of(more, Feet with { Units = UnitSystem.Metric });
        Assert.Equal((48.28, 0.61, 37.85, 8.94), (metric.Cruise, metric.Draft, metric.Fuel, metric.Wind));
        Assert.Null(draft.Complaint(Feet));
        draft.Breaks[0].To = new TimeOnly(11, 0);
        Assert.Contains("break", draft.Complaint(Feet), StringComparison.Ordinal);
        draft.Draft = 40;
        Assert.StartsWith("Draft", draft.Complaint(Feet), StringComparison.Ordinal);
        Assert.Null(DayMoreDraft.OfJson("{broken"));
    }

    [Fact]
    public void A_state_that_cannot_be_read_is_an_empty_one()
    {
        TripState state = new() { Open = new Stretch(Start, Start, new Entry { Spot = "x" }), Rig = new RigOn("drag", 20) };
        Assert.Equal(state, TripState.Of(state.ToJson()));
        Assert.Equal(new TripState(), TripState.Of("{broken"));
        Assert.Equal(new TripState(), TripState.Of(null));
    }

    private static BoatFix Fix(int second, double xM, double yM, double accuracyM = 3) => new(new GeoPoint(45, -90), new PlanePoint(xM, yM), accuracyM, 0.3, null, Start.AddSeconds(second));
}
