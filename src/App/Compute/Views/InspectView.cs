namespace SecondShore.App.Compute.Views;

/// <summary>What was understood of files dropped, to be confirmed.</summary>
public sealed record InspectView
{
    /// <summary>The lake's name; empty when no file says it.</summary>
    public string Name { get; init; } = "";

    /// <summary>Whether a position is known.</summary>
    public bool HasSite { get; init; }

    /// <summary>Latitude, degrees.</summary>
    public double? LatDeg { get; init; }

    /// <summary>Longitude, degrees.</summary>
    public double? LonDeg { get; init; }

    /// <summary>Whether weather came along.</summary>
    public bool HasWeather { get; init; }

    /// <summary>Surveys found.</summary>
    public IReadOnlyList<SurveyView> Surveys { get; init; } = [];

    /// <summary>What is odd, one sentence each.</summary>
    public IReadOnlyList<string> Problems { get; init; } = [];

    /// <summary>Whether the lake was taken in.</summary>
    public bool Taken { get; init; }
}

/// <summary>One survey file as understood.</summary>
/// <remarks><c>Waits</c>: it cannot be placed, or its numbers not turned into depths, before the user answers.</remarks>
public sealed record SurveyView(string File, string Format, string Kind, long Count, string Unit, bool UnitStated, string Sense, bool SenseStated,
    string Crs, double? MinDepthM, double? MaxDepthM, bool Waits, IReadOnlyList<string> Doubts);

/// <summary>What the user answers of a lake being taken in; null leaves it to the files.</summary>
/// <param name="Name">Name.</param>
/// <param name="LatDeg">Latitude, degrees.</param>
/// <param name="LonDeg">Longitude, degrees.</param>
/// <param name="ZoneId">IANA time zone.</param>
/// <param name="Unit">Unit of the survey's numbers.</param>
/// <param name="Sense">Sense of the survey's numbers.</param>
/// <param name="Crs">Coordinate system of the survey, such as EPSG:26918.</param>
/// <param name="SurfaceElevationM">Elevation of the water's surface, m, for a survey of elevations.</param>
public sealed record NewLakeFacts(string? Name, double? LatDeg, double? LonDeg, string? ZoneId, string? Unit, string? Sense,
    string? Crs = null, double? SurfaceElevationM = null);

/// <summary>A file held until the engine looks at it.</summary>
public sealed record HeldFile(string Path, long Bytes);
