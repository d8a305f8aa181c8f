using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Open.Outlines;

/// <summary>A lake's outline with what is known of where it came from. Immutable.</summary>
/// <param name="Shore">The water and its islands.</param>
/// <param name="AreaM2">Area of the water, islands left out, m2.</param>
/// <param name="Inside">A place on the water.</param>
/// <param name="Attribution">What its licence wants shown; empty where nothing does.</param>
/// <param name="Source">Where it came from, such as <c>way/123</c>.</param>
public sealed record LakeOutline(Shoreline Shore, double AreaM2, GeoPoint Inside, string Attribution, string Source)
{
    /// <summary>Whether it only stands in for an outline that nobody has: a round one of the area told.</summary>
    public bool IsStandIn { get; init; }

    /// <summary>What was odd about it.</summary>
    public IReadOnlyList<Finding> Notes { get; init; } = [];

    /// <summary>Its box.</summary>
    public GeoBox Box => GeoBox.Around(Shore.Polygons.SelectMany(p => p.Outer)) ?? default;

    /// <summary>Whether a place lies on the water.</summary>
    public bool Holds(GeoPoint place) => Shore.Polygons.Any(p => OutlineRings.Holds(p, place));

    /// <summary>An outline of rings; null where they enclose no water.</summary>
    public static LakeOutline? Of(IReadOnlyList<WaterPolygon> polygons, string attribution, string source)
    {
        ArgumentNullException.ThrowIfNull(polygons);
        if (polygons.Count == 0) return null;
        WaterPolygon[] bySize = [.. polygons.OrderByDescending(OutlineRings.AreaM2)];
        double areaM2 = bySize.Sum(OutlineRings.AreaM2);
        return areaM2 > 0 && OutlineRings.Within(bySize[0]) is { } inside
            ? new LakeOutline(new Shoreline(bySize), areaM2, inside, attribution, source)
            : null;
    }

    /// <summary>A round outline of an area around a place, for a lake of which nothing else is known.</summary>
    /// <param name="middle">Its middle.</param>
    /// <param name="areaM2">Its area, m2.</param>
    public static LakeOutline Round(GeoPoint middle, double areaM2)
    {
        const int Corners = 72;
        // The polygon has the area, not the circle around it.
        double radiusM = Math.Sqrt(2 * areaM2 / (Corners * Math.Sin(Math.Tau / Corners)));
        LocalProjection plane = new(middle);
        GeoPoint[] ring = [.. Enumerable.Range(0, Corners).Select(k => Math.SinCos(Math.Tau * k / Corners))
            .Select(t => plane.ToGeo(new PlanePoint(radiusM * t.Cos, radiusM * t.Sin)))];
        return new LakeOutline(new Shoreline([new WaterPolygon(ring, [])]), areaM2, middle, "", "stand-in") { IsStandIn = true };
    }
}
