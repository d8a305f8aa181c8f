using System.Globalization;

namespace SecondShore.Engine.Day;

/// <summary>What the plan says of itself.</summary>
internal static class DayWords
{
    private static readonly string[] Numbers = ["No", "One", "Two", "Three", "Four", "Five", "Six", "Seven", "Eight", "Nine", "Ten", "Eleven", "Twelve"];

    /// <summary>A time of day such as <c>2:40 pm</c>, in the offset the instant carries.</summary>
    public static string Clock(DateTimeOffset at) => at.ToString("h:mm tt", CultureInfo.InvariantCulture).Replace("AM", "am", StringComparison.Ordinal).Replace("PM", "pm", StringComparison.Ordinal);

    public static string Title(int stops, DateTimeOffset home) => stops == 0
        ? "No stop fits the day."
        : $"{(stops < Numbers.Length ? Numbers[stops] : stops.ToString(CultureInfo.InvariantCulture))} {(stops == 1 ? "stop" : "stops")}, home by {Clock(home)}.";

    /// <summary>Why a stop is made, and then: the strongest two reasons that hold.</summary>
    public static string WhyStop(PlanRequest request, ITravelTimes travel, List<PlannedStop> stops, int index, DateTimeOffset launch)
    {
        PlannedStop stop = stops[index];
        StopCandidate candidate = stop.Candidate;
        List<string> reasons = [];
        if (DayPlanner.Contains(request.Must, candidate.Id)) reasons.Add("you want it in the plan");
        double here = candidate.Bites.MeanPerH(stop.Arrive, stop.Leave);
        double earlier = stop.Arrive - launch > TimeSpan.FromHours(1) ? candidate.Bites.MeanPerH(launch, stop.Arrive) : here;
        DateTimeOffset end = DayPlanner.HomeBy(request).At;
        double later = end - stop.Leave > TimeSpan.FromHours(1) ? candidate.Bites.MeanPerH(stop.Leave, end) : here;
        if (WavesBuild(request, stop, end) is string waves) reasons.Add(waves);
        if (here > 1.15 * earlier && here > 1.15 * later) reasons.Add("these are its best hours");
        else if (here > 1.2 * later) reasons.Add($"it falls off later, to {Rate(later)} from {Rate(here)} bites an hour");
        else if (here > 1.2 * earlier) reasons.Add($"it comes on by then, to {Rate(here)} from {Rate(earlier)} bites an hour");
        if (IsBest(request, candidate, stop)) reasons.Insert(Math.Min(1, reasons.Count), "no other place is worth more then");
        if (reasons.Count < 2 && OnTheWay(request, travel, stops, index) is string way) reasons.Add(way);
        if (candidate.Why.Length > 0 && reasons.Count < 2) reasons.Insert(0, candidate.Why.TrimEnd('.'));
        if (reasons.Count == 0) reasons.Add($"it still gives {Rate(here)} bites an hour");
        return string.Join(", and ", reasons.GetRange(0, Math.Min(2, reasons.Count)));
    }

    /// <summary>Why this order: what the reverse would lose, and where the end lies.</summary>
    public static string WhyOrder(PlanRequest request, ITravelTimes travel, IReadOnlyList<PlannedStop> stops)
    {
        if (stops.Count == 0) return "no stop can be reached, fished and left in the time there is";
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

            if (first.Count > 0 && first.Count < stops.Count) reasons.Add($"{Join(first.GetRange(0, Math.Min(3, first.Count)))} {(first.Count == 1 ? "is" : "are")} best early");
            if (mean - reversed > 0.1 * mean) reasons.Add($"the other way round the same stops would bring about {Rate(mean - reversed)} bites fewer");
        }

        if (ComesNearer(request, travel, stops)) reasons.Add("every later stop lies nearer home");
        return reasons.Count > 0 ? string.Join(", and ", reasons) : "no other order runs less for what it brings";
    }

    public static string Rate(double rate) => rate.ToString(rate < 0.95 ? "0.0" : rate < 9.95 ? "0.#" : "0", CultureInfo.InvariantCulture);

    public static string Join(IReadOnlyList<string> names) => names.Count switch
    {
        0 => "",
        1 => names[0],
        2 => $"{names[0]} and {names[1]}",
        _ => string.Join(", ", names.Take(names.Count - 1)) + " and " + names[^1],
    };

    private static string? WavesBuild(PlanRequest request, PlannedStop stop, DateTimeOffset end)
    {
        if (request.Sea is null || stop.WaveM > request.Boat.FairWaveM) return null;
        for (DateTimeOffset at = stop.Leave; at < end; at = at.AddMinutes(30))
        {
            if (request.Sea.WaveM(stop.Candidate.Place, at) > request.Boat.FairWaveM + 0.05) return $"it is calm only until {Clock(at)}";
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
        return index == stops.Count - 1 ? "it is on the way home" : "it lies on the way";
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
