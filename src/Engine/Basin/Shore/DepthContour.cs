using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Basin.Shore;

/// <summary>A line of one depth in the lake's plane. Immutable.</summary>
public sealed class DepthContour
{
    internal DepthContour(double levelM, PlanePoint[] points, bool closed)
    {
        (LevelM, Points, Closed) = (levelM, points, closed);
        for (int i = 1; i < points.Length; i++) LengthM += points[i - 1].DistanceToM(points[i]);
        if (closed) LengthM += points[^1].DistanceToM(points[0]);
    }

    /// <summary>The line's depth, m.</summary>
    public double LevelM { get; }

    /// <summary>Points, two or more; deeper water lies to the left going along them. A closed line repeats no point.</summary>
    public PlanePoint[] Points { get; }

    /// <summary>Whether the last point joins the first.</summary>
    public bool Closed { get; }

    /// <summary>Length, m.</summary>
    public double LengthM { get; }

    /// <summary>Area inside, m2; above 0 where deeper water lies inside, below 0 around a hump or an island; 0 for an open line.</summary>
    public double SignedAreaM2
    {
        get
        {
            if (!Closed) return 0;
            double sum = 0;
            PlanePoint o = Points[0];
            for (int i = 1; i + 1 < Points.Length; i++)
                sum += ((Points[i].XM - o.XM) * (Points[i + 1].YM - o.YM)) - ((Points[i].YM - o.YM) * (Points[i + 1].XM - o.XM));
            return 0.5 * sum;
        }
    }
}
