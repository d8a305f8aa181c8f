using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Basin.Gridding;

/// <summary>Turns lines of known depth (shoreline, contours) into points.</summary>
internal static class LineSampling
{
    /// <summary>Adds points of a line no further apart than a step; points crowding closer than half a step are left out.</summary>
    /// <param name="line">Line, two points or more.</param>
    /// <param name="closed">Whether the last point joins the first.</param>
    /// <param name="stepM">Step, m.</param>
    /// <param name="depthM">Depth of the line, m.</param>
    /// <param name="kind">Kind of the points.</param>
    /// <param name="track">Track number of the points.</param>
    /// <param name="cloud">Where they go.</param>
    public static void Add(
        ReadOnlySpan<PlanePoint> line, bool closed, double stepM, double depthM, PointKind kind, int track, PointCloud cloud)
    {
        if (line.Length == 0) return;
        PlanePoint last = line[0];
        cloud.Add(last.XM, last.YM, depthM, kind, track);
        int segments = closed ? line.Length : line.Length - 1;
        for (int i = 0; i < segments; i++)
        {
            PlanePoint a = line[i], b = line[(i + 1) % line.Length];
            double lengthM = a.DistanceToM(b);
            int parts = (int)Math.Clamp(Math.Ceiling(lengthM / stepM), 1, 100_000);
            for (int k = 1; k <= parts; k++)
            {
                double t = (double)k / parts;
                PlanePoint p = new(a.XM + (t * (b.XM - a.XM)), a.YM + (t * (b.YM - a.YM)));
                if (p.DistanceToM(last) < 0.5 * stepM) continue;
                cloud.Add(p.XM, p.YM, depthM, kind, track);
                last = p;
            }
        }
    }
}
