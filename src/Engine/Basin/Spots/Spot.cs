using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Basin.Passes;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Basin.Spots;

/// <summary>Why a place is a spot.</summary>
public enum SpotKind
{
    /// <summary>On the belt.</summary>
    Belt,

    /// <summary>Steep, for when the layers go.</summary>
    Steep,

    /// <summary>A channel's edge, for when the layers go.</summary>
    ChannelEdge,

    /// <summary>Shallow, for a jig that swims.</summary>
    Shallow,
}

/// <summary>A ranked place. Immutable.</summary>
public sealed record Spot
{
    /// <summary>Name that stays the same while the place does: built from its cell.</summary>
    public required string Id { get; init; }

    /// <summary>Rank from 1.</summary>
    public required int Rank { get; init; }

    /// <summary>A, B, C ... Z, AA ... by rank.</summary>
    public required string Letter { get; init; }

    /// <summary>Why it is one.</summary>
    public required SpotKind Kind { get; init; }

    /// <summary>Place in the plane.</summary>
    public required PlanePoint Place { get; init; }

    /// <summary>Place on the earth.</summary>
    public required GeoPoint At { get; init; }

    /// <summary>Depth there, m.</summary>
    public required double DepthM { get; init; }

    /// <summary>The form it lies on or by.</summary>
    public required FormClass Form { get; init; }

    /// <summary>Index of the form in its map; -1 for none.</summary>
    public required int FormId { get; init; }

    /// <summary>The lake's name for it; empty when it has none.</summary>
    public string Name { get; init; } = "";

    /// <summary>Chance that the bottom there lies in reach of the thermocline, 0 to 1: itself the measure of the doubt. 0 without a thermocline.</summary>
    public required double ChanceInReach { get; init; }

    /// <summary>Value in points, about 0 to 100: what the place offers times the chance that it is in play; spread by chance and by how sure the form is.</summary>
    public required Spread Value { get; init; }

    /// <summary>Reasons, weightiest first.</summary>
    public required IReadOnlyList<Reason> Reasons { get; init; }

    /// <summary>Steepest slope within half a yardstick, degrees.</summary>
    public required double BoundingSlopeDeg { get; init; }

    /// <summary>Lines to drag along, best first; may be empty where the water is too small.</summary>
    public IReadOnlyList<Pass> Passes { get; init; } = [];
}
