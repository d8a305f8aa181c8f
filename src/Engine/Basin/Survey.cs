using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Basin;

/// <summary>Everything measured of a lake's bottom, in depth below full pool, however it was filed. Immutable.</summary>
public sealed record Survey
{
    /// <summary>Scattered and track soundings, one set per file.</summary>
    public IReadOnlyList<SoundingSet> Soundings { get; init; } = [];

    /// <summary>Depth contours.</summary>
    public IReadOnlyList<ContourLine> Contours { get; init; } = [];

    /// <summary>Depth or elevation rasters.</summary>
    public IReadOnlyList<SurveyRaster> Rasters { get; init; } = [];

    /// <summary>The shoreline at full pool, if a file gives it.</summary>
    public Shoreline? Shoreline { get; init; }
}

/// <summary>Soundings of one file, in parallel arrays of one length. Arrays are kept, not copied.</summary>
/// <param name="Name">The file's name, for messages.</param>
/// <param name="LatDeg">Latitudes, degrees.</param>
/// <param name="LonDeg">Longitudes, degrees.</param>
/// <param name="DepthM">Depths below full pool, m; 0 or negative marks the shore or land.</param>
/// <param name="SdM">Standard error of a depth, m; null when not known.</param>
/// <param name="TrackBreaks">Ascending indices at which a new track begins; empty for scattered points.</param>
public sealed record SoundingSet(
    string Name, double[] LatDeg, double[] LonDeg, double[] DepthM, double? SdM, IReadOnlyList<int> TrackBreaks);

/// <summary>A line of one depth. <paramref name="Closed"/> lines repeat no point.</summary>
/// <param name="DepthM">Depth below full pool, m.</param>
/// <param name="Points">The line's points, two or more.</param>
/// <param name="Closed">Whether the last point joins the first.</param>
public sealed record ContourLine(double DepthM, IReadOnlyList<GeoPoint> Points, bool Closed);

/// <summary>The lake's outline at full pool: polygons of water with islands as holes.</summary>
/// <param name="Polygons">Separate pieces of water, usually one.</param>
public sealed record Shoreline(IReadOnlyList<WaterPolygon> Polygons);

/// <summary>One piece of water. Rings repeat no point; either turn is allowed.</summary>
/// <param name="Outer">Outer ring, three points or more.</param>
/// <param name="Islands">Rings of islands.</param>
public sealed record WaterPolygon(IReadOnlyList<GeoPoint> Outer, IReadOnlyList<IReadOnlyList<GeoPoint>> Islands);

/// <summary>A raster of depths as filed, with its place on the earth left to the reader of its coordinate system.</summary>
public sealed class SurveyRaster
{
    /// <summary>Makes a raster.</summary>
    /// <param name="name">The file's name, for messages.</param>
    /// <param name="columns">Columns.</param>
    /// <param name="rows">Rows; row 0 is the first of the file, usually northmost.</param>
    /// <param name="depthM">[rows*columns] depth below full pool, m; NaN where there is no data; 0 or negative on land. Kept, not copied.</param>
    /// <param name="placement">Where the pixels lie.</param>
    public SurveyRaster(string name, int columns, int rows, float[] depthM, IRasterPlacement placement)
    {
        Core.Require.NotNull(depthM);
        Core.Require.SameLength(depthM.Length, checked(columns * rows), nameof(depthM));
        (Name, Columns, Rows, DepthM, Placement) = (name, columns, rows, depthM, placement);
    }

    /// <summary>The file's name, for messages.</summary>
    public string Name { get; }

    /// <summary>Columns.</summary>
    public int Columns { get; }

    /// <summary>Rows.</summary>
    public int Rows { get; }

    /// <summary>[Rows*Columns] depth below full pool, m; NaN where there is no data.</summary>
    public float[] DepthM { get; }

    /// <summary>Where the pixels lie.</summary>
    public IRasterPlacement Placement { get; }
}

/// <summary>Ties a raster's pixels to the earth. Pixel coordinates are of centres: the first pixel is (0, 0).</summary>
public interface IRasterPlacement
{
    /// <summary>The place of a pixel coordinate.</summary>
    GeoPoint PlaceOf(double column, double row);

    /// <summary>The pixel coordinate of a place; may lie outside the raster.</summary>
    (double Column, double Row) PixelOf(GeoPoint place);
}
