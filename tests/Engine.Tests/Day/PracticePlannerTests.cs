using SecondShore.Engine.Day;

namespace SecondShore.Engine.Tests.Day;

public class PracticePlannerTests
{
    private static readonly string[] Forms = ["hump", "ledge", "point", "bluff end"];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    // Sixteen places of four kinds in two depths; the first kind is believed to be far the best.
    private static PlanRequest Request()
    {
        PlanRequest request = DayPlannerTests.Request(16);
        return request with
        {
            Candidates =
            [
                .. request.Candidates.Select((c, i) => c with
                {
                    Form = Forms[i % 4],
                    DepthM = i < 8 ? 6 : 10,
                    Bites = c.Bites.Map((_, _) => i % 4 == 0 ? 1.5 : 0.5),
                    BitesIfMixed = null,
                }),
            ],
        };
    }

    [Fact]
    public void Practice_tells_of_more_kinds_than_the_day_that_counts_and_stays_shorter()
    {
        PlanRequest request = Request();
        var travel = new DayPlannerTests.Straight(request);
        DayPlan best = DayPlanner.Plan(request, travel, false, Cancel);
        DayPlan practice = PracticePlanner.Plan(request, travel, new Dictionary<string, int>(), Cancel);
        Assert.True(Cells(practice) > Cells(best), $"{Cells(practice)} against {Cells(best)} kinds");
        Assert.True(practice.Stops.Count > best.Stops.Count);
        Assert.True(practice.MeanBitesCount < best.MeanBitesCount);
        Assert.Equal(practice.MeanBitesCount, practice.Stops.Sum(s => s.BitesCount), 9);
        Assert.All(practice.Stops, s => Assert.Contains(s.Candidate, request.Candidates));
        Assert.Contains("no ", practice.Stops[0].Why, StringComparison.Ordinal);
        DayPlannerTests.AssertConsistent(request, practice);
    }

    [Fact]
    public void What_was_covered_counts_for_less_the_next_day()
    {
        PlanRequest request = Request();
        var travel = new DayPlannerTests.Straight(request);
        Dictionary<string, int> humps = new() { [PracticePlanner.CellOf(request.Candidates[0])] = 5, [PracticePlanner.CellOf(request.Candidates[8])] = 5 };
        int before = PracticePlanner.Plan(request, travel, new Dictionary<string, int>(), Cancel).Stops.Count(s => s.Candidate.Form == "hump");
        int after = PracticePlanner.Plan(request, travel, humps, Cancel).Stops.Count(s => s.Candidate.Form == "hump");
        Assert.True(after < before, $"{after} humps after five of each, {before} before");
    }

    private static int Cells(DayPlan plan) => plan.Stops.Select(s => PracticePlanner.CellOf(s.Candidate)).Distinct().Count();
}
