using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Demo.Terrain;

/// <summary>A form that the generator put into a lake. Immutable.</summary>
/// <param name="Class">What it is.</param>
/// <param name="Geometry">Where it lies.</param>
/// <param name="DepthM">Depth below full pool at its characteristic place (crest, top, lip, bed), m.</param>
/// <param name="OrientationDeg">Compass bearing of its long axis or way down, degrees; NaN where it has none.</param>
/// <param name="SizeM">Its characteristic size: length of a line, radius of a rise or hollow, m.</param>
/// <param name="Name">Its name; empty where it has none.</param>
public sealed record TruthForm(
    FormClass Class, FormGeometry Geometry, double DepthM, double OrientationDeg, double SizeM, string Name = "")
{
    /// <summary>The place that stands for the form: the point, the middle of the line, or the mean of the outer ring.</summary>
    public PlanePoint Place
    {
        get
        {
            IReadOnlyList<PlanePoint> points = Geometry.Points;
            if (Geometry.Shape != FormShape.Area) return points[points.Count / 2];
            double x = 0, y = 0;
            foreach (PlanePoint p in points) { x += p.XM / points.Count; y += p.YM / points.Count; }
            return new PlanePoint(x, y);
        }
    }
}
