using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Basin.Arms;

/// <summary>A place with a name the user gave it.</summary>
/// <param name="Name">The name.</param>
/// <param name="Place">Where it is.</param>
public readonly record struct NamedPlace(string Name, GeoPoint Place);

/// <summary>What counts as an arm.</summary>
public sealed record ArmOptions
{
    /// <summary>The usual choice.</summary>
    public static readonly ArmOptions Default = new();

    /// <summary>Smallest share of the lake's area that an arm may have, above 0 to 1.</summary>
    public double LeastShare { get; init; } = 0.03;

    /// <summary>Smallest area of an arm, m2: a pond is one water.</summary>
    public double LeastAreaM2 { get; init; } = 20_000;

    /// <summary>Width of an arm against the lake's widest water, above which it is not told from the main lake, 0 to 1.</summary>
    public double NarrowShare { get; init; } = 0.42;

    /// <summary>Relief by which two hollows must differ from the sill between them, as a share of the shallower one's depth.</summary>
    public double SillShare { get; init; } = 0.2;

    /// <summary>Length along the water over which a long lake is cut into reaches, m.</summary>
    public double ReachLengthM { get; init; } = 12_000;

    /// <summary>Named places: an arm that holds one takes its name; the largest water only from a place over its deeper half.</summary>
    public IReadOnlyList<NamedPlace> Names { get; init; } = [];
}
