using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Shape;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Tests.Basin.Shape;

/// <summary>Outlines of simple shapes around 45 N 90 W.</summary>
internal static class Outlines
{
    public static readonly LocalProjection Plane = new(new GeoPoint(45, -90));

    /// <summary>A sketch of rings in the plane: the outer ring, then islands.</summary>
    public static LakeSketch Sketch(params PlanePoint[][] rings) =>
        new(new Shoreline([new WaterPolygon(Places(rings[0]), [.. rings[1..].Select(Places)])])) { Projection = Plane, WaterCells = 3000 };

    public static PlanePoint[] Circle(double radiusM, double xM = 0, double yM = 0) => Ellipse(radiusM, radiusM, 0, xM, yM);

    public static PlanePoint[] Ellipse(double longM, double shortM, double turnRad = 0, double xM = 0, double yM = 0) =>
        [.. Enumerable.Range(0, 180)
            .Select(k => Turned(new PlanePoint(longM * Math.Cos(k * Math.PI / 90), shortM * Math.Sin(k * Math.PI / 90)), turnRad, xM, yM))];

    /// <summary>A straight valley: a long triangle with its tail in the west and its dam in the east.</summary>
    public static PlanePoint[] Valley(double lengthM, double damM) => [new(0, 0), new(lengthM, -0.5 * damM), new(lengthM, 0.5 * damM)];

    public static PlanePoint Turned(PlanePoint p, double turnRad, double xM = 0, double yM = 0)
    {
        (double sin, double cos) = Math.SinCos(turnRad);
        return new PlanePoint((cos * p.XM) - (sin * p.YM) + xM, (sin * p.XM) + (cos * p.YM) + yM);
    }

    public static GeoPoint[] Places(IEnumerable<PlanePoint> ring) => [.. ring.Select(Plane.ToGeo)];
}
