using System.Text;
using System.Text.Json;
using SecondShore.Formats.Text;

namespace SecondShore.Formats.Surveys.GeoJson;

/// <summary>Reads GeoJSON: points as soundings, lines and polygons with a depth as contours, polygons without one as water.</summary>
internal sealed class GeoJsonReader : ISurveyReader
{
    private static readonly JsonDocumentOptions Options = new() { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip, MaxDepth = 64 };

    public string Format => "GeoJSON";

    public double Sniff(SurveySource source)
    {
        string head = Encoding.UTF8.GetString(source.Bytes.AsSpan(0, Math.Min(source.Bytes.Length, 600))).TrimStart('\uFEFF', ' ', '\r', '\n', '\t');
        if (!head.StartsWith('{')) return source.Ending == "geojson" ? 0.6 : 0;
        if (head.Contains("\"FeatureCollection\"", StringComparison.Ordinal) || head.Contains("\"Feature\"", StringComparison.Ordinal)) return 0.97;
        return source.Ending is "geojson" || head.Contains("\"coordinates\"", StringComparison.Ordinal) ? 0.7 : 0;
    }

    public RawSurvey? Read(SurveySource source, SurveyOptions options, ProblemLog log, IProgress<double>? progress, CancellationToken cancellation)
    {
        try
        {
            using JsonDocument json = JsonDocument.Parse(TextDecoding.Decode(source.Bytes, out _), Options);
            RawSurvey raw = new(Format);
            GeoJsonFeatures features = new(source.Name, raw, options, log);
            features.ReadRoot(json.RootElement, cancellation);
            return raw;
        }
        catch (JsonException e)
        {
            int? line = e.LineNumber is long n ? (int)Math.Min(n + 1, int.MaxValue) : null;
            log.Add(source.Name, line, ProblemSeverity.Error, "the file is not JSON that can be read from here on; copy or export it again.");
            return null;
        }
        catch (Exception e) when (e is ArgumentException or InvalidOperationException)
        {
            log.Error(source.Name, "the file is not JSON that can be read; copy or export it again.");
            return null;
        }
    }
}
