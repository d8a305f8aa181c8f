using SecondShore.Answers.Questions;
using SecondShore.Engine.Basin.Spots;

namespace SecondShore.Desk;

/// <summary>Letters that stay with their places while a depth, a level or a day is tried: only the order of the list changes.</summary>
internal static class KeptLetters
{
    // A place whose best cell moved by less is the same place.
    private static readonly double SamePlaceM = 80;

    /// <param name="tried">Places ranked for what is tried.</param>
    /// <param name="known">Places as the outlook ranks them, with the letters that are known.</param>
    public static ShoreResult On(ShoreResult tried, IReadOnlyList<Spot> known)
    {
        HashSet<string> taken = [];
        List<Spot> spots = [];
        foreach (Spot spot in tried.Spots)
        {
            Spot? same = known.Where(k => !taken.Contains(k.Letter) && k.Place.DistanceToM(spot.Place) <= SamePlaceM).MinBy(k => k.Place.DistanceToM(spot.Place));
            if (same is not null) taken.Add(same.Letter);
            spots.Add(same is null ? spot with { Letter = "" } : spot with { Letter = same.Letter });
        }

        // Places that only this try has go on behind the known letters.
        int next = known.Count;
        return tried with { Spots = [.. spots.Select(s => s.Letter.Length > 0 ? s : s with { Letter = SpotFinder.LetterOf(++next) })] };
    }
}
