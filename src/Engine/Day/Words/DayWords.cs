using System.Globalization;
using SecondShore.Engine.Core.Words;

namespace SecondShore.Engine.Day;

/// <summary>What the plan says of itself.</summary>
internal static class DayWords
{
    private static readonly string[] Numbers = ["No", "One", "Two", "Three", "Four", "Five", "Six", "Seven", "Eight", "Nine", "Ten", "Eleven", "Twelve"];

    public static string Title(int stops, DateTimeOffset home, Speech speech) => stops == 0 ? speech.Plain("No stop fits the day.")
        : stops == 1 ? speech.Say($"One stop, home by {speech.Clock(home)}.")
        : speech.Say($"{(stops < Numbers.Length ? speech.Plain(Numbers[stops]) : stops.ToString(CultureInfo.InvariantCulture))} stops, home by {speech.Clock(home)}.");

    /// <summary>Why a stop is made, and then: the strongest two reasons that hold.</summary>
    public static string WhyStop(PlanRequest request, ITravelTimes travel, List<PlannedStop> stops, int index, DateTimeOffset launch)
    {
        PlannedStop stop = stops[index];
        StopCandidate candidate = stop.Candidate;
        List<string> reasons = [];
        Speech speech = request.Speech;
        if (DayPlanner.Contains(request.Must, candidate.Id)) reasons.Add(speech.Plain("you want it in the plan"));
        double here = candidate.Bites.MeanPerH(stop.Arrive, stop.Leave);
        double earlier = stop.Arrive - launch > TimeSpan.FromHours(1) ? candidate.Bites.MeanPerH(launch, stop.Arrive) : here;
        DateTimeOffset end = DayPlanner.HomeBy(request).At;
        double later = end - stop.Leave > TimeSpan.FromHours(1) ? candidate.Bites.MeanPerH(stop.Leave, end) : here;
        if (WavesBuild(request, stop, end) is string waves) reasons.Add(waves);
        if (here > 1.15 * earlier && here > 1.15 * later) reasons.Add(speech.Plain("these are its best hours"));
        else if (here > 1.2 * later) reasons.Add(speech.Say($"it falls off later, to {Rate(later, speech)} from {Rate(here, speech)} bites an hour"));
        else if (here > 1.2 * earlier) reasons.Add(speech.Say($"it comes on by then, to {Rate(here, speech)} from {Rate(earlier, speech)} bites an hour"));
        if (IsBest(request, candidate, stop)) reasons.Insert(Math.Min(1, reasons.Count), speech.Plain("no other place is worth more then"));
        if (reasons.Count < 2 && OnTheWay(request, travel, stops, index) is string way) reasons.Add(way);
        if (candidate.Why.Length > 0 && reasons.Count < 2) reasons.Insert(0, candidate.Why.TrimEnd('.'));
        if (reasons.Count == 0) reasons.Add(speech.Say($"it still gives {Rate(here, speech)} bites an hour"));
        return And(reasons.GetRange(0, Math.Min(2, reasons.Count)), speech);
    }

    /// <summary>Why this order: what the reverse would lose, and where the end lies.</summary>
    public static string WhyOrder(PlanRequest request, ITravelTimes travel, IReadOnlyList<PlannedStop> stops)
    {
        Speech speech = request.Speech;
        if (stops.Count == 0) return speech.Plain("no stop can be reached, fished and left in the time there is");
        List<string> reasons = [];
        if (stops.Count > 1)
        {
            double mean = 0, reversed = 0;
            foreach (PlannedStop stop in stops) mean += stop.BitesCount;
            for (int i = 0; i < stops.Count; i++)
            {
                PlannedStop stop = stops[i];
                DateTimeOffset arrive = stops[0].Arrive + (stops[^1].Leave - stop.Leave);
                reversed += DayPlanBuilder.BitesOf(stop.Candidate, arrive, arrive + (stop.Leave - stop.Arrive));
            }

            List<string> first = [];
            foreach (PlannedStop stop in stops)
            {
                double later = stop.Candidate.Bites.MeanPerH(stop.Leave, stops[^1].Leave);
                if (stop != stops[^1] && stop.Candidate.Bites.MeanPerH(stop.Arrive, stop.Leave) > 1.2 * later) first.Add(stop.Candidate.Name);
            }

            if (first.Count == 1 && stops.Count > 1) reasons.Add(speech.Say($"{first[0]} is best early"));
            else if (first.Count > 1 && first.Count < stops.Count) reasons.Add(speech.Say($"{speech.Join(first.GetRange(0, Math.Min(3, first.Count)))} are best early"));
            if (mean - reversed > 0.1 * mean) reasons.Add(speech.Say($"the other way round the same stops would bring about {Rate(mean - reversed, speech)} bites fewer"));
        }

        if (ComesNearer(request, travel, stops)) reasons.Add(speech.Plain("every later stop lies nearer home"));
        return reasons.Count > 0 ? And(reasons, speech) : speech.Plain("no other order runs less for what it brings");
    }

    public static string Rate(double rate, Speech speech) => speech.Number(rate, rate < 0.95 ? "0.0" : rate < 9.95 ? "0.#" : "0");

    private static string And(List<string> clauses, Speech speech)
    {
        string said = clauses[0];
        for (int i = 1; i < clauses.Count; i++) said = speech.Say($"{said}, and {clauses[i]}");
        return said;
    }

    private static string? WavesBuild(PlanRequest request, PlannedStop stop, DateTimeOffset end)
    {
        if (request.Sea is null || stop.WaveM > request.Boat.FairWaveM) return null;
        for (DateTimeOffset at = stop.Leave; at < end; at = at.AddMinutes(30))
        {
            if (request.Sea.WaveM(stop.Candidate.Place, at) > request.Boat.FairWaveM + 0.05) return request.Speech.Say($"it is calm only until {request.Speech.Clock(at)}");
        }

        return null;
    }

    private static bool IsBest(PlanRequest request, StopCandidate candidate, PlannedStop stop)
    {
        double own = candidate.Bites.MeanPerH(stop.Arrive, stop.Leave);
        foreach (StopCandidate other in request.Candidates)
            if (other.Id != candidate.Id && other.Bites.MeanPerH(stop.Arrive, stop.Leave) > own) return false;
        return request.Candidates.Count > 1;
    }

    private static string? OnTheWay(PlanRequest request, ITravelTimes travel, List<PlannedStop> stops, int index)
    {
        int n = request.Candidates.Count;
        int before = index == 0 ? n : IndexOf(request, stops[index - 1].Candidate), own = IndexOf(request, stops[index].Candidate);
        int after = index == stops.Count - 1 ? n + 1 : IndexOf(request, stops[index + 1].Candidate);
        DateTimeOffset at = stops[index].Arrive;
        double detourS = travel.TravelS(before, own, at) + travel.TravelS(own, after, stops[index].Leave) - (before == n && after == n + 1 ? 0 : travel.TravelS(before, after, at));
        if (!(detourS < 300)) return null;
        return request.Speech.Plain(index == stops.Count - 1 ? "it is on the way home" : "it lies on the way");
    }

    private static bool ComesNearer(PlanRequest request, ITravelTimes travel, IReadOnlyList<PlannedStop> stops)
    {
        if (stops.Count < 3) return false;
        double last = double.PositiveInfinity;
        for (int i = stops.Count / 3; i < stops.Count; i++)
        {
            double s = travel.TravelS(IndexOf(request, stops[i].Candidate), request.Candidates.Count + 1, stops[i].Leave);
            if (s > last + 30) return false;
            last = s;
        }

        return true;
    }

    private static int IndexOf(PlanRequest request, StopCandidate candidate)
    {
        for (int i = 0; i < request.Candidates.Count; i++)
            if (request.Candidates[i].Id == candidate.Id) return i;
        return -1;
    }
}
