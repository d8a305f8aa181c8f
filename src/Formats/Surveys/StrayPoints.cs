using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Coordinates;

namespace SecondShore.Formats.Surveys;

/// <summary>Points so far outside the box of all the others that they are no part of the lake: at most one in fifty.</summary>
internal sealed record StrayPoints(RawPoints Kept, int Count, double FarthestKm)
{
    private static readonly int FewestPoints = 60;

    public static StrayPoints Find(RawPoints points, CoordinateSystem crs)
    {
        StrayPoints none = new(points, 0, 0);
        int n = points.X.Length;
        if (n < FewestPoints) return none;
        double[] x = [.. points.X], y = [.. points.Y];
        Array.Sort(x);
        Array.Sort(y);
        int cut = n / 50, last = n - 1 - cut;
        double unitM = crs.IsGeographic ? 111_000 : 1;
        double marginX = (3 * (x[last] - x[cut])) + (1000 / unitM), marginY = (3 * (y[last] - y[cut])) + (1000 / unitM);
        List<int> kept = new(n);
        double farthest = 0;
        LocalProjection? plane = null;
        for (int i = 0; i < n; i++)
        {
            bool inside = points.X[i] >= x[cut] - marginX && points.X[i] <= x[last] + marginX
                && points.Y[i] >= y[cut] - marginY && points.Y[i] <= y[last] + marginY;
            if (inside)
            {
                kept.Add(i);
                continue;
            }

            plane ??= Middle(crs, x[n / 2], y[n / 2]);
            if (plane is not null && crs.TryToGeo(points.X[i], points.Y[i], out double latDeg, out double lonDeg))
                farthest = Math.Max(farthest, plane.ToPlane(latDeg, lonDeg).DistanceToM(default) / 1000);
        }

        int strays = n - kept.Count;
        if (strays == 0 || strays > cut) return none;
        List<int> breaks = [];
        foreach (int at in points.TrackBreaks)
        {
            int moved = kept.BinarySearch(at);
            moved = moved < 0 ? ~moved : moved;
            if (moved > 0 && moved < kept.Count && (breaks.Count == 0 || breaks[^1] < moved)) breaks.Add(moved);
        }

        return new StrayPoints(new RawPoints([.. kept.Select(i => points.X[i])], [.. kept.Select(i => points.Y[i])], [.. kept.Select(i => points.Z[i])], breaks), strays, farthest);
    }

    private static LocalProjection? Middle(CoordinateSystem crs, double x, double y) =>
        crs.TryToGeo(x, y, out double latDeg, out double lonDeg) && Math.Abs(latDeg) < 89 ? new LocalProjection(new GeoPoint(latDeg, lonDeg)) : null;
}
