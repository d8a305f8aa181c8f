using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using SecondShore.Engine.Season;
using SecondShore.Formats.Files;
using SecondShore.Formats.Text;
using SecondShore.Formats.Writers;

namespace SecondShore.Formats.Lake;

/// <summary>
/// Changes to a lake's files that leave everything else as it stands: rows are appended under the columns a file
/// already has, keys are set in a document whose other keys and order stay.
/// </summary>
public static class LakeFolderEdits
{
    /// <summary>The files with a reading added to readings.csv.</summary>
    /// <param name="files">The files.</param>
    /// <param name="reading">The reading.</param>
    /// <param name="note">The user's words on it.</param>
    /// <param name="accuracyM">How far off its place may be, m; null where that is not known.</param>
    public static ILakeFiles WithReading(ILakeFiles files, Reading reading, string note = "", double? accuracyM = null) =>
        AppendRow(files, "readings.csv", LakeCsv.ReadingHeaders, CellOf(reading, note, accuracyM));

    private static Func<string, string> CellOf(Reading reading, string note, double? accuracyM) => header => header switch
    {
        "note" => note,
        "accuracy_m" => NumberText.Format(accuracyM),
        _ => LakeCsv.ReadingCell(reading, header),
    };

    /// <summary>The files with a row added to log.csv.</summary>
    public static ILakeFiles WithLogRow(ILakeFiles files, LogRow row) =>
        AppendRow(files, "log.csv", LakeCsv.LogHeaders, h => LakeCsv.LogCell(row, h));

    /// <summary>The files with many readings and rows of the log added: each file is read and written once, however many there are.</summary>
    /// <param name="files">The files.</param>
    /// <param name="readings">Readings, each with the user's words on it and how far off its place may be, m.</param>
    /// <param name="rows">Rows of the log.</param>
    public static ILakeFiles WithRows(ILakeFiles files, IReadOnlyList<(Reading Reading, string Note, double? AccuracyM)> readings, IReadOnlyList<LogRow> rows)
    {
        ArgumentNullException.ThrowIfNull(readings);
        ArgumentNullException.ThrowIfNull(rows);
        if (readings.Count > 0)
            files = AppendRows(files, "readings.csv", LakeCsv.ReadingHeaders, [.. readings.Select(r => CellOf(r.Reading, r.Note, r.AccuracyM))]);
        return rows.Count == 0 ? files : AppendRows(files, "log.csv", LakeCsv.LogHeaders, [.. rows.Select(r => (Func<string, string>)(h => LakeCsv.LogCell(r, h)))]);
    }

    /// <summary>The files with places of winds in lake.json, in the stead of those that are there.</summary>
    /// <param name="files">The files.</param>
    /// <param name="stations">The places, at least one.</param>
    public static ILakeFiles WithWindStations(ILakeFiles files, IReadOnlyList<WindStation> stations) =>
        WithLakeKeys(files, ("wind_stations", Node(json => LakeJson.WindStations(json, stations), "wind_stations")));

    /// <summary>The files with keys of lake.json set or, by a null value, taken away; all other keys stay as they are.</summary>
    /// <exception cref="RefusedException">lake.json is there and is no JSON object.</exception>
    public static ILakeFiles WithLakeKeys(ILakeFiles files, params ReadOnlySpan<(string Key, JsonNode? Value)> keys)
    {
        ArgumentNullException.ThrowIfNull(files);
        string name = files.Find("lake.json") ?? "lake.json";
        JsonObject root = files.Find("lake.json") is null ? [] : ObjectOf(files.Read(name));
        foreach ((string key, JsonNode? value) in keys)
        {
            if (value is null) root.Remove(key);
            else root[key] = value.DeepClone();
        }

        string text = JsonText.Write(json => root.WriteTo(json));
        return ChangedFiles.Of(files, name, Encoding.UTF8.GetBytes(text));
    }

    /// <summary>The files with what lake.json says was fitted replaced.</summary>
    /// <exception cref="RefusedException">lake.json is there and is no JSON object.</exception>
    public static ILakeFiles WithFitted(ILakeFiles files, FittedLake fitted) =>
        WithLakeKeys(files, ("fitted", Node(json => LakeJson.Fitted(json, fitted), "fitted")));

    /// <summary>The files with what the user confirmed of a survey set in lake.json.</summary>
    /// <exception cref="RefusedException">lake.json is there and is no JSON object.</exception>
    public static ILakeFiles WithSurveyOptions(ILakeFiles files, Surveys.SurveyOptions options)
    {
        JsonNode? node = Node(json =>
        {
            json.WriteStartObject("survey");
            LakeJson.Options(json, options);
            json.WriteEndObject();
        }, "survey");
        return WithLakeKeys(files, ("survey", node));
    }

    /// <summary>The files with keys of one survey file set in lake.json; other keys and files stay as they are.</summary>
    /// <param name="files">The files.</param>
    /// <param name="file">The survey file; null for all of them.</param>
    /// <param name="keys">What is set.</param>
    /// <exception cref="InvalidDataException">lake.json is there and is no JSON object.</exception>
    public static ILakeFiles WithSurveyKeys(ILakeFiles files, string? file, JsonObject keys)
    {
        ArgumentNullException.ThrowIfNull(files);
        ArgumentNullException.ThrowIfNull(keys);
        JsonObject root = files.Find("lake.json") is string name ? ObjectOf(files.Read(name)) : [];
        JsonObject survey = root["survey"] as JsonObject ?? [], target = survey;
        if (file is not null)
        {
            if (survey["files"] is not JsonArray list) survey["files"] = list = [];
            JsonObject? own = list.OfType<JsonObject>().FirstOrDefault(o => o["file"] is JsonValue v && v.TryGetValue(out string? of) && of == file);
            if (own is null) list.Add((JsonNode)(own = new JsonObject { ["file"] = JsonValue.Create(file) }));
            target = own;
        }

        foreach ((string key, JsonNode? value) in keys) target[key] = value?.DeepClone();
        return WithLakeKeys(files, ("survey", survey));
    }

    private static JsonNode? Node(Action<Utf8JsonWriter> body, string key)
    {
        string text = JsonText.Write(json =>
        {
            json.WriteStartObject();
            body(json);
            json.WriteEndObject();
        });
        return JsonNode.Parse(text)?[key];
    }

    private static JsonObject ObjectOf(byte[] bytes)
    {
        try
        {
            JsonDocumentOptions options = new() { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip, MaxDepth = 32 };
            return JsonNode.Parse(TextDecoding.Decode(bytes, out _), null, options) as JsonObject
                ?? throw new RefusedException(Finding.Of($"lake.json is no JSON object and is not changed."));
        }
        catch (JsonException e)
        {
            throw new RefusedException(Finding.Of($"lake.json is not JSON that can be read and is not changed."), e);
        }
    }

    private static ChangedFiles AppendRow(ILakeFiles files, string fileName, string[] ownHeaders, Func<string, string> cellOf) => AppendRows(files, fileName, ownHeaders, [cellOf]);

    // The rows' values go under the columns the file has; columns of ours that it lacks are added at the right, and
    // the rows before stay as they are (short rows read as empty cells).
    private static ChangedFiles AppendRows(ILakeFiles files, string fileName, string[] ownHeaders, IReadOnlyList<Func<string, string>> rows)
    {
        ArgumentNullException.ThrowIfNull(files);
        string name = files.Find(fileName) ?? fileName;
        string text = files.Find(fileName) is null ? string.Join(',', ownHeaders) + "\n" : TextDecoding.Decode(files.Read(name), out _);
        CsvTable table = CsvTable.Parse(text, CsvTable.GuessSeparator(text));
        if (table.Count == 0)
        {
            text = string.Join(',', ownHeaders) + "\n";
            table = CsvTable.Parse(text, ',');
        }

        List<string> headers = [];
        for (int i = 0; i < table.Cells(0); i++) headers.Add(table[0, i].ToString());
        List<string> missing = [.. ownHeaders.Where(h => !headers.Contains(h, StringComparer.OrdinalIgnoreCase) && rows.Any(cellOf => cellOf(h).Length > 0))];
        string end = text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        string separator = table.Separator == ' ' ? "," : table.Separator.ToString();
        if (missing.Count > 0)
        {
            int headerEnd = text.IndexOfAny(['\r', '\n'], HeaderStart(text));
            if (headerEnd < 0) headerEnd = text.Length;
            text = text.Insert(headerEnd, separator + string.Join(separator, missing));
            headers.AddRange(missing);
        }

        StringBuilder all = new(text);
        if (text.Length > 0 && text[^1] is not ('\n' or '\r')) all.Append(end);
        string[] keys = [.. headers.Select(h => h.ToLowerInvariant())];
        foreach (Func<string, string> cellOf in rows) all.AppendJoin(separator, keys.Select(h => CsvText.Quoted(cellOf(h)))).Append(end);
        return ChangedFiles.Of(files, name, Encoding.UTF8.GetBytes(all.ToString()));
    }

    private static int HeaderStart(string text)
    {
        int at = 0;
        while (at < text.Length)
        {
            int end = text.IndexOfAny(['\r', '\n'], at);
            if (end < 0) return at;
            ReadOnlySpan<char> line = text.AsSpan(at, end - at).Trim();
            if (!line.IsEmpty && line[0] != '#') return at;
            at = end + 1;
        }

        return text.Length;
    }
}
