using SecondShore.Engine.Core.Geo;

namespace SecondShore.Formats.Writers;

/// <summary>A shape on the map.</summary>
public abstract record MapShape
{
    private MapShape()
    {
    }

    /// <summary>A point.</summary>
    public sealed record Point(GeoPoint Place) : MapShape;

    /// <summary>A line of two points or more.</summary>
    public sealed record Line(IReadOnlyList<GeoPoint> Points) : MapShape;

    /// <summary>Several lines.</summary>
    public sealed record Lines(IReadOnlyList<IReadOnlyList<GeoPoint>> Parts) : MapShape;

    /// <summary>A polygon: an outer ring and its holes, no point repeated.</summary>
    public sealed record Polygon(IReadOnlyList<GeoPoint> Outer, IReadOnlyList<IReadOnlyList<GeoPoint>> Holes) : MapShape;

    /// <summary>Several polygons.</summary>
    public sealed record Polygons(IReadOnlyList<Polygon> Parts) : MapShape;
}

/// <summary>A property of a feature: text, a number, yes or no, or a list of texts.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Value">A string, a double, an int, a bool, a list of strings, or null.</param>
public sealed record MapProperty(string Name, object? Value);

/// <summary>A shape with properties.</summary>
/// <param name="Shape">The shape.</param>
/// <param name="Properties">Its properties, in order.</param>
public sealed record MapFeature(MapShape Shape, IReadOnlyList<MapProperty> Properties)
{
    /// <summary>The text of the property called name; empty without one.</summary>
    public string Name => Properties.FirstOrDefault(p => p.Name == "name")?.Value as string ?? "";
}
