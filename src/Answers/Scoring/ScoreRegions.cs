using SecondShore.Engine.Core.Geo;

namespace SecondShore.Answers.Scoring;

/// <summary>Lakes that lie so near each other that they share their weather: they count as one, and are left out together.</summary>
public static class ScoreRegions
{
    /// <summary>Lakes as near as this are of one region, m (choice: a few cells of a weather grid).</summary>
    public static readonly double WidthM = 50_000;

    private const double MetresPerDegree = 111_200;

    /// <summary>The region of each lake: the place in the list of its first lake.</summary>
    /// <param name="places">Where the lakes lie.</param>
    public static int[] Of(IReadOnlyList<GeoPoint> places)
    {
        ArgumentNullException.ThrowIfNull(places);
        int[] region = [.. Enumerable.Range(0, places.Count)];
        for (int i = 0; i < region.Length; i++)
        {
            for (int j = 0; j < i; j++)
            {
                if (region[i] == region[j] || DistanceM(places[i], places[j]) > WidthM) continue;
                (int from, int to) = (Math.Max(region[i], region[j]), Math.Min(region[i], region[j]));
                for (int k = 0; k < region.Length; k++) if (region[k] == from) region[k] = to;
            }
        }

        return region;
    }

    private static double DistanceM(GeoPoint a, GeoPoint b)
    {
        double north = (a.LatDeg - b.LatDeg) * MetresPerDegree, east = (a.LonDeg - b.LonDeg) * MetresPerDegree * Math.Cos(double.DegreesToRadians(a.LatDeg));
        return Math.Sqrt((north * north) + (east * east));
    }
}
