using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Gridding;

/// <summary>How depth is drawn between soundings.</summary>
public enum GriddingMethod
{
    /// <summary>Whichever method predicts left-out soundings of this survey best.</summary>
    Auto,

    /// <summary>Flat triangles between neighbouring soundings (Delaunay1934).</summary>
    Linear,

    /// <summary>Natural neighbours: smooth, exact at the soundings, no settings (Sibson1981).</summary>
    NaturalNeighbour,

    /// <summary>Ordinary kriging from the nearest soundings of each direction (Cressie1993).</summary>
    Kriging,

    /// <summary>Mean of the nearest soundings of each direction, weighted by the inverse square of distance: smooths noise (Shepard1968).</summary>
    Distance,
}

/// <summary>Wishes about a grid; every one may be left to the gridder.</summary>
public sealed record GridOptions
{
    /// <summary>Everything chosen by the gridder.</summary>
    public static readonly GridOptions Default = new();

    /// <summary>Side of a cell, m; null chooses from the size of the lake and the density of the data.</summary>
    public double? CellM { get; init; }

    /// <summary>Largest number of cells that the choice may lead to, land included.</summary>
    public int MaxCells { get; init; } = 1_500_000;

    /// <summary>The plane to use; null puts its origin on the lake.</summary>
    public LocalProjection? Projection { get; init; }

    /// <summary>The frame to fill, in <see cref="Projection"/> (which must then be given); null chooses it.</summary>
    public GridFrame? Frame { get; init; }

    /// <summary>How depth is drawn between soundings.</summary>
    public GriddingMethod Method { get; init; } = GriddingMethod.Auto;

    /// <summary>A place on the lake: where rasters also cover other hollows, the water joined to it is kept. Null keeps the largest.</summary>
    public GeoPoint? OnTheLake { get; init; }

    /// <summary>Seed of the chance by which soundings are left out to measure the error.</summary>
    public ulong Seed { get; init; } = 1;
}
