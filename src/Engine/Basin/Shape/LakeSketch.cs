using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Basin.Shape;

/// <summary>How a lake's basin came to be, as far as it tells where the deep water lies.</summary>
public enum BasinKind
{
    /// <summary>Not known: taken as natural.</summary>
    Unknown,

    /// <summary>A natural basin: deepest far from its shores.</summary>
    Natural,

    /// <summary>A valley behind a dam: deepest at the dam, along the drowned streams.</summary>
    Dammed,
}

/// <summary>All that is known of a lake whose bottom nobody has measured. Immutable.</summary>
/// <param name="Outline">The shore with its islands. Rings may cross themselves or repeat points:
/// water is what lies inside by the even-odd rule.</param>
public sealed record LakeSketch(Shoreline Outline)
{
    /// <summary>Natural or dammed.</summary>
    public BasinKind Kind { get; init; }

    /// <summary>The dam, on the shore or near it; null where it is not known.</summary>
    public GeoPoint? Dam { get; init; }

    /// <summary>Greatest depth, m, above 0; null where it is not known.</summary>
    public double? DeepestM { get; init; }

    /// <summary>Mean depth, m, above 0; null where it is not known.</summary>
    public double? MeanM { get; init; }

    /// <summary>The lake's plane; null puts its origin in the middle of the outline.</summary>
    public LocalProjection? Projection { get; init; }

    /// <summary>Cells of water that the grid should have, about.</summary>
    public int WaterCells { get; init; } = 12_000;
}
