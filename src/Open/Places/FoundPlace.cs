using SecondShore.Engine.Core.Geo;

namespace SecondShore.Open.Places;

/// <summary>A place found by its name. Immutable.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Place">Where it lies.</param>
/// <param name="Region">Region and country, such as <c>Michigan, United States</c>; may be empty.</param>
public sealed record FoundPlace(string Name, GeoPoint Place, string Region)
{
    /// <summary>Height of the ground or the water above the sea, m; null when not told.</summary>
    public double? ElevationM { get; init; }

    /// <summary>IANA time zone; null when not told.</summary>
    public string? TimeZoneId { get; init; }

    /// <summary>Whether it is a standing water by itself, not a town or a hill of that name.</summary>
    public bool IsWater { get; init; }
}
