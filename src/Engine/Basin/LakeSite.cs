using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Basin;

/// <summary>What is known of a lake before anything is measured. Immutable; null means not known.</summary>
public sealed record LakeSite
{
    /// <summary>The lake's name.</summary>
    public required string Name { get; init; }

    /// <summary>A place on the lake.</summary>
    public required GeoPoint Position { get; init; }

    /// <summary>Elevation of full pool above sea level, m.</summary>
    public double ElevationM { get; init; }

    /// <summary>IANA time zone.</summary>
    public required string TimeZoneId { get; init; }

    /// <summary>Area of the water surface at full pool, m2.</summary>
    public double? SurfaceAreaM2 { get; init; }

    /// <summary>Greatest depth at full pool, m.</summary>
    public double? MaxDepthM { get; init; }

    /// <summary>Typical Secchi depth, m.</summary>
    public double? SecchiM { get; init; }

    /// <summary>Standard error of the logarithm of <see cref="SecchiM"/>; null for that of a measured one.</summary>
    public double? SecchiLogSd { get; init; }

    /// <summary>Measured light extinction, m-1; wins over <see cref="SecchiM"/>.</summary>
    public double? LightExtinctionPerM { get; init; }

    /// <summary>Depth of a dam's deep outlet below full pool, m; null for a natural lake or where water leaves at the top.</summary>
    public double? OutletDepthM { get; init; }

    /// <summary>Whether the lake is held by a dam.</summary>
    public bool IsReservoir { get; init; }

    /// <summary>Height over ground at which the weather file's wind was measured, m.</summary>
    public double? WindHeightM { get; init; }
}
