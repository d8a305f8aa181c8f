using SecondShore.Answers.Lake;
using SecondShore.Engine.Basin.Spots;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Questions;

/// <summary>Which spots the user means: by id, letter or name, and by marks in the lake's file.</summary>
internal static class NamedSpots
{
    // Spots by id, letter or name; words that name none are told.
    public static IEnumerable<string> Known(IReadOnlyList<string> words, ShoreResult shore, List<Finding>? assumed)
    {
        foreach (string word in words)
        {
            Spot[] named = [.. shore.Spots.Where(s => Names(s, word))];
            if (named.Length == 0) assumed?.Add(AnswerFindings.NoSuchSpot.Of(word));
            foreach (Spot spot in named) yield return spot.Id;
        }
    }

    private static bool Names(Spot spot, string word) => spot.Id == word || Same(spot.Letter, word) || (spot.Name.Length > 0 && Same(spot.Name, word));

    private static bool Same(string a, string b) => string.Equals(a, b.Trim(), StringComparison.OrdinalIgnoreCase);

    public static Dictionary<string, double> Fished(IReadOnlyDictionary<string, double> hours, ShoreResult shore)
    {
        Dictionary<string, double> byId = new(hours);
        foreach ((string word, double hoursH) in hours)
            foreach (Spot spot in shore.Spots.Where(s => s.Id != word && Names(s, word))) byId[spot.Id] = byId.GetValueOrDefault(spot.Id) + hoursH;
        return byId;
    }

    // A mark names every spot within its reach.
    public static string[] Marked(PreparedLake lake, ShoreResult shore, PlaceMarkKind kind) =>
    [
        .. lake.Folder.Marks.Where(m => m.Kind == kind)
            .SelectMany(m => shore.Spots.Where(s => s.Place.DistanceToM(shore.Grid.Projection.ToPlane(m.Place)) <= Math.Max(m.RadiusM, 50)))
            .Select(s => s.Id).Distinct(),
    ];
}
