namespace SecondShore.Desk.Views;

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

    /// <summary>What must be asked about the surveys before they can be taken in.</summary>
    public IReadOnlyList<QuestionView> Questions { get; init; } = [];

    /// <summary>First rows of the text files, so that their columns can be named.</summary>
    public IReadOnlyList<TableView> Tables { get; init; } = [];

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
    string? Crs = null, double? SurfaceElevationM = null)
{
    /// <summary>Answers to questions about survey files, in the order given.</summary>
    public IReadOnlyList<SurveyAnswer> Answers { get; init; } = [];
}

/// <summary>An answer about one survey file: keys of lake.json as a JSON object.</summary>
public sealed record SurveyAnswer(string File, string Keys);

/// <summary>A question about one survey file, with its readings.</summary>
/// <param name="File">The file.</param>
/// <param name="Kind">What is asked: Place, Depth, Angles, Crs, Whereabouts, Rows, Meaning or Level.</param>
/// <param name="Text">The question in one English sentence.</param>
/// <param name="Low">Least value of the file; null when there is none.</param>
/// <param name="High">Greatest value of the file; null when there is none.</param>
/// <param name="Choices">Readings, likeliest first.</param>
public sealed record QuestionView(string File, string Kind, string Text, double? Low, double? High, IReadOnlyList<ChoiceView> Choices);

/// <summary>One reading of a file, to be chosen with one tap.</summary>
/// <param name="Label">In a few words.</param>
/// <param name="Keys">What it sets in lake.json, a JSON object.</param>
/// <param name="Country">Where the lake would lie; empty when not known.</param>
/// <param name="LatDeg">Latitude of that place, degrees.</param>
/// <param name="LonDeg">Longitude of that place, degrees.</param>
/// <param name="Picture">A small picture; null where the reading gives none yet.</param>
public sealed record ChoiceView(string Label, string Keys, string Country, double? LatDeg, double? LonDeg, PictureView? Picture);

/// <summary>A reading drawn small: its outline on a field of 100 x 100 with a margin, and how many places lie how deep.</summary>
/// <param name="Outline">The outline as the data of an SVG path.</param>
/// <param name="Dots">East, south and share of the greatest depth (0 to 1), place after place.</param>
/// <param name="Counts">Places by depth, shallow to deep, as shares of the fullest class; empty without depths.</param>
/// <param name="DeepestM">Greatest depth, m; null without depths.</param>
/// <param name="WideM">Width of the field, m.</param>
public sealed record PictureView(string Outline, IReadOnlyList<double> Dots, IReadOnlyList<double> Counts, double? DeepestM, double WideM)
{
    /// <summary>Where the deepest place lies on the field: east.</summary>
    public double DeepX { get; init; }

    /// <summary>Where the deepest place lies on the field: south.</summary>
    public double DeepY { get; init; }

    /// <summary>Latitude of the middle, degrees.</summary>
    public double LatDeg { get; init; }

    /// <summary>Longitude of the middle, degrees.</summary>
    public double LonDeg { get; init; }
}

/// <summary>The first rows of a text file.</summary>
/// <param name="File">The file.</param>
/// <param name="Columns">Names by column; empty where the file gives none.</param>
/// <param name="Rows">Cells of the first rows.</param>
/// <param name="X">Column taken for eastings or longitudes, from 0; -1 for none.</param>
/// <param name="Y">Column taken for northings or latitudes, from 0; -1 for none.</param>
/// <param name="Depth">Column taken for the depth, from 0; -1 for none.</param>
public sealed record TableView(string File, IReadOnlyList<string> Columns, IReadOnlyList<IReadOnlyList<string>> Rows, int X, int Y, int Depth)
{
    /// <summary>Whether the file waits for its columns: asked about them, or not read for want of them.</summary>
    public bool Waits { get; init; }

    /// <summary>Whether the depth's column alone is asked for.</summary>
    public bool OnlyDepth { get; init; }
}
