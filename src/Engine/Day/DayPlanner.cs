using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Words;

namespace SecondShore.Engine.Day;

/// <summary>Makes the day's plan: which stops, in which order, from when to when, and home in time.</summary>
/// <remarks>
/// Up to <see cref="ExactUpTo"/> stops and breaks the plan is the best of all on its steps of time; above, a search comes
/// near it and says how near (<see cref="DayPlan.GapShare"/>). The same request gives the same plan.
/// </remarks>
public static class DayPlanner
{
    /// <summary>Stops and breaks up to which the best plan is found for certain.</summary>
    public static readonly int ExactUpTo = 10;

    /// <summary>Candidates weighed at most.</summary>
    public static readonly int MostCandidates = 60;

    /// <summary>Plans a day.</summary>
    /// <param name="request">What is asked.</param>
    /// <param name="travel">Times of runs between the request's <see cref="PlanRequest.RoutePlaces"/>.</param>
    /// <param name="withAlternatives">Whether to make the plans that differ in kind as well.</param>
    /// <param name="cancel">Ends the work early with an exception.</param>
    public static DayPlan Plan(PlanRequest request, ITravelTimes travel, bool withAlternatives = true, CancellationToken cancel = default)
    {
        Require.NotNull(request);
        Require.NotNull(travel);
        DayPlan plan = PlanWithFuel(request, travel, cancel);
        return withAlternatives ? plan with { Alternatives = DayAlternatives.Of(request, plan, travel, cancel) } : plan;
    }

    /// <summary>The plans that differ in kind from a plan.</summary>
    /// <param name="request">What the plan was asked with.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="travel">Times of runs as for the plan.</param>
    /// <param name="cancel">Ends the work early with an exception.</param>
    public static IReadOnlyList<DayAlternative> Alternatives(PlanRequest request, DayPlan plan, ITravelTimes travel, CancellationToken cancel = default) =>
        DayAlternatives.Of(Require.NotNull(request), Require.NotNull(plan), Require.NotNull(travel), cancel);

    /// <summary>When the boat must be home, and why, in words without 'because'.</summary>
    public static (DateTimeOffset At, string Why) HomeBy(PlanRequest request)
    {
        Require.NotNull(request);
        Speech speech = request.Speech;
        (DateTimeOffset at, string why) = (request.CheckIn, speech.Say($"you want to be in by {speech.Clock(request.CheckIn)}"));
        if (request.DarkAt is DateTimeOffset dark && dark < at) (at, why) = (dark, speech.Say($"it is dark at {speech.Clock(dark)}"));
        if (request.WindLimitAt is DateTimeOffset wind && wind < at) (at, why) = (wind, speech.Say($"wind and waves pass what your boat bears at {speech.Clock(wind)}"));
        return (at - request.Reserve, why);
    }

    internal static DayPlan PlanWithFuel(PlanRequest request, ITravelTimes travel, CancellationToken cancel)
    {
        DayPlan plan = PlanOnce(request, travel, cancel);
        if (request.Boat.FuelL is not double tankL) return plan;
        double worthPerH = Math.Max(0.25, request.RunWorthPerH);
        for (int i = 0; i < 7 && plan.FuelL > tankL; i++)
        {
            worthPerH *= 2;
            plan = PlanOnce(request with { RunWorthPerH = worthPerH }, travel, cancel);
        }

        return plan.FuelL <= tankL ? plan : plan with { Unmet = [.. plan.Unmet, request.Speech.Plain("No plan keeps to the fuel you gave; this one uses the least found.")] };
    }

    private static DayPlan PlanOnce(PlanRequest request, ITravelTimes travel, CancellationToken cancel)
    {
        (List<int> kept, List<string> unmet) = Candidates(request);
        DateTimeOffset homeBy = HomeBy(request).At;
        int lastStep = (int)Math.Floor(Math.Max(0, (homeBy - request.StartAt).TotalSeconds) / request.StepS);
        if (lastStep > 5000) throw new ArgumentException($"A day of {lastStep} steps of {request.StepS} s is too long: plan days one by one.", nameof(request));
        if (kept.Count == 0 || lastStep == 0)
        {
            if (lastStep == 0) unmet.Add(request.Speech.Say($"There is no time left: home is due by {request.Speech.Clock(homeBy)}."));
            return DayPlanBuilder.Build(request, travel, kept, PlanSteps.Nothing, 0, unmet);
        }

        PlanProblem problem = Problem(request, travel, kept, lastStep);
        PlanSteps steps;
        double bound;
        if (kept.Count + problem.Breaks.Count <= ExactUpTo)
        {
            steps = ExactPlanner.Solve(problem, cancel);
            bound = steps.Value;
        }
        else
        {
            (steps, bound) = SearchPlanner.Solve(problem, SearchPlanner.UsualRounds, SearchPlanner.UsualPriceRounds, request.Seed, cancel);
        }

        Missed(request, kept, problem, steps, unmet);
        double value = steps.Value - (PlanProblem.MustReward * Math.Floor((steps.Value + 1) / PlanProblem.MustReward));
        double gap = value > 0 ? Math.Max(0, bound - steps.Value) / value : 0;
        return DayPlanBuilder.Build(request, travel, kept, steps, gap, unmet);
    }

    private static (List<int> Kept, List<string> Unmet) Candidates(PlanRequest request)
    {
        List<string> unmet = [];
        List<int> kept = [];
        for (int i = 0; i < request.Candidates.Count; i++)
            if (!Contains(request.Never, request.Candidates[i].Id)) kept.Add(i);
        foreach (string id in request.Must)
        {
            bool known = false;
            foreach (StopCandidate candidate in request.Candidates) known |= candidate.Id == id;
            if (!known) unmet.Add(request.Speech.Say($"No spot has the id '{id}' that must be visited."));
            else if (Contains(request.Never, id)) unmet.Add(request.Speech.Say($"Spot '{id}' is marked both must and never; never wins."));
        }

        if (kept.Count <= MostCandidates) return (kept, unmet);
        kept.Sort((a, b) => Worth(b).CompareTo(Worth(a)));
        unmet.Add(request.Speech.Say($"Of {kept.Count} spots the {MostCandidates} with the best hours were weighed."));
        kept.RemoveRange(MostCandidates, kept.Count - MostCandidates);
        kept.Sort();
        return (kept, unmet);

        double Worth(int i)
        {
            double best = Contains(request.Must, request.Candidates[i].Id) ? 1e9 : 0;
            foreach (double rate in request.Candidates[i].Bites.RatesPerH) best = Math.Max(best, rate);
            return best;
        }
    }

    internal static bool Contains(IReadOnlyCollection<string> ids, string id)
    {
        foreach (string one in ids)
            if (one == id) return true;
        return false;
    }

    private static PlanProblem Problem(PlanRequest request, ITravelTimes travel, List<int> kept, int lastStep)
    {
        double stepS = request.StepS;
        List<StopOnSteps> stops = [];
        double[] perStep = new double[lastStep];
        foreach (int i in kept)
        {
            StopCandidate candidate = request.Candidates[i];
            for (int t = 0; t < lastStep; t++)
                perStep[t] = candidate.Bites.AtPerH(request.StartAt.AddSeconds((t + 0.5) * stepS)) * stepS / 3600.0;
            stops.Add(StopOnSteps.Of(perStep, Require.InRange(candidate.TiringPerH, 0, 3) * stepS / 3600.0, candidate.FishedH * 3600.0 / stepS,
                (int)Math.Ceiling(candidate.LeastStayS / stepS), Contains(request.Must, candidate.Id) ? PlanProblem.MustReward : 0));
        }

        List<BreakOnSteps> breaks = [];
        foreach (PlannedBreak pause in request.Breaks)
        {
            int earliest = (int)Math.Ceiling((pause.EarliestStart - request.StartAt).TotalSeconds / stepS);
            int latest = (int)Math.Floor((pause.LatestStart - request.StartAt).TotalSeconds / stepS);
            if (latest >= 0 && earliest <= lastStep)
                breaks.Add(new BreakOnSteps(Math.Max(0, earliest), Math.Min(latest, lastStep), (int)Math.Ceiling(pause.Length.TotalSeconds / stepS)));
        }

        int perSlot = Math.Max(1, (int)Math.Round(3600.0 / stepS));
        return new PlanProblem(stepS, lastStep, stops, breaks, Runs(request, travel, kept, lastStep, perSlot), perSlot,
            request.RunWorthPerH * stepS / 3600.0);
    }

    private static int[] Runs(PlanRequest request, ITravelTimes travel, List<int> kept, int lastStep, int perSlot)
    {
        int nodes = kept.Count + 2, slots = (lastStep / perSlot) + 1, start = request.Candidates.Count;
        int[] runs = new int[slots * nodes * nodes];
        for (int slot = 0; slot < slots; slot++)
        {
            DateTimeOffset at = request.StartAt.AddSeconds(slot * perSlot * request.StepS);
            for (int i = 0; i < nodes; i++)
            {
                for (int j = 0; j < nodes; j++)
                {
                    int steps = PlanProblem.Unreachable;
                    bool makesSense = i != j && i != kept.Count + 1 && j != kept.Count;
                    if (makesSense)
                    {
                        double travelS = travel.TravelS(Place(i), Place(j), at) + (j < kept.Count ? request.Boat.StowS : 0);
                        if (travelS < 1e6) steps = Math.Max(1, (int)Math.Ceiling((travelS - 1e-6) / request.StepS));
                    }

                    runs[(((slot * nodes) + i) * nodes) + j] = steps;
                }
            }
        }

        return runs;

        int Place(int node) => node < kept.Count ? kept[node] : start + node - kept.Count;
    }

    private static void Missed(PlanRequest request, List<int> kept, PlanProblem problem, PlanSteps steps, List<string> unmet)
    {
        HashSet<int> visited = [];
        int pauses = 0;
        foreach (PlanMove move in steps.Moves)
        {
            if (move.IsBreak) pauses++;
            else visited.Add(move.Index);
        }

        for (int i = 0; i < kept.Count; i++)
        {
            StopCandidate candidate = request.Candidates[kept[i]];
            if (Contains(request.Must, candidate.Id) && !visited.Contains(i))
                unmet.Add(request.Speech.Say($"{candidate.Name} cannot be reached and left again in time."));
        }

        if (pauses < problem.Breaks.Count) unmet.Add(request.Speech.Plain("Not every break found a place."));
    }
}
