using SecondShore.App.Pace;

namespace SecondShore.App.Tests.Pace;

public class WorkPaceTests
{
    // Two parts: the first is told in ten even ticks over 10 s, the second tells nothing for its 30 s.
    private static readonly WorkRun Known = new([.. Enumerable.Range(0, 11).Select(i => (i / 10.0, (double)i))], 40);

    [Fact]
    public void A_first_run_gives_its_step_and_no_seconds()
    {
        WorkPace pace = new([], 1, 3);
        pace.Told(0.5, 3);
        WorkLeft left = pace.At(4);
        Assert.Null(left.LeftS);
        Assert.False(left.Overdue);
        Assert.Equal(0.125, left.Share, 9);
    }

    [Fact]
    public void What_is_left_is_the_median_of_the_former_runs_and_counts_down_between_ticks()
    {
        WorkPace pace = new([Known, Slower(1.5), Slower(0.5)], 1, 1);
        pace.Told(0.5, 5);
        Assert.Equal(35, pace.At(5).LeftS!.Value, 6);
        Assert.Equal(34.5, pace.At(5.5).LeftS!.Value, 6);
        Assert.Equal(5.5 / 40, pace.At(5.5).Share, 6);
    }

    [Fact]
    public void A_faster_run_is_not_promised_to_end_sooner_than_the_median()
    {
        WorkPace pace = new([Known], 1, 1);
        pace.Told(0.8, 2);
        Assert.Equal(32, pace.At(2).LeftS!.Value, 6);
    }

    [Fact]
    public void A_run_three_times_as_slow_up_to_here_is_expected_to_go_on_so()
    {
        WorkPace pace = new([Known], 1, 1);
        for (int i = 1; i <= 10; i++) pace.Told(i / 10.0, 3 * i);
        Assert.InRange(pace.At(30).LeftS!.Value, 60, 90);
    }

    [Fact]
    public void An_overdue_step_never_counts_down_to_nothing_and_then_gives_no_seconds()
    {
        WorkPace pace = new([Known], 1, 1);
        pace.Told(0.5, 5);
        for (double s = 5; s < 8.4; s += 0.1) Assert.True(pace.At(s).LeftS >= 34 - 1e-9, $"less than the former run still needed from its next tick, at {s} s");
        WorkLeft late = pace.At(60);
        Assert.True(late.Overdue);
        Assert.Null(late.LeftS);
    }

    [Fact]
    public void The_bar_never_goes_back()
    {
        WorkPace pace = new([Known, Slower(2)], 1, 1);
        double before = 0;
        for (int i = 0; i < 200; i++)
        {
            if (i % 7 == 0 && i < 70) pace.Told(i / 70.0, i);
            double share = pace.At(i).Share;
            Assert.InRange(share, before, 1);
            before = share;
        }
    }

    [Fact]
    public void A_run_that_knows_the_first_steps_already_is_placed_where_it_is()
    {
        WorkPace pace = new([Known], 1, 1);
        pace.Begin(1, 0.2);
        Assert.Equal(30, pace.At(0.2).LeftS!.Value, 6);
    }

    [Fact]
    public void Kept_runs_read_back_and_the_oldest_go()
    {
        IReadOnlyList<WorkRun> runs = [];
        for (int i = 0; i < 12; i++) runs = FormerRuns.Parse(FormerRuns.With(runs, Slower(1 + (0.1 * i))));
        Assert.Equal(FormerRuns.Most, runs.Count);
        Assert.Equal(40 * 2.1, runs[^1].TookS, 2);
        Assert.Equal(5 * 2.1, runs[^1].SecondAt(0.5), 1);
    }

    [Theory]
    [InlineData("")]
    [InlineData("0.5@2")]
    [InlineData("0.5@2 =1")]
    [InlineData("0.5@2 0.4@3 =5")]
    [InlineData("0.5@two =5")]
    [InlineData("=-1")]
    [InlineData("@ =5")]
    public void A_line_that_is_no_run_is_left_out(string line) => Assert.Empty(FormerRuns.Parse(line));

    private static WorkRun Slower(double times) => new([.. Known.Ticks.Select(t => (t.Place, t.SecondS * times))], Known.TookS * times);

    [Fact]
    public void A_run_that_is_kept_keeps_the_last_word_before_a_silence()
    {
        WorkRun run = new([.. Enumerable.Range(0, 41).Select(i => (i / 50.0, i / 40.0))], 30);
        WorkRun kept = WorkRun.Parse(run.ToString())!;
        Assert.Equal((0.8, 1.0), kept.Ticks.Last());
        Assert.True(kept.Ticks.Count() < 5, run.ToString());
    }
}
