namespace SecondShore.Open.Surveys;

/// <summary>Open standards that depths are served by.</summary>
public enum SurveyStandard
{
    /// <summary>OGC API Features.</summary>
    OgcFeatures,

    /// <summary>OGC Web Feature Service, version 2.</summary>
    Wfs,

    /// <summary>A layer of an ArcGIS feature or map service.</summary>
    ArcGisFeatures,

    /// <summary>An ArcGIS image service.</summary>
    ArcGisImage,

    /// <summary>OGC Web Coverage Service, version 2.</summary>
    Wcs,

    /// <summary>A file by its link.</summary>
    File,
}

/// <summary>A layer of depths that a service offers. Immutable.</summary>
/// <param name="Standard">How it is asked.</param>
/// <param name="Address">Where.</param>
/// <param name="Id">What it is called there.</param>
/// <param name="Title">Its title.</param>
public sealed record SurveyLayer(SurveyStandard Standard, Uri Address, string Id, string Title)
{
    /// <summary>What its service says of licence and origin; empty where it says nothing.</summary>
    public string Licence { get; init; } = "";

    /// <summary>The most features it gives at once, 1 to 2000.</summary>
    public int PageSize { get; init; } = 1000;

    /// <summary>The form that a WFS is asked for; empty for the usual one.</summary>
    public string Format { get; init; } = "";

    /// <summary>Names of a coverage's two axes, northward first.</summary>
    public (string North, string East) Axes { get; init; } = ("Lat", "Long");
}

/// <summary>A survey as fetched. Immutable.</summary>
/// <param name="Name">A name for its file, such as <c>lake-contours.geojson</c>.</param>
/// <param name="Bytes">The file.</param>
/// <param name="Layer">Where it came from.</param>
/// <param name="Notes">What was odd.</param>
public sealed record FetchedSurvey(string Name, byte[] Bytes, SurveyLayer Layer, IReadOnlyList<Finding> Notes);
