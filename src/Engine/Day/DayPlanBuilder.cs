using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Day;

/// <summary>Turns a plan on steps into times, ways and words.</summary>
internal static class DayPlanBuilder
{
    public static DayPlan Build(PlanRequest request, ITravelTimes travel, List<int> kept, PlanSteps steps, double gapShare, List<string> unmet)
    {
        List<PlannedStop> stops = [];
        List<PlannedLeg> legs = [];
        List<PlannedPause> pauses = [];
        int at = request.Candidates.Count, homePlace = at + 1;
        DateTimeOffset left = At(request, steps.LaunchStep);
        DateTimeOffset launch = left;
        double runS = 0;
        foreach (PlanMove move in steps.Moves)
        {
            if (move.IsBreak)
            {
                pauses.Add(new PlannedPause(At(request, move.From), At(request, move.To)));
                left = At(request, move.To);
                continue;
            }

            int place = kept[move.Index];
            DateTimeOffset arrive = At(request, move.From), leave = At(request, move.To);
            left = At(request, move.From - move.Run);
            if (stops.Count == 0) launch = left;
            legs.Add(Leg(request, travel, at, place, left, arrive));
            runS += travel.TravelS(at, place, left);
            stops.Add(Stop(request, request.Candidates[place], arrive, leave));
            at = place;
            left = leave;
        }

        DateTimeOffset home = At(request, steps.HomeStep);
        if (stops.Count > 0)
        {
            legs.Add(Leg(request, travel, at, homePlace, left, home));
            runS += travel.TravelS(at, homePlace, left);
        }

        for (int i = 0; i < stops.Count; i++) stops[i] = stops[i] with { Why = DayWords.WhyStop(request, travel, stops, i, launch) };
        (DateTimeOffset homeBy, string homeByWhy) = DayPlanner.HomeBy(request);
        return new DayPlan
        {
            Launch = launch,
            Home = home,
            HomeBy = homeBy,
            HomeByWhy = homeByWhy,
            Stops = stops,
            Legs = legs,
            Pauses = pauses,
            Bites = BitesSpread(stops, request.Seed),
            MeanBitesCount = stops.Sum(s => s.BitesCount),
            GapShare = gapShare,
            RouteLengthM = legs.Sum(l => l.LengthM),
            FuelL = runS / 3600.0 * request.Boat.FuelLPerH,
            Title = DayWords.Title(stops.Count, home, request.Speech),
            Why = DayWords.WhyOrder(request, travel, stops),
            Unmet = unmet,
        };
    }

    /// <summary>Bites expected between two instants at a place that tires, with the candidate's own rates.</summary>
    public static double BitesOf(StopCandidate candidate, DateTimeOffset arrive, DateTimeOffset leave)
    {
        double sum = 0, totalS = (leave - arrive).TotalSeconds;
        const double partS = 60;
        for (double s = 0; s < totalS; s += partS)
        {
            double spanS = Math.Min(partS, totalS - s), middleS = s + (0.5 * spanS);
            double tired = Math.Exp(-candidate.TiringPerH * (candidate.FishedH + (middleS / 3600.0)));
            sum += candidate.Bites.AtPerH(arrive.AddSeconds(middleS)) * tired * spanS / 3600.0;
        }

        return sum;
    }

    // Each place's rate is doubtful as a gamma law of its doubt; bites are Poisson on it.
    internal static Spread BitesSpread(List<PlannedStop> stops, ulong seed)
    {
        const int draws = 2000;
        var random = new SeededRandom(seed, 77);
        double[] totals = new double[draws];
        for (int i = 0; i < draws; i++)
        {
            foreach (PlannedStop stop in stops)
            {
                double doubt = Math.Clamp(stop.Candidate.RateDoubtShare, 0.01, 5), shape = 1.0 / (doubt * doubt);
                totals[i] += random.NextPoisson(stop.BitesCount * random.NextGamma(shape) / shape);
            }
        }

        Array.Sort(totals);
        return new Spread(totals[draws / 10], totals[draws / 2], totals[draws * 9 / 10]);
    }

    private static PlannedStop Stop(PlanRequest request, StopCandidate candidate, DateTimeOffset arrive, DateTimeOffset leave)
    {
        double waveM = request.Sea?.WaveM(candidate.Place, arrive + (0.5 * (leave - arrive))) ?? 0;
        return new PlannedStop(candidate, arrive, leave, BitesOf(candidate, arrive, leave), waveM, "");
    }

    private static PlannedLeg Leg(PlanRequest request, ITravelTimes travel, int from, int to, DateTimeOffset leave, DateTimeOffset arrive)
    {
        WaterRoute? route = travel.Route(from, to, leave);
        IReadOnlyList<PlanePoint> line = route?.Line ?? [];
        return new PlannedLeg(Name(from), Name(to), leave, arrive, line, route?.LengthM ?? 0, travel.GreatestWaveM(from, to, leave), route?.ByEyeM ?? 0);

        string Name(int place) => place < request.Candidates.Count ? request.Candidates[place].Name
            : place == request.Candidates.Count ? request.StartName : request.HomeName;
    }

    private static DateTimeOffset At(PlanRequest request, int step) => request.StartAt.AddSeconds(step * request.StepS);
}
