using System.Text;
using SecondShore.Answers.Lake;
using SecondShore.Answers.Questions;
using SecondShore.Engine.Season;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Tests.Lake;

public class AnswerTimeTests
{
    private static readonly DateTimeOffset Measured = new(2031, 10, 6, 7, 0, 0, TimeSpan.Zero);

    [Fact]
    public void Without_a_newer_reading_the_answer_stands_at_the_end_of_the_measured_weather()
    {
        Assert.Equal(Measured, AnswerTime.Default(Folder(""), Clock(Measured.AddDays(40))));
        Assert.Equal(Measured, AnswerTime.Default(Folder("2031-09-01T12:00Z,8"), Clock(Measured.AddDays(40))));
    }

    [Fact]
    public void A_haze_seen_after_it_carries_the_answer_to_the_hour_it_was_seen()
    {
        Assert.Equal(Measured.AddHours(1.5), AnswerTime.Default(Folder("2031-10-06T08:30Z,9.5"), Clock(Measured.AddHours(2))));
        // Long after the forecast as well: past years carry it there.
        Assert.Equal(Measured.AddDays(20), AnswerTime.Default(Folder("2031-10-26T07:00Z,9.5"), Clock(Measured.AddDays(21))));
    }

    [Fact]
    public void A_question_about_now_stands_no_earlier_than_now()
    {
        Assert.Equal(Measured.AddHours(3), AnswerTime.Default(Folder("2031-10-06T08:30Z,9.5"), Clock(Measured.AddHours(3)), Measured.AddHours(3)));
        Assert.Equal(Measured, AnswerTime.Default(Folder(""), Clock(Measured.AddHours(3)), Measured.AddHours(-3)));
    }

    [Fact]
    public void A_reading_dated_ahead_of_the_present_is_not_followed_and_that_is_said_as_a_value_and_in_words()
    {
        LakeFolder folder = Folder("2031-10-06T08:30Z,9.5\n2032-10-06T08:30Z,9.5");
        DateTimeOffset at = AnswerTime.Default(folder, Clock(Measured.AddHours(2)));
        Assert.Equal(Measured.AddHours(1.5), at);
        UnusedReading left = Assert.Single(UnusedReadings.Of(folder, at));
        Assert.Equal(UnusedBecause.AfterTheInstant, left.Why);
        Assert.Equal(9.5, left.Value);
        string said = Assert.Single(UnusedReadings.Said([left], at)).Say(UnitSystem.Metric);
        Assert.Contains("readings.csv", said, StringComparison.Ordinal);
        Assert.Contains("2032-10-06 08:30", said, StringComparison.Ordinal);
        Assert.Contains("2031-10-06 08:30, which this answer stands for", said, StringComparison.Ordinal);
    }

    [Fact]
    public void A_haze_of_another_season_is_named_as_such_while_a_Secchi_depth_of_then_still_counts()
    {
        LakeFolder folder = Folder("2030-09-06T08:30Z,9.5\n2030-09-07T08:30Z,,4");
        UnusedReading left = Assert.Single(UnusedReadings.Of(folder, Measured));
        Assert.Equal((UnusedBecause.EarlierSeason, ReadingKind.HazeDepth), (left.Why, left.Kind!.Value));
        Assert.Equal(new DateTimeOffset(2031, 3, 1, 0, 0, 0, TimeSpan.Zero), OutlookModel.SeasonStart(Measured, 45));
    }

    [Fact]
    public void A_day_is_planned_by_the_newest_reading_of_its_own_hours()
    {
        DayClock clock = new(Measured, Measured.AddHours(8), null, null);
        Assert.Equal(Measured, clock.OutlookAt(Folder(""), null));
        LakeFolder folder = Folder("2031-10-06T08:30Z,9.5\n2031-10-06T11:00Z,9.8\n2031-10-06T20:00Z,9.9");
        Assert.Equal(Measured.AddHours(4), clock.OutlookAt(folder, null));
        // Planned anew at ten, what is read at eleven is not known yet.
        BoatNow here = new(Measured.AddHours(3), new(45, -90), new Dictionary<string, double>());
        Assert.Equal(Measured.AddHours(3), clock.OutlookAt(folder, here));
    }

    private static LakeFolder Folder(string rows) => LakeFolderReader.Read(new MemoryFiles("lake",
    [
        new("lake.json", Encoding.UTF8.GetBytes("""{"name":"Test","latitude_deg":45,"longitude_deg":-90,"time_zone":"UTC","measured_until":"2031-10-06T07:00:00Z"}""")),
        new("readings.csv", Encoding.UTF8.GetBytes("time,haze_depth_m,secchi_m\n" + rows + "\n")),
    ]));

    private static Standing Clock(DateTimeOffset now) => new Standing(now);

    private sealed class Standing(DateTimeOffset now) : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => now;
    }
}
