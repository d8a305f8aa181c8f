using System.Text.RegularExpressions;
using SecondShore.Formats.Coordinates;
using SecondShore.Formats.Surveys.Arrays;
using SecondShore.Formats.Surveys.Hypotheses;

namespace SecondShore.Formats.Surveys.NetCdf;

/// <summary>What names and attributes of arrays tell of depths and places, by the Climate and Forecast conventions (CF 1.11) and by custom.</summary>
internal static partial class CfFacts
{
    private static readonly string[] Names = ["depth", "bathy", "sounding", "elev", "altitude", "topo", "height", "dem", "z", "band1"];

    /// <summary>The first array that is named for depth or elevation; null without one.</summary>
    public static FiledArray? NamedForDepth(List<FiledArray> arrays)
    {
        foreach (string name in Names)
        {
            if (arrays.Find(a => Plain(a.Name) == name || (name.Length > 1 && Plain(a.Name).StartsWith(name, StringComparison.Ordinal))) is FiledArray found) return found;
        }

        return arrays.Find(a => a.Text("standard_name").Contains("depth", StringComparison.Ordinal) || a.Text("standard_name").Contains("altitude", StringComparison.Ordinal));
    }

    /// <summary>Hands coordinate system, unit and sense to a raw survey.</summary>
    /// <param name="depths">The array of depths.</param>
    /// <param name="arrays">All arrays.</param>
    /// <param name="degrees">Whether places are in degrees.</param>
    /// <param name="raw">Receives what is told.</param>
    public static void Tell(FiledArray depths, List<FiledArray> arrays, bool degrees, RawSurvey raw)
    {
        Crs(depths, arrays, degrees, raw);
        if (Unit(depths.Text("units")) is DepthUnit unit) (raw.Unit, raw.UnitKnown) = (unit, Knowledge.Stated);
        // A depth in a unit that is not known here: asked about.
        raw.OddUnit = raw.Unit is null && depths.Text("units").Trim().Length > 0;
        if (depths.Text("positive") == "down" || (Plain(depths.Name).StartsWith("depth", StringComparison.Ordinal) && depths.Text("positive") != "up"))
            (raw.Sense, raw.SenseKnown) = (DepthSense.Depth, Knowledge.Stated);
    }

    private static void Crs(FiledArray depths, List<FiledArray> arrays, bool degrees, RawSurvey raw)
    {
        FiledArray? mapping = arrays.Find(a => a.Name == depths.Text("grid_mapping"));
        string wkt = mapping is null ? "" : ((string[])["crs_wkt", "spatial_ref", "esri_pe_string"]).Select(mapping.Text).FirstOrDefault(t => t.Length > 0) ?? "";
        FindingForm fault = "";
        if (wkt.Length > 0) raw.Crs = LastCode().Match(wkt) is { Success: true } code && !wkt.Contains("CS[", StringComparison.Ordinal)
            ? CoordinateSystems.Parse(code.Groups[1].Value, out fault)
            : CoordinateSystems.FromWkt(wkt, out fault);
        if (raw.Crs is null && degrees) raw.Crs = new GeographicSystem("geographic degrees", "");
        raw.CrsKnown = raw.Crs is null ? Knowledge.Assumed : Knowledge.Stated;
        if (raw.Crs is null && !fault.IsEmpty) raw.Doubts.Add(fault.ToFinding().Opening());
    }

    private static DepthUnit? Unit(string units) => units.ToLowerInvariant() switch
    {
        "us_survey_foot" or "us_survey_feet" => DepthUnit.Feet,
        string plain => WordList.Units.TryGetValue(plain.Trim(), out DepthUnit unit) ? unit : null,
    };

    /// <summary>Whether an array says that it is in something else than a length: temperatures, shares, counts.</summary>
    public static bool IsOther(FiledArray a) => a.Text("units").Trim() is { Length: > 0 } units && Unit(units) is null
        && HeaderWords.Of(Plain(a.Name)).Role is not (ColumnRole.Depth or ColumnRole.Height);

    public static bool IsEast(FiledArray a) => Plain(a.Name) is "x" or "lon" or "long" or "longitude" or "easting" or "eastings"
        || a.Text("standard_name") is "longitude" or "projection_x_coordinate" || a.Text("axis") == "X" || a.Text("units").StartsWith("degrees_e", StringComparison.OrdinalIgnoreCase);

    public static bool IsNorth(FiledArray a) => Plain(a.Name) is "y" or "lat" or "latitude" or "northing" or "northings"
        || a.Text("standard_name") is "latitude" or "projection_y_coordinate" || a.Text("axis") == "Y" || a.Text("units").StartsWith("degrees_n", StringComparison.OrdinalIgnoreCase);

    public static bool IsDegrees(FiledArray a) => Plain(a.Name).StartsWith("lon", StringComparison.Ordinal) || Plain(a.Name).StartsWith("lat", StringComparison.Ordinal)
        || a.Text("units").StartsWith("degree", StringComparison.OrdinalIgnoreCase) || a.Text("standard_name") is "longitude" or "latitude";

    private static string Plain(string name) => name[(name.LastIndexOf('/') + 1)..].ToLowerInvariant();

    // Text of the second kind of WKT ends with the system's own code.
    [GeneratedRegex("ID\\[\"EPSG\",\\s*(\\d{4,6})\\]\\s*\\]\\s*$", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex LastCode();
}
