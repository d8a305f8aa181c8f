using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Basin;

/// <summary>Kinds of cover a person marks on the bottom.</summary>
public enum CoverKind
{
    /// <summary>Something else, told by the note.</summary>
    Other,

    /// <summary>A brush pile.</summary>
    Brush,

    /// <summary>A stump or a field of them.</summary>
    Stumps,

    /// <summary>Standing timber.</summary>
    StandingTimber,

    /// <summary>Rock, boulders or a rock pile.</summary>
    Rock,

    /// <summary>Weed or its edge.</summary>
    Weed,

    /// <summary>A drowned road, wall, foundation or bridge.</summary>
    Works,
}

/// <summary>A piece of cover.</summary>
/// <param name="Place">Where it is.</param>
/// <param name="Kind">What it is.</param>
/// <param name="RadiusM">How far it reaches from its place, m; 0 for a single object.</param>
/// <param name="HeightM">How far it stands over the bottom, m; null when not known.</param>
/// <param name="Note">The user's words.</param>
public sealed record CoverMark(GeoPoint Place, CoverKind Kind, double RadiusM, double? HeightM, string Note);
