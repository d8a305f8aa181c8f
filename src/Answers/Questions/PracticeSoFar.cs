using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Day;

namespace SecondShore.Answers.Questions;

/// <summary>What practice has covered so far. Immutable.</summary>
/// <param name="Covered">Stops made by what they tell of.</param>
/// <param name="Places">Where they were: not visited twice.</param>
public sealed record PracticeSoFar(IReadOnlyDictionary<string, int> Covered, IReadOnlyList<GeoPoint> Places)
{
    /// <summary>Nothing yet.</summary>
    public static readonly PracticeSoFar Nothing = new(new Dictionary<string, int>(), []);

    private static readonly double SamePlaceM = 150;

    /// <summary>With one more day of practice behind it.</summary>
    public PracticeSoFar After(DayResult day)
    {
        ArgumentNullException.ThrowIfNull(day);
        Dictionary<string, int> covered = new(Covered);
        foreach (PlannedStop stop in day.Plan.Stops)
        {
            string cell = PracticePlanner.CellOf(stop.Candidate);
            covered[cell] = covered.GetValueOrDefault(cell) + 1;
        }

        return new PracticeSoFar(covered, [.. Places, .. day.Plan.Stops.Select(s => day.Spots[s.Candidate.Id].At)]);
    }

    /// <summary>Ids of spots that lie where practice has been.</summary>
    internal IEnumerable<string> Been(ShoreResult shore) => shore.Spots
        .Where(s => Places.Any(p => shore.Grid.Projection.ToPlane(p).DistanceToM(s.Place) <= SamePlaceM)).Select(s => s.Id);
}
