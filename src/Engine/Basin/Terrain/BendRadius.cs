using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Basin.Terrain;

/// <summary>How sharply a line bends.</summary>
public static class BendRadius
{
    /// <summary>Radius of the circle through three points, m; infinite when they lie on one line.</summary>
    public static double ThroughM(PlanePoint first, PlanePoint middle, PlanePoint last)
    {
        double a = first.DistanceToM(middle), b = middle.DistanceToM(last), c = first.DistanceToM(last);
        double twiceArea = Math.Abs(((middle.XM - first.XM) * (last.YM - first.YM)) - ((middle.YM - first.YM) * (last.XM - first.XM)));
        return twiceArea > 0 ? a * b * c / (2 * twiceArea) : double.PositiveInfinity;
    }
}
