namespace SecondShore.Formats.Surveys;

/// <summary>What a survey file holds.</summary>
public enum SurveyKind
{
    /// <summary>Soundings, scattered or along tracks.</summary>
    Soundings,

    /// <summary>Lines or polygons of even depth.</summary>
    Contours,

    /// <summary>A raster.</summary>
    Raster,

    /// <summary>Outlines without depths.</summary>
    Shoreline,

    /// <summary>Positions without depths.</summary>
    TrackOnly,

    /// <summary>Nothing that helps.</summary>
    Nothing,
}

/// <summary>How a fact of a survey came to be known.</summary>
public enum Knowledge
{
    /// <summary>The file says it.</summary>
    Stated,

    /// <summary>Found from the numbers; to be confirmed.</summary>
    Found,

    /// <summary>Nothing tells; the usual was taken; to be confirmed.</summary>
    Assumed,

    /// <summary>The user set it.</summary>
    Set,
}

/// <summary>A box of latitudes and longitudes, degrees; west may exceed east across the date line.</summary>
public sealed record GeoExtent(double SouthDeg, double WestDeg, double NorthDeg, double EastDeg);

/// <summary>What was understood of one survey file, to be shown and confirmed. Immutable.</summary>
public sealed record SurveyUnderstanding
{
    /// <summary>The file's name.</summary>
    public required string File { get; init; }

    /// <summary>Format in words, such as <c>ESRI ASCII grid</c>.</summary>
    public required string Format { get; init; }

    /// <summary>What it holds.</summary>
    public required SurveyKind Kind { get; init; }

    /// <summary>Unit of the depths.</summary>
    public DepthUnit Unit { get; init; }

    /// <summary>How the unit is known.</summary>
    public Knowledge UnitKnown { get; init; } = Knowledge.Assumed;

    /// <summary>Sense of the depths.</summary>
    public DepthSense Sense { get; init; }

    /// <summary>How the sense is known.</summary>
    public Knowledge SenseKnown { get; init; } = Knowledge.Assumed;

    /// <summary>Coordinate system in words; empty when not known.</summary>
    public string Crs { get; init; } = "";

    /// <summary>How the coordinate system is known.</summary>
    public Knowledge CrsKnown { get; init; } = Knowledge.Assumed;

    /// <summary>Number of soundings, of contour lines, of outline rings or of raster cells with data.</summary>
    public long Count { get; init; }

    /// <summary>Raster columns; 0 for the rest.</summary>
    public int Columns { get; init; }

    /// <summary>Raster rows; 0 for the rest.</summary>
    public int Rows { get; init; }

    /// <summary>Where it lies; null when not known.</summary>
    public GeoExtent? Extent { get; init; }

    /// <summary>Smallest value as filed, in <see cref="Unit"/> and <see cref="Sense"/>; NaN without depths.</summary>
    public double LowestFiled { get; init; } = double.NaN;

    /// <summary>Largest value as filed; NaN without depths.</summary>
    public double HighestFiled { get; init; } = double.NaN;

    /// <summary>Smallest depth below full pool, m; NaN without depths.</summary>
    public double MinDepthM { get; init; } = double.NaN;

    /// <summary>Largest depth below full pool, m; NaN without depths.</summary>
    public double MaxDepthM { get; init; } = double.NaN;

    /// <summary>What each column or attribute was taken for, such as <c>Depth: depth in feet</c>.</summary>
    public IReadOnlyList<string> RolesTaken { get; init; } = [];

    /// <summary>What is uncertain and should be confirmed, in sentences.</summary>
    public IReadOnlyList<Finding> Doubts { get; init; } = [];
}
