using System.Diagnostics;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Day;
using SecondShore.Engine.Tests.Day;
using SecondShore.TestKit.Figures;

namespace SecondShore.Bench;

/// <summary>How near to the bound the search comes on many stops, and how long it takes.</summary>
internal sealed class DayPlanLarge : IFigure
{
    public string Name => "day-plan-large";

    public string Claim => "plans of 20 to 60 stops come within 3 % of a bound that no plan can beat, in 300 ms";

    public FigureMargin Margin => FigureMargin.OfValue(0.3);

    public IEnumerable<Measured> Measure()
    {
        List<double> gaps = [], times = [];
        foreach (int stops in (int[])[20, 30, 40, 50, 60])
        {
            double worst = 0, slowest = 0, sum = 0;
            const int days = 10;
            for (int i = -1; i < days; i++)
            {
                PlanProblem problem = RandomDays.Make(new SeededRandom(60, (ulong)((stops * 100) + Math.Max(i, 0))), stops, 120, 300);
                TimeSpan before = Process.GetCurrentProcess().TotalProcessorTime;
                (PlanSteps plan, double bound) = SearchPlanner.Solve(problem, SearchPlanner.UsualRounds, SearchPlanner.UsualPriceRounds, 1);
                double ms = (Process.GetCurrentProcess().TotalProcessorTime - before).TotalMilliseconds, gap = (bound - plan.Value) / bound;
                if (i < 0) continue;
                gaps.Add(gap);
                times.Add(ms);
                sum += gap;
                worst = Math.Max(worst, gap);
                slowest = Math.Max(slowest, ms);
            }

            yield return new Measured($"day-plan-gap-mean-{stops}", 100 * sum / days, "%", "Lagrangian bound, 10 random days of 10 h in 5 min steps", FigureMargin.Within(0.1));
            yield return new Measured($"day-plan-gap-worst-{stops}", 100 * worst, "%", "Lagrangian bound, 10 random days", FigureMargin.Within(0.1));
            yield return new Measured($"day-plan-time-worst-{stops}", slowest, "ms", "10 random days, processor time");
        }

        gaps.Sort();
        times.Sort();
        yield return new Measured("day-plan-gap-worst", 100 * gaps[^1], "%", "Lagrangian bound, 50 random days", FigureMargin.Within(0.1));
        yield return new Measured("day-plan-time-median", times[times.Count / 2], "ms", "50 random days, processor time");
    }
}
