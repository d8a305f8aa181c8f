using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Lake;
using SecondShore.Open.Outlines;

namespace SecondShore.Open.Lakes;

/// <summary>A lake as far as its angler and open services can tell it, before it is a folder. Immutable; null where nobody knows.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Place">A place on it, or the nearest known.</param>
public sealed record LakeDraft(string Name, GeoPoint Place)
{
    /// <summary>Height of its surface above the sea, m.</summary>
    public double? ElevationM { get; init; }

    /// <summary>IANA time zone.</summary>
    public string? TimeZoneId { get; init; }

    /// <summary>Its outline.</summary>
    public LakeOutline? Outline { get; init; }

    /// <summary>Its deepest water, m.</summary>
    public double? DeepestM { get; init; }

    /// <summary>Whether a dam holds it.</summary>
    public bool? IsReservoir { get; init; }

    /// <summary>Where the dam stands.</summary>
    public GeoPoint? Dam { get; init; }

    /// <summary>How deep a white disc is seen, m.</summary>
    public double? SecchiM { get; init; }

    /// <summary>How clear the water is, in a word.</summary>
    public WaterClarity? Clarity { get; init; }

    /// <summary>Units to show.</summary>
    public DisplayUnits Units { get; init; }

    /// <summary>What the place search wants shown; null where none was asked.</summary>
    public string? PlaceAttribution { get; init; }
}
