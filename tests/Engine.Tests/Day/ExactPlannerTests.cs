using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Day;

namespace SecondShore.Engine.Tests.Day;

public class ExactPlannerTests
{
    [Fact]
    public void Plans_of_up_to_nine_stops_equal_brute_force()
    {
        // 200 random days; the largest few only, since brute force grows as the factorial (bench runs all sizes in full).
        for (int i = 0; i < 200; i++)
        {
            int stops = i < 3 ? 9 : i < 8 ? 8 : 1 + (i % 7);
            PlanProblem problem = RandomDays.Make(new SeededRandom(41, (ulong)i), stops, stops >= 8 ? 12 : 24, stops >= 8 ? 2400 : 1200);
            PlanSteps plan = ExactPlanner.Solve(problem, TestContext.Current.CancellationToken);
            Assert.Equal(RandomDays.BruteForce(problem), plan.Value, 9);
            Assert.Equal(plan.Value, problem.ValueOf(plan.Moves, plan.HomeStep), 9);
            AssertLegal(problem, plan);
        }
    }

    [Fact]
    public void A_break_is_taken_within_its_window()
    {
        for (int i = 0; i < 20; i++)
        {
            PlanProblem problem = RandomDays.Make(new SeededRandom(42, (ulong)i), 5, 48, 600, breaks: 1);
            PlanSteps plan = ExactPlanner.Solve(problem, TestContext.Current.CancellationToken);
            PlanMove pause = Assert.Single(plan.Moves, m => m.IsBreak);
            Assert.InRange(pause.From, problem.Breaks[0].EarliestStart, problem.Breaks[0].LatestStart);
            AssertLegal(problem, plan);
        }
    }

    [Fact]
    public void A_long_tiring_day_keeps_its_digits()
    {
        // 14 h at 3 per hour: growth reaches 1e18, and late stays must still be worth what the integral says.
        double[] rate = new double[168];
        Array.Fill(rate, 1.0 / 12.0);
        StopOnSteps stop = StopOnSteps.Of(rate, 3.0 / 12.0, 0, 1);
        double expected = (1.0 - Math.Exp(-3.0)) / 3.0;
        Assert.Equal(expected, stop.Gain(0, 12), 12);
        Assert.Equal(expected, stop.Gain(150, 162), 12);
    }

    internal static void AssertLegal(PlanProblem problem, PlanSteps plan)
    {
        int at = problem.StartNode, step = plan.LaunchStep;
        HashSet<int> seen = [];
        foreach (PlanMove move in plan.Moves)
        {
            if (move.IsBreak)
            {
                Assert.True(move.From >= step);
                step = move.To;
                continue;
            }

            Assert.True(seen.Add(move.Index), "A stop is visited twice.");
            int leave = move.From - move.Run;
            Assert.True(at == problem.StartNode ? leave >= step : leave == step, "Time passes without fishing or running.");
            Assert.Equal(move.Run, problem.RunSteps(at, move.Index, leave));
            Assert.True(move.To - move.From >= problem.Stops[move.Index].LeastStay);
            at = move.Index;
            step = move.To;
        }

        if (plan.Moves.Count > 0) Assert.Equal(plan.HomeStep, step + problem.RunSteps(at, problem.HomeNode, step));
        Assert.True(plan.HomeStep <= problem.LastStep);
    }
}
