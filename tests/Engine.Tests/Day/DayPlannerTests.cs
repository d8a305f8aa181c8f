using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Day;

namespace SecondShore.Engine.Tests.Day;

public class DayPlannerTests
{
    private static readonly DateTimeOffset Six = new(2026, 10, 10, 6, 30, 0, TimeSpan.FromHours(-5));
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public void A_plan_starts_ends_and_runs_as_the_clock_and_the_water_allow()
    {
        PlanRequest request = Request(14);
        DayPlan plan = DayPlanner.Plan(request, new Straight(request), cancel: Cancel);
        Assert.True(plan.Stops.Count >= 3);
        AssertConsistent(request, plan);
        Assert.True(plan.Bites.IsOrdered && plan.Bites.P10 < plan.MeanBitesCount && plan.MeanBitesCount < plan.Bites.P90);
        Assert.All(plan.Stops, s => Assert.NotEmpty(s.Why));
        Assert.NotEmpty(plan.Why);
        Assert.Contains("home by", plan.Title, StringComparison.Ordinal);
        Assert.InRange(plan.GapShare, 0, 0.05);
    }

    [Fact]
    public void Must_is_visited_never_is_not_and_a_break_is_taken()
    {
        PlanRequest request = Request(9) with
        {
            Must = ["s8"],
            Never = ["s0"],
            Breaks = [new PlannedBreak(Six.AddHours(4), Six.AddHours(6), TimeSpan.FromMinutes(30))],
        };
        DayPlan free = DayPlanner.Plan(Request(9), new Straight(request), false, Cancel);
        Assert.Contains(free.Stops, s => s.Candidate.Id == "s0");
        DayPlan plan = DayPlanner.Plan(request, new Straight(request), false, Cancel);
        Assert.Contains(plan.Stops, s => s.Candidate.Id == "s8");
        Assert.DoesNotContain(plan.Stops, s => s.Candidate.Id == "s0");
        PlannedPause pause = Assert.Single(plan.Pauses);
        Assert.Equal(30, (pause.To - pause.From).TotalMinutes, 6);
        Assert.Empty(plan.Unmet);
        AssertConsistent(request, plan);
    }

    [Fact]
    public void Home_is_before_dark_and_before_the_wind_with_time_in_hand()
    {
        PlanRequest request = Request(8) with { DarkAt = Six.AddHours(9), WindLimitAt = Six.AddHours(7), Reserve = TimeSpan.FromMinutes(25) };
        DayPlan plan = DayPlanner.Plan(request, new Straight(request), false, Cancel);
        Assert.True(plan.Home <= Six.AddHours(7).AddMinutes(-25));
        Assert.Contains("wind", plan.HomeByWhy, StringComparison.Ordinal);
    }

    [Fact]
    public void What_cannot_be_done_is_said_and_nothing_is_invented()
    {
        PlanRequest request = Request(6) with { Must = ["nowhere", "s5"], CheckIn = Six.AddMinutes(15) };
        DayPlan plan = DayPlanner.Plan(request, new Straight(request), cancel: Cancel);
        Assert.Empty(plan.Stops);
        Assert.Equal(0, plan.MeanBitesCount);
        Assert.Contains(plan.Unmet, u => u.Contains("nowhere", StringComparison.Ordinal));
        Assert.Contains(plan.Unmet, u => u.Contains("no time left", StringComparison.Ordinal));
    }

    [Fact]
    public void From_here_and_now_the_plan_goes_on_and_a_tired_place_counts_for_less()
    {
        PlanRequest request = Request(8);
        DayPlan plan = DayPlanner.Plan(request, new Straight(request), false, Cancel);
        PlannedStop first = plan.Stops[0];
        PlanRequest later = request.FromHere(first.Leave, first.Candidate.Place,
            new Dictionary<string, double> { [first.Candidate.Id] = (first.Leave - first.Arrive).TotalHours });
        DayPlan again = DayPlanner.Plan(later, new Straight(later), false, Cancel);
        Assert.True(again.Launch >= first.Leave);
        Assert.Equal(plan.Stops.Skip(1).Select(s => s.Candidate.Id), again.Stops.Select(s => s.Candidate.Id));
        Assert.Equal(plan.MeanBitesCount - first.BitesCount, again.MeanBitesCount, 0.35);
    }

    [Fact]
    public void Alternatives_differ_from_the_plan_and_say_what_they_cost()
    {
        PlanRequest request = Request(12) with { Sea = new RoughEast() };
        DayPlan plan = DayPlanner.Plan(request, new Straight(request), cancel: Cancel);
        Assert.Contains(plan.Alternatives, a => a.Kind == AlternativeKind.NearRamp);
        Assert.Contains(plan.Alternatives, a => a.Kind == AlternativeKind.Sheltered);
        foreach (DayAlternative other in plan.Alternatives)
        {
            Assert.NotEqual(plan.Stops.Select(s => s.Candidate.Id).Order(), other.Plan.Stops.Select(s => s.Candidate.Id).Order());
            Assert.Contains("bites", other.Words, StringComparison.Ordinal);
        }

        DayPlan sheltered = plan.Alternatives.First(a => a.Kind == AlternativeKind.Sheltered).Plan;
        Assert.All(sheltered.Stops, s => Assert.True(s.WaveM <= 0.5));
    }

    [Fact]
    public void Little_fuel_keeps_the_boat_near()
    {
        PlanRequest request = Request(12);
        DayPlan far = DayPlanner.Plan(request, new Straight(request), false, Cancel);
        PlanRequest thrifty = request with { Boat = request.Boat with { FuelL = far.FuelL * 0.5 } };
        DayPlan near = DayPlanner.Plan(thrifty, new Straight(thrifty), false, Cancel);
        Assert.True(near.FuelL <= far.FuelL * 0.5, $"{near.FuelL} of {far.FuelL} L");
        Assert.Empty(near.Unmet);
    }

    internal static void AssertConsistent(PlanRequest request, DayPlan plan)
    {
        Assert.Equal(plan.Stops.Count + 1, plan.Legs.Count);
        Assert.True(plan.Launch >= request.StartAt);
        Assert.True(plan.Home <= plan.HomeBy);
        DateTimeOffset at = plan.Launch;
        for (int i = 0; i < plan.Stops.Count; i++)
        {
            Assert.True(plan.Legs[i].Leave >= at);
            Assert.Equal(plan.Stops[i].Arrive, plan.Legs[i].Arrive);
            Assert.True((plan.Stops[i].Leave - plan.Stops[i].Arrive).TotalSeconds >= plan.Stops[i].Candidate.LeastStayS);
            at = plan.Stops[i].Leave;
        }

        Assert.Equal(plan.Home, plan.Legs[^1].Arrive);
        Assert.Equal(plan.Stops.Sum(s => s.BitesCount), plan.MeanBitesCount, 9);
    }

    internal static PlanRequest Request(int stops)
    {
        var random = new SeededRandom(5);
        List<StopCandidate> candidates = [];
        for (int i = 0; i < stops; i++)
        {
            double[] rates = new double[24];
            double peak = random.NextDouble(0, 24), level = random.NextDouble(0.5, 2.0);
            for (int h = 0; h < 24; h++) rates[h] = level * (0.4 + Math.Exp(-0.02 * (h - peak) * (h - peak)));
            candidates.Add(new StopCandidate
            {
                Id = $"s{i}",
                Letter = ((char)('A' + i)).ToString(),
                Name = $"Stop {i}",
                Place = new PlanePoint(random.NextDouble(-6000, 6000), random.NextDouble(-2000, 2000)),
                DepthM = 8,
                Bites = new RateTable(Six, 1800, rates),
                RateDoubtShare = 0.3 + (0.1 * (i % 7)),
            });
        }

        candidates[0] = candidates[0] with { Bites = RateTable.Constant(Six, 2.5) };
        return new PlanRequest { Candidates = candidates, Start = new(0, 0), Home = new(0, 0), StartAt = Six, CheckIn = Six.AddHours(9) };
    }

    private sealed class RoughEast : ISeaState
    {
        public double WaveM(PlanePoint place, DateTimeOffset at) => place.XM > 0 && at > Six.AddHours(3) ? 0.6 : 0.1;
    }

    internal sealed class Straight(PlanRequest request) : ITravelTimes
    {
        private readonly IReadOnlyList<RoutePlace> _places = request.RoutePlaces;

        public double TravelS(int from, int to, DateTimeOffset leaving) => _places[from].Out.DistanceToM(_places[to].In) / 12.0;

        public WaterRoute? Route(int from, int to, DateTimeOffset leaving)
        {
            double lengthM = _places[from].Out.DistanceToM(_places[to].In);
            return new WaterRoute([_places[from].Out, _places[to].In], lengthM, lengthM / 12.0, 0);
        }

        public double GreatestWaveM(int from, int to, DateTimeOffset leaving) => 0;
    }
}
