using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Basin.Forms;

/// <summary>A form of the bottom. Immutable.</summary>
public sealed record BottomForm
{
    /// <summary>Number within its map, from 0.</summary>
    public required int Id { get; init; }

    /// <summary>What it is.</summary>
    public required FormClass Class { get; init; }

    /// <summary>Where it lies.</summary>
    public required FormGeometry Geometry { get; init; }

    /// <summary>The place that stands for it: top, apex, middle of the line, inmost place of the area.</summary>
    public required PlanePoint Place { get; init; }

    /// <summary>Length of a line, or greatest width of the rest, m.</summary>
    public required double LengthM { get; init; }

    /// <summary>Width: of a channel from edge to edge, of a rise or hollow at half height, of an area at its inmost place, m; 0 where it has none.</summary>
    public double WidthM { get; init; }

    /// <summary>Shallowest depth on it, m.</summary>
    public required double ShallowM { get; init; }

    /// <summary>Deepest depth on it, m.</summary>
    public required double DeepM { get; init; }

    /// <summary>Compass bearing of its long axis or way down, degrees, 0 to 360; NaN where it has none.</summary>
    public double OrientationDeg { get; init; } = double.NaN;

    /// <summary>How far it stands out: height of a rise, depth of a hollow, height of banks, drop of a ledge, fall beside a crest, m.</summary>
    public double ProminenceM { get; init; }

    /// <summary>Steepest slope of its edge, degrees.</summary>
    public double EdgeSlopeDeg { get; init; }

    /// <summary>How sure the finder is, 0 to 1: a half where the form just passes, near 1 where it stands out several times over. Not a frequency.</summary>
    public required double ConfidenceShare { get; init; }

    /// <summary>Left edge of a channel, looking up the channel; empty otherwise.</summary>
    public IReadOnlyList<PlanePoint> LeftEdge { get; init; } = [];

    /// <summary>Right edge of a channel, looking up the channel; empty otherwise.</summary>
    public IReadOnlyList<PlanePoint> RightEdge { get; init; } = [];

    /// <summary>A bend or channel beside a flat: distance from the edge to the flat, m; NaN where there is none.</summary>
    public double ToFlatM { get; init; } = double.NaN;
}
