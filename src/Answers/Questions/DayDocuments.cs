using SecondShore.Answers.Documents;
using SecondShore.Answers.Rig;
using SecondShore.Answers.Words;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Day;

namespace SecondShore.Answers.Questions;

/// <summary>The document of a planned day.</summary>
public static class DayDocuments
{
    /// <summary>Makes the document.</summary>
    /// <param name="result">The day.</param>
    /// <param name="units">Units of the words.</param>
    /// <param name="files">Names of the files written.</param>
    public static DayDocument Of(DayResult result, UnitSystem units, IReadOnlyList<string> files)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(units);
        GeoPoint ramp = result.Shore.Grid.Projection.ToGeo(result.Ramp);
        return new DayDocument
        {
            Lake = result.Shore.Lake.Site.Name,
            Date = result.Wish.Date,
            Launch = Place(result.Plan.Launch),
            Home = Place(result.Plan.Home),
            Stops = [.. result.Plan.Stops.Select(s => Row(result, s))],
            RouteLengthM = Math.Round(result.Plan.RouteLengthM, 1),
            ThermoclineM = SpreadDocument.From(result.Shore.Outlook.Lake.ThermoclineM),
            Turnover = DateSpreadDocument.From(result.Shore.Outlook.Lake.TurnoverInDays, result.Shore.Outlook.At),
            Words = [OutlookWords.Say(result.Shore.Outlook, !units.IsMetric), result.Plan.Title, result.Plan.Why],
            Cautions = [.. result.Cautions.Select(c => c.Words)],
            Files = files,
            Assumed = result.SayAssumed(units),
        };

        DayDocument.PlaceTime Place(DateTimeOffset time) => new(result.RampName, Math.Round(ramp.LatDeg, 6), Math.Round(ramp.LonDeg, 6), time);
    }

    private static DayDocument.StopRow Row(DayResult result, PlannedStop stop)
    {
        GeoPoint at = result.Spots[stop.Candidate.Id].At;
        return new DayDocument.StopRow
        {
            Spot = stop.Candidate.Id,
            Letter = stop.Candidate.Letter,
            Name = stop.Candidate.Name,
            Lat = Math.Round(at.LatDeg, 6),
            Lon = Math.Round(at.LonDeg, 6),
            DepthM = Math.Round(stop.Candidate.DepthM, 2),
            Arrive = stop.Arrive,
            Leave = stop.Leave,
            Rig = RigWords.Short(result.Rigs[stop.Candidate.Id]),
            Why = stop.Why,
        };
    }
}
