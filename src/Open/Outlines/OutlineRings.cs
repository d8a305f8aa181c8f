using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Open.Outlines;

/// <summary>Rings of waters and islands: put together from lines, measured, asked what lies within.</summary>
internal static class OutlineRings
{
    /// <summary>Joins lines that share their ends into rings without a repeated point.</summary>
    /// <param name="lines">The lines, each of two points or more.</param>
    /// <returns>Closed rings, and what could not be closed.</returns>
    public static (List<IReadOnlyList<GeoPoint>> Closed,
        List<IReadOnlyList<GeoPoint>> Open) Join(IReadOnlyList<IReadOnlyList<GeoPoint>> lines)
    {
        Dictionary<GeoPoint, List<int>> ends = [];
        for (int i = 0; i < lines.Count; i++)
        {
            At(ends, lines[i][0]).Add(i);
            At(ends, lines[i][^1]).Add(i);
        }

        bool[] used = new bool[lines.Count];
        List<IReadOnlyList<GeoPoint>> closed = [], open = [];
        for (int first = 0; first < lines.Count; first++)
        {
            if (used[first]) continue;
            used[first] = true;
            List<GeoPoint> ring = [.. lines[first]];
            while (ring[0] != ring[^1])
            {
                int next = At(ends, ring[^1]).FindIndex(i => !used[i]);
                if (next < 0) break;
                int line = ends[ring[^1]][next];
                used[line] = true;
                IEnumerable<GeoPoint> onward = lines[line][0] == ring[^1] ? lines[line] : lines[line].Reverse();
                ring.AddRange(onward.Skip(1));
            }

            bool isClosed = ring.Count > 3 && ring[0] == ring[^1];
            if (isClosed) ring.RemoveAt(ring.Count - 1);
            (isClosed ? closed : open).Add(ring);
        }

        return (closed, open);

        static List<int> At(Dictionary<GeoPoint, List<int>> ends, GeoPoint place)
        {
            if (!ends.TryGetValue(place, out List<int>? lines)) ends[place] = lines = [];
            return lines;
        }
    }

    /// <summary>Waters with their islands: each island goes to the water it lies in; one that lies in none is left out and
    /// counted.</summary>
    public static (List<WaterPolygon> Waters, int Homeless) Nest(IReadOnlyList<IReadOnlyList<GeoPoint>> waters,
        IReadOnlyList<IReadOnlyList<GeoPoint>> islands)
    {
        GeoBox[] boxes = [.. waters.Select(w => GeoBox.Around(w)!.Value)];
        List<IReadOnlyList<GeoPoint>>[] within = [.. waters.Select(_ => new List<IReadOnlyList<GeoPoint>>())];
        int homeless = 0;
        foreach (IReadOnlyList<GeoPoint> island in islands)
        {
            int home = -1;
            for (int w = 0; w < waters.Count && home < 0; w++)
                if (boxes[w].Holds(island[0]) && (waters.Count == 1 || Holds(waters[w], island[0]))) home = w;
            if (home < 0) homeless++;
            else within[home].Add(island);
        }

        return ([.. waters.Select((w, k) => new WaterPolygon(w, within[k]))], homeless);
    }

    /// <summary>Whether a place lies within a ring.</summary>
    public static bool Holds(IReadOnlyList<GeoPoint> ring, GeoPoint place)
    {
        bool inside = false;
        for (int i = 0, j = ring.Count - 1; i < ring.Count; j = i++)
        {
            GeoPoint a = ring[i], b = ring[j];
            if (a.LatDeg > place.LatDeg != b.LatDeg > place.LatDeg && place.LonDeg < CrossingDeg(a, b, place.LatDeg)) inside = !inside;
        }

        return inside;
    }

    /// <summary>Whether a place lies on the water, not on an island.</summary>
    public static bool Holds(WaterPolygon water, GeoPoint place) => Holds(water.Outer, place) && !water.Islands.Any(i => Holds(i, place));

    /// <summary>Area of a water without its islands, m2; never below 0.</summary>
    public static double AreaM2(WaterPolygon water)
    {
        LocalProjection plane = new(water.Outer[0]);
        return Math.Max(0, RingAreaM2(plane, water.Outer) - water.Islands.Sum(i => RingAreaM2(plane, i)));
    }

    /// <summary>A place well within the water: the middle of the longest stretch of water along a few lines from west to east.</summary>
    public static GeoPoint? Within(WaterPolygon water)
    {
        const int Lines = 17;
        GeoBox box = GeoBox.Around(water.Outer)!.Value;
        (double LengthDeg, GeoPoint? Place) best = (0, null);
        for (int k = 1; k <= Lines; k++)
        {
            double latDeg = box.SouthDeg + ((box.NorthDeg - box.SouthDeg) * (k - 0.37) / Lines);
            List<double> crossings = [];
            foreach (IReadOnlyList<GeoPoint> ring in water.Islands.Prepend(water.Outer))
            {
                for (int i = 0, j = ring.Count - 1; i < ring.Count; j = i++)
                    if (ring[i].LatDeg > latDeg != ring[j].LatDeg > latDeg) crossings.Add(CrossingDeg(ring[i], ring[j], latDeg));
            }

            crossings.Sort();
            for (int i = 0; i + 1 < crossings.Count; i += 2)
                if (crossings[i + 1] - crossings[i] > best.LengthDeg)
                    best = (crossings[i + 1] - crossings[i], new GeoPoint(latDeg, (crossings[i] + crossings[i + 1]) / 2));
        }

        return best.Place;
    }

    private static double CrossingDeg(GeoPoint a, GeoPoint b, double latDeg) =>
        a.LonDeg + ((latDeg - a.LatDeg) / (b.LatDeg - a.LatDeg) * (b.LonDeg - a.LonDeg));

    private static double RingAreaM2(LocalProjection plane, IReadOnlyList<GeoPoint> ring)
    {
        double twiceM2 = 0;
        PlanePoint a = plane.ToPlane(ring[^1]);
        foreach (GeoPoint corner in ring)
        {
            PlanePoint b = plane.ToPlane(corner);
            twiceM2 += (a.XM * b.YM) - (b.XM * a.YM);
            a = b;
        }

        return Math.Abs(twiceM2) / 2;
    }
}
