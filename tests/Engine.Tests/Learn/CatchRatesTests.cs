using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Learn;

namespace SecondShore.Engine.Tests.Learn;

public class CatchRatesTests
{
    private static readonly CatchPriors OnlyTrailer = CatchPriors.Default with { Factors = ["trailer", "day"], Rules = [] };

    [Fact]
    public void Built_in_priors_are_read_and_a_broken_file_is_refused_in_a_sentence()
    {
        Assert.Contains("layer", CatchPriors.Default.Factors);
        Assert.Equal(1.3, CatchPriors.Default.FactorOf("colour", "dark brown", ["eats crayfish"]), 9);
        Assert.Equal(1.0, CatchPriors.Default.FactorOf("colour", "dark brown", []), 9);
        foreach (string bad in (string[])["", "{", "[]", "{\"bites_per_hour\":{\"mean\":0.5}}", "{\"bites_per_hour\":{\"mean\":0.5,\"sd\":1},\"factors\":[{\"name\":\"a\"}],\"rules\":[{\"factor\":\"b\",\"level\":\"c\",\"times\":2}]}"])
        {
            Assert.False(CatchPriors.TryParse(bad, out CatchPriors? none, out string problem));
            Assert.Null(none);
            Assert.True(problem.Length is > 20 and < 300, problem);
        }
    }

    [Fact]
    public void Without_a_log_the_belief_is_the_prior()
    {
        CatchRates rates = CatchRates.Learn([], OnlyTrailer, [], 3, 2000);
        // Gamma of mean 0.8 and sd 0.7: quantiles by the incomplete gamma function.
        Assert.InRange(rates.BasePerH.P10, 0.10, 0.18);
        Assert.InRange(rates.BasePerH.P50, 0.55, 0.66);
        Assert.InRange(rates.BasePerH.P90, 1.55, 1.90);
        IReadOnlyList<ChoiceRate> by = rates.By("trailer", ["a", "b", "c", "d"]);
        Assert.All(by, r => Assert.InRange(r.BestChance, 0.2, 0.3));
        Assert.Equal(1.0, by.Sum(r => r.BestChance), 9);
    }

    [Fact]
    public void With_much_effort_the_belief_is_the_count_over_the_hours()
    {
        List<EffortSpan> spans = [];
        for (int i = 0; i < 200; i++)
        {
            spans.Add(Span(i, "plain craw", 2.0, 1));
            spans.Add(Span(i, "twin tail", 2.0, 3));
        }

        IReadOnlyList<ChoiceRate> by = CatchRates.Learn(spans, OnlyTrailer, []).By("trailer");
        Assert.Equal("twin tail", by[0].Level);
        Assert.InRange(by[0].MeanPerH, 1.3, 1.7);
        Assert.InRange(by[1].MeanPerH, 0.42, 0.6);
        Assert.True(by[0].BestChance > 0.99);
        Assert.Equal((400.0, 600), (by[0].HoursH, by[0].BitesCount));
    }

    [Fact]
    public void Two_bites_are_two_bites()
    {
        CatchRates rates = CatchRates.Learn([Span(0, "twin tail", 1, 2), Span(0, "plain craw", 1, 0)], OnlyTrailer, []);
        IReadOnlyList<ChoiceRate> by = rates.By("trailer");
        Assert.Equal("twin tail", by[0].Level);
        Assert.InRange(by[0].BestChance, 0.55, 0.9);
        Assert.True(by[0].RatePerH.P90 > 3 * by[0].RatePerH.P10, "The interval is wide.");
        TryAdvice advice = TryAdvice.For(rates, "trailer", ["twin tail", "plain craw"], 0.5);
        Assert.Contains("two bites are only two bites", advice.Why.Say(UnitSystem.Feet), StringComparison.Ordinal);
    }

    [Fact]
    public void Sparse_levels_lean_on_the_rest()
    {
        List<EffortSpan> spans = [];
        for (int i = 0; i < 60; i++) spans.Add(Span(i, "plain craw", 2, 2));
        spans.Add(Span(60, "slim", 0.5, 0));
        IReadOnlyList<ChoiceRate> by = CatchRates.Learn(spans, OnlyTrailer, []).By("trailer");
        Assert.InRange(by[0].MeanPerH, 0.85, 1.2);
        Assert.InRange(by[1].MeanPerH, 0.4, 1.0);
    }

    [Fact]
    public void The_same_log_and_seed_give_the_same_answer()
    {
        EffortSpan[] spans = [Span(0, "a", 1, 2), Span(1, "b", 1, 0), Span(2, "a", 2, 1)];
        Assert.Equal(CatchRates.Learn(spans, OnlyTrailer, [], 9).By("trailer"), CatchRates.Learn(spans, OnlyTrailer, [], 9).By("trailer"));
    }

    [Fact]
    public void What_the_fish_eat_chooses_the_first_colour()
    {
        IReadOnlyCollection<string> conditions = CatchFactors.Conditions(2.0, 18, false, ["crayfish"]);
        CatchRates rates = CatchRates.Learn([], CatchPriors.Default, conditions);
        IReadOnlyList<ChoiceRate> by = rates.By("colour", ["white", "brown"]);
        Assert.Equal("brown", by[0].Level);
        Assert.InRange(by[0].BestChance, 0.5, 0.8);
        TryAdvice advice = TryAdvice.For(rates, "colour", ["brown"], 0.5, CatchPriors.Default, conditions);
        Assert.Contains("eating crayfish", advice.Why.Say(UnitSystem.Feet), StringComparison.Ordinal);
    }

    [Fact]
    public void With_time_ahead_the_untried_is_tried_and_with_none_the_best_is_fished()
    {
        // Known at 1.0 against 0.9 that may be anything.
        double[][] draws = [[0.95, 1.0, 1.05], [0.1, 0.6, 2.0]];
        Assert.Equal(1, LookAhead.Best(draws, 20));
        Assert.Equal(0, LookAhead.Best(draws, 0.25));
    }

    [Fact]
    public void Intervals_of_simulated_logs_cover_and_choosing_beats_rotation()
    {
        LearnScore score = LearnSeasons.Run(24, 11, oracles: []);
        Assert.InRange(score.Coverage, 0.68, 0.92);
        Assert.True(score.LearnLoss < 0.55 * score.RotationLoss, $"{score.LearnLoss} against {score.RotationLoss}");
    }

    internal static EffortSpan Span(int day, string trailer, double hoursH, int bites) => new(new LogEntry
    {
        Id = $"{day}-{trailer}",
        Kind = LogKind.Effort,
        At = new DateTimeOffset(2026, 8, 1, 8, 0, 0, TimeSpan.Zero).AddDays(day),
        Until = new DateTimeOffset(2026, 8, 1, 8, 0, 0, TimeSpan.Zero).AddDays(day).AddHours(hoursH),
        Rig = new RigUsed(null, trailer, null, null),
    }, hoursH, bites, 0, 0);
}
