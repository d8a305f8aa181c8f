using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Learn;

namespace SecondShore.Engine.Tests.Learn;

public class LeaveRuleTests
{
    [Fact]
    public void Rate_and_no_fish_odds_match_the_check_values()
    {
        Assert.Equal(0.611111, LeaveRule.RatePerH(new StopBelief(1.5, 3, 0), 6, 4), 1e-5);
        Assert.Equal(2.04082, StopBelief.Of(0.5, 0.7, 0).Shape, 1e-3);
    }

    [Fact]
    public void Good_news_to_come_makes_the_stay_longer_than_the_myopic_rule_and_never_shorter()
    {
        var belief = new StopBelief(1.5, 3, 0);
        // The myopic time without tiring is (shape + n)/R - effort = 2 h (check value K09).
        double stayH = LeaveRule.StayIfNoBiteH(belief, 0, 0, 0.3);
        Assert.InRange(stayH, 2.0, 5.0);
        Assert.Equal(0, LeaveRule.StayIfNoBiteH(belief, 0, 0, 3.0));
        double last = 6;
        for (double elsewhere = 0.1; elsewhere < 1.0; elsewhere += 0.05)
        {
            double here = LeaveRule.StayIfNoBiteH(belief, 0, 0, elsewhere);
            Assert.True(here <= last + 1e-9);
            last = here;
        }
    }

    [Fact]
    public void A_sure_tiring_place_is_left_where_the_marginal_value_says()
    {
        // Nothing to learn: shape so large that the rate is known. K12: r 1 per h, travel 0.25 h, best stay 0.6327 h.
        var belief = new StopBelief(1e7, 1e7, 1.0);
        double elsewhere = LeaveRule.LongRunPerH(belief, 0.25);
        Assert.Equal(0.632715, LeaveRule.StayIfNoBiteH(belief, 0, 0, elsewhere), 1.0 / 12.0);
        Assert.Equal(Math.Exp(-0.632715), elsewhere, 0.01);
    }

    [Fact]
    public void A_bite_buys_time_and_the_words_say_so()
    {
        LeaveAdvice advice = LeaveRule.Advise(StopBelief.Of(0.8, 1.0, 0.5), 0.5, 0, 0.5);
        Assert.True(advice.BiteBuysH > 0);
        Assert.Contains("no bite in 30 minutes", advice.Why, StringComparison.Ordinal);
        Assert.True(LeaveRule.Advise(StopBelief.Of(0.8, 1.0, 0.5), 3, 0, 0.5).Leave);
        Assert.False(LeaveRule.Advise(StopBelief.Of(0.8, 1.0, 0.5), 0, 0, 0).Leave);
    }

    [Fact]
    public void Leaving_by_the_rule_gains_a_tenth_over_half_an_hour_at_every_stop()
    {
        (double day, double rule, double fixedHalf) = LeaveDays.Run(2000, 3);
        Assert.True(day > 1.10 * fixedHalf, $"{day:F3} against {fixedHalf:F3} bites an hour");
        Assert.True(rule > 1.08 * fixedHalf, $"{rule:F3} against {fixedHalf:F3} bites an hour");
        Assert.True(day > 0.99 * rule, $"{day:F3} with the day's end in view, {rule:F3} without");
    }

    [Fact]
    public void Near_the_end_of_the_day_there_is_nowhere_to_go()
    {
        var belief = StopBelief.Of(0.8, 0.9, 0.6);
        LeaveDay day = new(belief, 0.25, 8);
        Assert.True(day.Leaves(1.5, 0, 6));
        Assert.False(day.Leaves(1.5, 0, 0.2));
        Assert.False(day.Leaves(0.1, 3, 6));
        Assert.Equal(0, day.ArrivingBitesCount(0));
        Assert.True(day.ArrivingBitesCount(8) > day.ArrivingBitesCount(4));
        // One stop alone: with so far to the next, the day is worth the mean of staying.
        LeaveDay far = new(belief, 8, 2);
        Assert.Equal(0.8 * (1 - Math.Exp(-0.6 * 2)) / 0.6, far.ArrivingBitesCount(2), 0.01);
    }
}
