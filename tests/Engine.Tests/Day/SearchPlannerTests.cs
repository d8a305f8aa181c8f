using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Day;

namespace SecondShore.Engine.Tests.Day;

public class SearchPlannerTests
{
    [Fact]
    public void The_bound_holds_and_the_search_finds_the_best_of_small_days()
    {
        int found = 0;
        double worst = 0;
        for (int i = 0; i < 60; i++)
        {
            PlanProblem problem = RandomDays.Make(new SeededRandom(51, (ulong)i), 9, 60, 600, breaks: i % 2);
            PlanSteps exact = ExactPlanner.Solve(problem, TestContext.Current.CancellationToken);
            (PlanSteps plan, double bound) = SearchPlanner.Solve(problem, 10, 30, 1, TestContext.Current.CancellationToken);
            Assert.True(bound >= exact.Value - 1e-9, $"Day {i}: bound {bound} under the best plan {exact.Value}.");
            Assert.True(plan.Value <= exact.Value + 1e-9);
            Assert.Equal(plan.Value, problem.ValueOf(plan.Moves, plan.HomeStep), 6);
            ExactPlannerTests.AssertLegal(problem, plan);
            if (plan.Value > exact.Value - 1e-6) found++;
            worst = Math.Max(worst, (exact.Value - plan.Value) / (exact.Value % PlanProblem.MustReward));
        }

        Assert.True(found >= 55, $"Only {found} of 60 days were solved to the best plan.");
        Assert.True(worst < 0.02, $"Worst gap {worst:P2}.");
    }

    [Fact]
    public void Sixty_stops_come_within_a_few_percent_of_the_bound()
    {
        double sum = 0;
        for (int i = 0; i < 4; i++)
        {
            PlanProblem problem = RandomDays.Make(new SeededRandom(52, (ulong)i), 60, 120, 300);
            (PlanSteps plan, double bound) = SearchPlanner.Solve(problem, 8, 60, 1, TestContext.Current.CancellationToken);
            ExactPlannerTests.AssertLegal(problem, plan);
            sum += (bound - plan.Value) / bound;
        }

        Assert.True(sum / 4 < 0.05, $"Mean gap to the bound {sum / 4:P2}.");
    }
}
