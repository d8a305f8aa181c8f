using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using SecondShore.Formats;
using SecondShore.Formats.Files;
using SecondShore.Formats.Lake;
using SecondShore.Formats.Surveys;
using SecondShore.Open.Asking;
using SecondShore.Open.Outlines;

namespace SecondShore.Open.Surveys;

/// <summary>A fetched survey as a file of a lake's folder, read first as any file would be, with its source and licence beside
/// it.</summary>
public static class SurveyFolder
{
    private const double MarginDeg = 0.002, NoOutlineDeg = 0.03;

    /// <summary>The box to ask for: the shore's, else some 3 km around the lake's position.</summary>
    public static GeoBox BoxOf(LakeFolder lake)
    {
        ArgumentNullException.ThrowIfNull(lake);
        GeoBox? shore = lake.Shoreline is { } line ? GeoBox.Around(line.Polygons.SelectMany(p => p.Outer)) : null;
        GeoBox at = new(lake.Site.Position.LatDeg, lake.Site.Position.LonDeg, lake.Site.Position.LatDeg, lake.Site.Position.LonDeg);
        return shore?.Wider(MarginDeg) ?? at.Wider(NoOutlineDeg);
    }

    /// <summary>The lake's files with the survey among them.</summary>
    /// <param name="lake">The lake.</param>
    /// <param name="survey">What was fetched.</param>
    /// <param name="now">When.</param>
    /// <returns>The files, and what the importer made of the survey.</returns>
    /// <exception cref="OpenException">It holds nothing that can be used; the finding says why.</exception>
    public static (ILakeFiles Files, SurveyImport Import) With(LakeFolder lake, FetchedSurvey survey, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(lake);
        ArgumentNullException.ThrowIfNull(survey);
        string name = $"survey/{survey.Name}";
        MemoryFiles alone = new("survey", [KeyValuePair.Create(survey.Name, survey.Bytes)]);
        SurveyContext context = new(lake.Site.Position, lake.Document.ElevationM, lake.Document.MaxDepthM, null);
        SurveyImport import = SurveyImporter.Read(new SurveySource(alone, survey.Name), new SurveyOptions(), context);
        // What must only be asked is kept: the question is the lake's, and its answer goes into lake.json.
        if (import.Survey is null && import.Question is null)
            throw new OpenException(
                $"What {survey.Layer.Address.Host} sent is no survey that can be used: {WhyNot(import)} {SurveyAsking.Otherwise}");
        string host = survey.Layer.Address.GetLeftPart(UriPartial.Path),
            day = now.UtcDateTime.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        string licence = survey.Layer.Licence.Length > 0 ? survey.Layer.Licence
            : "licence not told by the service: look it up before you pass the survey on";
        JsonArray sources = Sources(lake.Files, name);
        sources.Add((JsonNode)new JsonObject
        {
            ["file"] = name,
            ["address"] = host,
            ["layer"] = survey.Layer.Id,
            ["title"] = survey.Layer.Title,
            ["licence"] = licence,
            ["fetched"] = day
        });
        ILakeFiles files = ChangedFiles.Of(lake.Files, name, survey.Bytes);
        files = LakeFolderEdits.WithLakeKeys(files, ("survey_sources", sources));
        string page = files.Find("sources.md") is { } there ? Encoding.UTF8.GetString(files.Read(there)) : "# Sources and licences\n\n";
        page = string.Concat(page.Split('\n').Where(l => l.Length > 0 && !l.StartsWith($"- {name}:", StringComparison.Ordinal))
            .Select(l => l.StartsWith('#') ? l + "\n\n" : l + "\n"));
        page += $"- {name}: {survey.Layer.Title}, {host}, {licence}, {day}\n";
        return (ChangedFiles.Of(files, files.Find("sources.md") ?? "sources.md", Encoding.UTF8.GetBytes(page)), import);
    }

    private static Finding WhyNot(SurveyImport import) =>
        import.Problems.FirstOrDefault(p => p.Severity == ProblemSeverity.Error)?.What ?? Finding.Of("it holds no depths.");

    // What the folder has of other surveys stays; an earlier fetch of the same file gives way.
    private static JsonArray Sources(ILakeFiles files, string name)
    {
        JsonNode? there = files.Find("lake.json") is { } document ? SourcesOf(files.Read(document)) : null;
        return there is JsonArray list
            ? new JsonArray([.. list.Where(s => (s as JsonObject)?["file"]?.ToString() != name).Select(s => s?.DeepClone())]) : [];
    }

    // What cannot be read here is refused, with its reason, where the keys are set.
    private static JsonNode? SourcesOf(byte[] document)
    {
        try
        {
            return (JsonNode.Parse(document) as JsonObject)?["survey_sources"];
        }
        catch (System.Text.Json.JsonException)
        {
            return null;
        }
    }
}
