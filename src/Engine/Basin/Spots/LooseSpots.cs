namespace SecondShore.Engine.Basin.Spots;

/// <summary>Where fish are looked for when nothing holds them at one depth, and the points such places get. All are choices (docs/science/spots.md).</summary>
internal static class LooseSpots
{
    /// <summary>Depths of bluffs, m.</summary>
    public const float BluffFromM = 2, BluffToM = 20;

    /// <summary>Depths of channels and of their bends and junctions, m.</summary>
    public const float ChannelFromM = 2, ChannelToM = 22;

    /// <summary>Depths of the shallow ends of side channels, m.</summary>
    public const float SideFromM = 1, SideToM = 4.5f;

    /// <summary>Depths of flats, m.</summary>
    public const float FlatFromM = 0.8f, FlatToM = 4;

    /// <summary>Depths of points, humps, ledges and saddles, m.</summary>
    public const float RiseFromM = 2, RiseToM = 18;

    /// <summary>Slope, as a tangent, from which a point or a hump is steep enough to hold fish without layers.</summary>
    public const double SteepTan = 0.25;

    /// <summary>Points of a bluff, of a shallow side channel, and of a flat with the wind on it, beside what the bottom offers.</summary>
    public const double BluffPoints = 8, SidePoints = 10, WindyFlatPoints = 12;

    /// <summary>Share of what the bottom offers that a deep channel or a steep rise keeps.</summary>
    public const double OfferedShare = 0.8;

    /// <summary>Weight of an arm whose state is not known beside a settled one.</summary>
    public const double OtherArmShare = 0.8;

    /// <summary>Slope of 25 degrees, as a tangent: an edge is as sharp as it counts.</summary>
    public const double SharpTan = 0.466;
}
