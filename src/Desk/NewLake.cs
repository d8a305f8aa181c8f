using System.Text.Json.Nodes;
using SecondShore.Desk.Views;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.Formats.Surveys;

namespace SecondShore.Desk;

/// <summary>A lake folder made of what the user dropped and answered.</summary>
internal static class NewLake
{
    /// <summary>Paths without the folder they were picked from.</summary>
    public static IEnumerable<KeyValuePair<string, byte[]>> Named(IReadOnlyDictionary<string, byte[]> files)
    {
        string prefix = CommonFolder(files.Keys);
        return files.Where(f => FileNames.IsSafe(f.Key[prefix.Length..])).Select(f => KeyValuePair.Create(f.Key[prefix.Length..], f.Value));
    }

    /// <summary>The files with the user's answers in lake.json.</summary>
    public static ILakeFiles WithFacts(ILakeFiles files, NewLakeFacts facts)
    {
        List<(string Key, JsonNode? Value)> keys = [];
        if (facts.Name is { Length: > 0 } name) keys.Add(("name", JsonValue.Create(name)));
        if (facts.LatDeg is { } lat && facts.LonDeg is { } lon)
        {
            keys.Add(("latitude_deg", JsonValue.Create(lat)));
            keys.Add(("longitude_deg", JsonValue.Create(lon)));
        }

        if (facts.ZoneId is { Length: > 0 } zone && files.Find("lake.json") is null) keys.Add(("time_zone", JsonValue.Create(zone)));
        ILakeFiles with = keys.Count > 0 ? LakeFolderEdits.WithLakeKeys(files, [.. keys]) : files;
        foreach (SurveyAnswer answer in facts.Answers)
            if (JsonNode.Parse(answer.Keys) is JsonObject answered && with.Find(answer.File) is string file) with = LakeFolderEdits.WithSurveyKeys(with, file, answered);
        if (facts is { Unit: null, Sense: null, Crs: null, SurfaceElevationM: null }) return with;
        return LakeFolderEdits.WithSurveyKeys(with, null, LakeSettings.KeysOf(new SurveyOptions
        {
            Unit = Enum.TryParse(facts.Unit, out DepthUnit unit) ? unit : null,
            Sense = Enum.TryParse(facts.Sense, out DepthSense sense) ? sense : null,
            Crs = Epsg(facts.Crs),
            SurfaceElevationM = facts.SurfaceElevationM,
        }));
    }

    // A bare number is taken for an EPSG code.
    private static string? Epsg(string? crs) => string.IsNullOrWhiteSpace(crs) ? null : crs.Trim() is var code && code.All(char.IsAsciiDigit) ? "EPSG:" + code : crs.Trim();

    private static string CommonFolder(IEnumerable<string> paths)
    {
        string? prefix = null;
        foreach (string path in paths)
        {
            int slash = path.IndexOf('/', StringComparison.Ordinal);
            string first = slash < 0 ? "" : path[..(slash + 1)];
            if (prefix is not null && prefix != first) return "";
            prefix = first;
        }

        return prefix is null or "climate/" or "survey/" ? "" : prefix;
    }
}
