using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Words;

namespace SecondShore.Engine.Day;

/// <summary>What a day is asked to be. Immutable. Places of the travel times: candidates in order, then start, then home.</summary>
public sealed record PlanRequest
{
    /// <summary>Places the day may stop at; beyond <see cref="DayPlanner.MostCandidates"/> the poorest are left out, and said.</summary>
    public required IReadOnlyList<StopCandidate> Candidates { get; init; }

    /// <summary>Where the day begins: a ramp, or the boat's place in a replan.</summary>
    public required PlanePoint Start { get; init; }

    /// <summary>Name of the start.</summary>
    public string StartName { get; init; } = "Launch";

    /// <summary>Where it ends.</summary>
    public required PlanePoint Home { get; init; }

    /// <summary>Name of home.</summary>
    public string HomeName { get; init; } = "Home";

    /// <summary>First moment the boat may leave the start.</summary>
    public required DateTimeOffset StartAt { get; init; }

    /// <summary>Check-in, or the time the angler wants to be back.</summary>
    public required DateTimeOffset CheckIn { get; init; }

    /// <summary>When it is dark (end of civil twilight); null does not limit.</summary>
    public DateTimeOffset? DarkAt { get; init; }

    /// <summary>When wind or waves pass what the boat bears; null does not limit.</summary>
    public DateTimeOffset? WindLimitAt { get; init; }

    /// <summary>Time kept in hand before dark, wind limit and check-in.</summary>
    public TimeSpan Reserve { get; init; } = TimeSpan.FromMinutes(20);

    /// <summary>Ids of spots that must be visited.</summary>
    public IReadOnlyCollection<string> Must { get; init; } = [];

    /// <summary>Ids of spots never to visit.</summary>
    public IReadOnlyCollection<string> Never { get; init; } = [];

    /// <summary>Breaks, at most three.</summary>
    public IReadOnlyList<PlannedBreak> Breaks { get; init; } = [];

    /// <summary>The boat.</summary>
    public Boat Boat { get; init; } = new();

    /// <summary>Waves; null for calm water.</summary>
    public ISeaState? Sea { get; init; }

    /// <summary>Bites an hour that an hour of running must be worth, per hour (PerH): keeps the plan from running for crumbs.</summary>
    public double RunWorthPerH { get; init; } = 0.15;

    /// <summary>Step of time of the plan, s.</summary>
    public double StepS { get; init; } = 300;

    /// <summary>The language of the plan's words.</summary>
    public Speech Speech { get; init; } = Speech.English;

    /// <summary>Seed of the search.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>The places for <see cref="WaterRoutes.Matrix"/>, in the order the planner expects.</summary>
    public IReadOnlyList<RoutePlace> RoutePlaces
    {
        get
        {
            List<RoutePlace> places = [];
            foreach (StopCandidate candidate in Candidates) places.Add(new RoutePlace(candidate.Place, candidate.EndPlace ?? candidate.Place));
            places.Add(RoutePlace.At(Start));
            places.Add(RoutePlace.At(Home));
            return places;
        }
    }

    /// <summary>The same day from here and now: what was fished stays fished, breaks begun are behind.</summary>
    /// <param name="now">The moment.</param>
    /// <param name="here">The boat's place.</param>
    /// <param name="fishedH">Hours fished today by spot id.</param>
    public PlanRequest FromHere(DateTimeOffset now, PlanePoint here, IReadOnlyDictionary<string, double> fishedH)
    {
        Core.Require.NotNull(fishedH);
        List<StopCandidate> candidates = [];
        foreach (StopCandidate candidate in Candidates)
            candidates.Add(fishedH.TryGetValue(candidate.Id, out double hoursH) ? candidate with { FishedH = candidate.FishedH + hoursH } : candidate);
        List<string> must = [];
        foreach (string id in Must)
            if (!fishedH.ContainsKey(id)) must.Add(id);
        List<PlannedBreak> breaks = [];
        foreach (PlannedBreak pause in Breaks)
            if (pause.LatestStart > now) breaks.Add(pause with { EarliestStart = pause.EarliestStart > now ? pause.EarliestStart : now });
        return this with { Candidates = candidates, Start = here, StartName = "Here", StartAt = now, Must = must, Breaks = breaks };
    }
}

/// <summary>A break, taken wherever the boat is.</summary>
/// <param name="EarliestStart">Not begun before.</param>
/// <param name="LatestStart">Not begun after.</param>
/// <param name="Length">How long.</param>
public sealed record PlannedBreak(DateTimeOffset EarliestStart, DateTimeOffset LatestStart, TimeSpan Length);
