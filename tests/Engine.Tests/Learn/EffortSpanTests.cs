using SecondShore.Engine.Learn;

namespace SecondShore.Engine.Tests.Learn;

public class EffortSpanTests
{
    private static readonly DateTimeOffset Start = new(2026, 10, 10, 7, 0, 0, TimeSpan.FromHours(-5));

    private static LogEntry Entry(string id, LogKind kind, double minutes, double? untilMinutes = null,
        string? trailer = null, string? spot = null) => new()
        {
            Id = id,
            Kind = kind,
            At = Start.AddMinutes(minutes),
            Until = untilMinutes is double end ? Start.AddMinutes(end) : null,
            Rig = new RigUsed(null, trailer, null, null),
            Spot = spot,
        };

    [Fact]
    public void Outcomes_fall_to_the_effort_that_holds_them_and_the_rest_stand_apart()
    {
        LogEntry[] log =
        [
            Entry("e1", LogKind.Effort, 0, 60, trailer: "plain craw", spot: "A"),
            Entry("e2", LogKind.Effort, 60, 90, trailer: "twin tail", spot: "A"),
            Entry("n", LogKind.Nothing, 100, 140, spot: "B"),
            Entry("f", LogKind.Fish, 60, trailer: "twin tail", spot: "A"),
            Entry("s", LogKind.Snag, 20), Entry("b", LogKind.Bite, 30), Entry("early", LogKind.Bite, -5),
        ];
        (IReadOnlyList<EffortSpan> spans, IReadOnlyList<LogEntry> without) = EffortSpans.Of(log);
        Assert.Equal([(1, 0, 1), (1, 1, 0), (0, 0, 0)], spans.Select(s => (s.Bites, s.Fish, s.Snags)));
        Assert.Equal(1.0, spans[0].HoursH, 9);
        Assert.Equal(40.0 / 60.0, spans[2].HoursH, 9);
        Assert.Equal("early", Assert.Single(without).Id);
    }

    [Fact]
    public void The_clock_counts_only_time_in_the_water()
    {
        (EffortClock clock, LogEntry? none) = EffortClock.Standing.Start(Entry("1", LogKind.Effort, 0, trailer: "plain craw"));
        Assert.Null(none);
        Assert.Equal(600, clock.RunningS(Start.AddMinutes(10)), 6);
        (clock, LogEntry? first) = clock.Change("2", Start.AddMinutes(25), new RigUsed(null, "twin tail", null, null));
        (clock, LogEntry? second) = clock.Stop(Start.AddMinutes(40));
        Assert.False(clock.IsRunning);
        Assert.Equal((25.0, "plain craw"), ((first!.Until!.Value - first.At).TotalMinutes, first.Rig.Trailer));
        Assert.Equal((15.0, "twin tail"), ((second!.Until!.Value - second.At).TotalMinutes, second.Rig.Trailer));
        Assert.Null(clock.Stop(Start.AddMinutes(60)).Done);
    }
}
