using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Words;

namespace SecondShore.Engine.Day;

/// <summary>
/// A practice day: many short stops that tell most, kinds of bottom and depths that no stop has told of yet before more of
/// the same. What comes of it decides the day that counts.
/// </summary>
public static class PracticePlanner
{
    // Two depths of a kind teach different things when they lie more than a rod or so of water apart.
    private static readonly double BandM = 4;
    // A place has told most of what it will after half an hour: its telling tires this fast.
    private static readonly double TellingTiresPerH = 3;

    /// <summary>What a stop tells of: its kind of bottom and its band of depth.</summary>
    public static string CellOf(StopCandidate candidate)
    {
        Require.NotNull(candidate);
        return $"{candidate.Form}/{(int)(candidate.DepthM / BandM)}";
    }

    /// <summary>Plans a practice day.</summary>
    /// <param name="request">The day; must and never hold as on any day.</param>
    /// <param name="travel">Times of runs between the request's places.</param>
    /// <param name="covered">Stops made so far by what they tell of; see <see cref="CellOf"/>.</param>
    /// <param name="cancel">Ends the work early with an exception.</param>
    /// <returns>The plan, its bites counted as bites: practice brings fewer than a day that fishes the best.</returns>
    public static DayPlan Plan(PlanRequest request, ITravelTimes travel, IReadOnlyDictionary<string, int> covered, CancellationToken cancel = default)
    {
        Require.NotNull(request);
        Require.NotNull(covered);
        DayPlan plan = DayPlanner.Plan(request with { Candidates = [.. Telling(request.Candidates, covered)] }, travel, withAlternatives: false, cancel);
        Dictionary<string, StopCandidate> own = request.Candidates.ToDictionary(c => c.Id);
        Dictionary<string, int> seen = new(covered);
        List<PlannedStop> stops = [];
        foreach (PlannedStop stop in plan.Stops)
        {
            StopCandidate candidate = own[stop.Candidate.Id];
            string cell = CellOf(candidate);
            int before = seen.GetValueOrDefault(cell);
            seen[cell] = before + 1;
            stops.Add(stop with { Candidate = candidate, BitesCount = DayPlanBuilder.BitesOf(candidate, stop.Arrive, stop.Leave), Why = Why(candidate, before, request.Speech) });
        }

        int cells = stops.Select(s => CellOf(s.Candidate)).Distinct().Count();
        return plan with
        {
            Stops = stops,
            MeanBitesCount = stops.Sum(s => s.BitesCount),
            Bites = DayPlanBuilder.BitesSpread(stops, request.Seed),
            Title = stops.Count == 0 ? plan.Title : request.Speech.Say($"Practice: {plan.Title}"),
            Why = stops.Count == 0 ? plan.Why : WhyOrder(cells, request.Speech),
        };
    }

    // A stop's worth in practice: what it may hold and how doubtful that is, shared with the others that tell of the same.
    private static IEnumerable<StopCandidate> Telling(IReadOnlyList<StopCandidate> candidates, IReadOnlyDictionary<string, int> covered)
    {
        double ordinary = candidates.Count > 0 ? candidates.Average(Mean) : 0;
        Dictionary<string, int> rank = new(covered);
        Dictionary<string, double> share = [];
        foreach (StopCandidate candidate in candidates.OrderByDescending(Mean))
        {
            string cell = CellOf(candidate);
            int before = rank.GetValueOrDefault(cell);
            rank[cell] = before + 1;
            share[candidate.Id] = 1.0 / (1 + before);
        }

        // The order stays: travel times are by place in it.
        foreach (StopCandidate candidate in candidates)
        {
            yield return candidate with
            {
                TiringPerH = TellingTiresPerH,
                Bites = candidate.Bites.Map((_, perH) => perH > 0 ? share[candidate.Id] * ((perH * candidate.RateDoubtShare) + (0.5 * ordinary)) : 0),
            };
        }
    }

    private static double Mean(StopCandidate candidate)
    {
        double sum = 0;
        foreach (double perH in candidate.Bites.RatesPerH) sum += perH;
        return sum / candidate.Bites.RatesPerH.Length;
    }

    private static string WhyOrder(int cells, Speech speech) => cells == 1
        ? speech.Plain("its stops tell of one kind of bottom and depth, each for as long as it tells much")
        : speech.Say($"its stops tell of {cells} kinds of bottom and depth, each for as long as it tells much");

    private static string Why(StopCandidate candidate, int before, Speech speech)
    {
        string kind = speech.Plain(candidate.Form.Length > 0 ? candidate.Form : "place");
        return before switch
        {
            0 => speech.Say($"no {kind} of this depth has told anything yet"),
            1 => speech.Say($"a second {kind} of this depth tells whether the first was luck"),
            _ => speech.Say($"it adds to {before} of its kind and depth"),
        };
    }
}
