using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Basin.Arms;

/// <summary>Where an arm joins a neighbour.</summary>
/// <param name="Neighbour">Index of the neighbour in <see cref="ArmSet.Arms"/>.</param>
/// <param name="SillM">Depth of the deepest way across, m: of the sill, or of the mouth where there is none.</param>
/// <param name="WidthM">Width of the passage, m.</param>
/// <param name="Place">The deepest place of the passage.</param>
public readonly record struct ArmLink(int Neighbour, double SillM, double WidthM, PlanePoint Place);

/// <summary>A part of a lake whose layers may go their own way: a basin behind a sill, or a side arm. Immutable.</summary>
public sealed record Arm
{
    /// <summary>Its name, such as 'Main lake' or 'North arm'.</summary>
    public required string Name { get; init; }

    /// <summary>Its own areas by depth.</summary>
    public required Hypsography Hypsography { get; init; }

    /// <summary>Area, m2.</summary>
    public required double AreaM2 { get; init; }

    /// <summary>Mean depth, m.</summary>
    public required double MeanDepthM { get; init; }

    /// <summary>Greatest depth, m.</summary>
    public required double MaxDepthM { get; init; }

    /// <summary>Its deepest place.</summary>
    public required PlanePoint Deepest { get; init; }

    /// <summary>Middle of its cells; may lie on land.</summary>
    public required PlanePoint Centroid { get; init; }

    /// <summary>Open water in the direction that has most of it, mean over the arm, m.</summary>
    public required double FetchM { get; init; }

    /// <summary>Open water, mean over all directions and over the arm, against the same mean for the whole lake; 1 is as exposed as the lake.</summary>
    public required double ExposureShare { get; init; }

    /// <summary>Ways into neighbouring arms, widest first.</summary>
    public required IReadOnlyList<ArmLink> Links { get; init; }
}
