using SecondShore.Engine.Core.Words;

namespace SecondShore.Engine.Day;

/// <summary>Plans that differ in kind from the day's plan: for the morning that is not as expected.</summary>
internal static class DayAlternatives
{
    /// <summary>The alternatives that differ from the plan, each planned on its own values and told in the plan's.</summary>
    public static IReadOnlyList<DayAlternative> Of(PlanRequest request, DayPlan plan, ITravelTimes travel, CancellationToken cancel)
    {
        List<DayAlternative> found = [];
        Speech speech = request.Speech;
        Add(AlternativeKind.NearRamp, NearRamp(request, plan, travel), "Take it when time, fuel or the boat's mood is short: no stop is far from the ramp");
        Add(AlternativeKind.Sheltered, Sheltered(request), "Take it when the wind comes early: it keeps to the lee");
        Add(AlternativeKind.Gamble, Gamble(request), "Take it when an ordinary day is not enough: less sure, with more to win");
        Add(AlternativeKind.IfMixed, IfMixed(request), "Take it when the haze is gone and the lake has turned overnight");
        return found;

        void Add(AlternativeKind kind, PlanRequest? other, string words)
        {
            if (other is null || other.Candidates.Count == 0) return;
            DayPlan made = DayPlanner.PlanWithFuel(other, travel, cancel);
            if (made.Stops.Count == 0 || SameStops(made, plan)) return;
            double mean = 0;
            foreach (PlannedStop stop in made.Stops)
                mean += DayPlanBuilder.BitesOf(ById(kind == AlternativeKind.IfMixed ? other : request, stop.Candidate.Id), stop.Arrive, stop.Leave);
            string compared = kind == AlternativeKind.IfMixed
                ? speech.Say($"about {DayWords.Rate(mean, speech)} bites then.")
                : speech.Say($"about {DayWords.Rate(mean, speech)} bites against {DayWords.Rate(plan.MeanBitesCount, speech)}.");
            found.Add(new DayAlternative(kind, $"{speech.Plain(words)}; {compared}", made));
        }
    }

    private static PlanRequest? NearRamp(PlanRequest request, DayPlan plan, ITravelTimes travel)
    {
        int home = request.Candidates.Count + 1;
        List<double> runsS = [];
        for (int i = 0; i < request.Candidates.Count; i++) runsS.Add(travel.TravelS(i, home, request.StartAt));
        double farthestS = 0;
        foreach (PlannedStop stop in plan.Stops)
            for (int i = 0; i < request.Candidates.Count; i++)
                if (request.Candidates[i].Id == stop.Candidate.Id) farthestS = Math.Max(farthestS, runsS[i]);
        List<string> never = [.. request.Never];
        for (int i = 0; i < runsS.Count; i++)
            if (!(runsS[i] <= 0.45 * farthestS)) never.Add(request.Candidates[i].Id);
        return never.Count - request.Never.Count == request.Candidates.Count ? null : request with { Never = never, Must = [] };
    }

    private static PlanRequest? Sheltered(PlanRequest request)
    {
        if (request.Sea is not ISeaState sea) return null;
        Boat boat = request.Boat;
        return Changed(request, c => c with
        {
            Bites = c.Bites.Map((at, rate) =>
            {
                double waveM = sea.WaveM(c.Place, at.AddSeconds(0.5 * c.Bites.StepS));
                return waveM > boat.RoughWaveM ? 0 : waveM > boat.FairWaveM ? 0.3 * rate : rate;
            }),
        }) with
        { Must = [] };
    }

    private static PlanRequest Gamble(PlanRequest request) =>
        Changed(request, c => c with { Bites = c.Bites.Map((_, rate) => rate * (1.0 + (1.28 * c.RateDoubtShare))) }) with { Must = [] };

    private static PlanRequest IfMixed(PlanRequest request) =>
        Changed(request, c => c with { Bites = c.BitesIfMixed ?? c.Bites.Map((_, rate) => rate / 3.0) }) with { Must = [] };

    private static PlanRequest Changed(PlanRequest request, Func<StopCandidate, StopCandidate> change)
    {
        List<StopCandidate> candidates = [];
        foreach (StopCandidate candidate in request.Candidates) candidates.Add(change(candidate));
        return request with { Candidates = candidates };
    }

    private static StopCandidate ById(PlanRequest request, string id)
    {
        foreach (StopCandidate candidate in request.Candidates)
            if (candidate.Id == id) return candidate;
        throw new InvalidOperationException($"No candidate has the id '{id}'.");
    }

    private static bool SameStops(DayPlan a, DayPlan b)
    {
        if (a.Stops.Count != b.Stops.Count) return false;
        HashSet<string> ids = [];
        foreach (PlannedStop stop in a.Stops) ids.Add(stop.Candidate.Id);
        foreach (PlannedStop stop in b.Stops)
            if (!ids.Contains(stop.Candidate.Id)) return false;
        return true;
    }
}
