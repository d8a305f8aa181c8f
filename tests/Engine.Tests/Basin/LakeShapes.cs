using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Tests.Basin;

/// <summary>Lakes whose every answer is known on paper.</summary>
internal static class LakeShapes
{
    public static readonly LocalProjection Plane = new(new GeoPoint(45, 7));

    /// <summary>A lake of a depth formula; 0 and less is land.</summary>
    public static DepthGrid FromFormula(int nx, int ny, double cellM, Func<double, double, double> depthM)
    {
        GridFrame frame = new(-0.5 * nx * cellM, -0.5 * ny * cellM, cellM, nx, ny);
        float[] cells = new float[frame.Count];
        for (int i = 0; i < cells.Length; i++)
        {
            PlanePoint p = frame.Centre(i);
            double depth = depthM(p.XM, p.YM);
            cells[i] = depth > 0 ? (float)depth : float.NaN;
        }

        return new DepthGrid(Plane, frame, cells);
    }

    /// <summary>A cone of a radius and a depth.</summary>
    public static DepthGrid Cone(double radiusM, double maxDepthM, double cellM)
    {
        int n = (2 * (int)Math.Ceiling(radiusM / cellM)) + 4;
        return FromFormula(n, n, cellM, (x, y) => maxDepthM * (1 - (Math.Sqrt((x * x) + (y * y)) / radiusM)));
    }

    /// <summary>Soundings at plane points.</summary>
    public static SoundingSet Soundings(IEnumerable<(double XM, double YM, double DepthM)> points, params int[] breaks)
    {
        List<double> lat = [], lon = [], depth = [];
        foreach ((double xM, double yM, double depthM) in points)
        {
            GeoPoint place = Plane.ToGeo(new PlanePoint(xM, yM));
            lat.Add(place.LatDeg);
            lon.Add(place.LonDeg);
            depth.Add(depthM);
        }

        return new SoundingSet("soundings.csv", [.. lat], [.. lon], [.. depth], null, breaks);
    }

    /// <summary>A ring of plane points as places.</summary>
    public static IReadOnlyList<GeoPoint> Ring(IEnumerable<(double XM, double YM)> points) =>
        [.. points.Select(p => Plane.ToGeo(new PlanePoint(p.XM, p.YM)))];

    /// <summary>A circle as a shoreline.</summary>
    public static Shoreline Circle(double radiusM, int corners = 180, params IReadOnlyList<GeoPoint>[] islands) =>
        new([new WaterPolygon(CircleRing(0, 0, radiusM, corners), islands)]);

    /// <summary>A circle as a ring.</summary>
    public static IReadOnlyList<GeoPoint> CircleRing(double xM, double yM, double radiusM, int corners = 180) =>
        Ring(Enumerable.Range(0, corners).Select(k =>
        {
            double a = 2 * Math.PI * k / corners;
            return (xM + (radiusM * Math.Cos(a)), yM + (radiusM * Math.Sin(a)));
        }));
}
