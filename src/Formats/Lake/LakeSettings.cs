using System.Globalization;
using System.Text.Json.Nodes;
using SecondShore.Formats.Files;
using SecondShore.Formats.Surveys;
using SecondShore.Formats.Text;
using SecondShore.Formats.Writers;

namespace SecondShore.Formats.Lake;

/// <summary>Keys of lake.json said beside the files, such as <c>survey.depth_column=Depth</c>, and answers to questions about surveys.</summary>
public static class LakeSettings
{
    private static readonly string[] Plain = ["name", "latitude_deg", "longitude_deg", "elevation_m", "max_depth_m", "time_zone"];
    private static readonly string[] OfSurvey =
    [
        "unit", "sense", "crs", "x_column", "y_column", "depth_column", "separator", "decimal_comma", "below_full_pool_m", "surface_elevation_m", "transducer_depth_m",
        "angles", "swapped", "west_positive", "use_rest", "area", "water", "why", "use",
    ];

    /// <summary>The files with settings in lake.json, in memory only.</summary>
    /// <param name="files">The files.</param>
    /// <param name="settings">Texts of the form <c>key=value</c>; keys of a survey start with <c>survey.</c>.</param>
    /// <param name="log">Told of a setting that cannot be understood.</param>
    public static ILakeFiles With(ILakeFiles files, IReadOnlyList<string> settings, ProblemLog log)
    {
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(log);
        foreach (string setting in settings)
        {
            int at = setting.IndexOf('=', StringComparison.Ordinal);
            string key = at > 0 ? setting[..at].Trim() : setting, value = at > 0 ? setting[(at + 1)..].Trim() : "";
            bool survey = key.StartsWith("survey.", StringComparison.Ordinal);
            if (at <= 0 || value.Length == 0 || !(survey ? OfSurvey.Contains(key[7..]) : Plain.Contains(key)))
            {
                log.Error("--set", $"'{TextDecoding.Excerpt(setting)}' is no setting; write survey.KEY=VALUE with KEY one of {string.Join(", ", OfSurvey)}, or KEY=VALUE with one of {string.Join(", ", Plain)}.");
                continue;
            }

            files = survey ? LakeFolderEdits.WithSurveyKeys(files, null, new JsonObject { [key[7..]] = Value(key, value) })
                : LakeFolderEdits.WithLakeKeys(files, (key, Value(key, value)));
        }

        return files;
    }

    /// <summary>The files with the answer to a question about one survey file kept in lake.json.</summary>
    public static ILakeFiles WithAnswer(ILakeFiles files, string file, SurveyOptions answer) => LakeFolderEdits.WithSurveyKeys(files, file, KeysOf(answer));

    /// <summary>What to set for a choice, as <c>survey.key=value</c>.</summary>
    public static IReadOnlyList<string> Of(SurveyOptions answer) => [.. KeysOf(answer).Select(k => $"survey.{k.Key}={Text(k.Value)}")];

    /// <summary>The keys of a choice under <c>survey</c> in lake.json.</summary>
    public static JsonObject KeysOf(SurveyOptions answer) => JsonNode.Parse(JsonText.Write(json =>
    {
        json.WriteStartObject();
        LakeJson.Options(json, answer);
        json.WriteEndObject();
    })) as JsonObject ?? [];

    private static string Text(JsonNode? value) => value is JsonValue v && v.TryGetValue(out string? text) ? text : value?.ToJsonString() ?? "";

    // Names of columns may look like numbers and stay text.
    private static JsonNode? Value(string key, string value)
    {
        if (key.EndsWith("_column", StringComparison.Ordinal) || key is "survey.crs" or "survey.water" or "survey.why" or "name" or "time_zone") return JsonValue.Create(value);
        if (value is "true" or "false") return JsonValue.Create(value == "true");
        if (double.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number)) return JsonValue.Create(number);
        if (key != "survey.area") return JsonValue.Create(value);
        JsonArray edges = [];
        foreach (string edge in value.Trim('[', ']').Split([',', ' '], StringSplitOptions.RemoveEmptyEntries))
            if (double.TryParse(edge, NumberStyles.Float, CultureInfo.InvariantCulture, out double degrees)) edges.Add((JsonNode)JsonValue.Create(degrees));
        return edges;
    }
}
