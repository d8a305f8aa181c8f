using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Formats.Files;
using SecondShore.Formats.Surveys;

namespace SecondShore.Formats.Lake;

/// <summary>Finds and reads the survey and shoreline files of a lake.</summary>
internal sealed class LakeSurveys(ILakeFiles files, LakeDocument document, ProblemLog log, CancellationToken cancellation)
{
    private static readonly HashSet<string> OwnFiles = new(StringComparer.OrdinalIgnoreCase)
    {
        "lake.json", "shoreline.geojson", "hypsography.csv", "weather.csv", "level.csv", "readings.csv", "profiles.csv", "flows.csv",
        "secchi.csv", "overturn.csv", "cover.csv", "cover.gpx", "tackle.json", "log.csv", "truth.geojson", "source.json", "sources.md",
    };

    private readonly List<SurveyUnderstanding> _understandings = [];
    private readonly List<Problem> _problems = [];
    private readonly List<SurveyQuestion> _questions = [];
    private bool _byContent;

    public Survey? Survey { get; private set; }

    public Shoreline? Shoreline { get; private set; }

    public IReadOnlyList<SurveyUnderstanding> Understandings => _understandings;

    /// <summary>What must be asked.</summary>
    public IReadOnlyList<SurveyQuestion> Questions => _questions;

    /// <summary>Middle of the deepest survey's place; null without one.</summary>
    public GeoPoint? Middle { get; private set; }

    public void Read(bool hasHypsography)
    {
        Survey sum = new();
        bool any = false;
        foreach (string name in Candidates(hasHypsography))
        {
            cancellation.ThrowIfCancellationRequested();
            SurveyOptions options = OptionsOf(name);
            if (!options.Use) continue;
            if (ReadOne(name, options) is not Survey part) continue;
            any = true;
            sum = new Survey
            {
                Soundings = [.. sum.Soundings, .. part.Soundings],
                Contours = [.. sum.Contours, .. part.Contours],
                Rasters = [.. sum.Rasters, .. part.Rasters],
                Shoreline = Join(sum.Shoreline, part.Shoreline),
            };
        }

        // Where files were taken by their content, one that does not help stands in nobody's way.
        log.AddRange(any && _byContent ? _problems.Select(p => p.Severity == ProblemSeverity.Error ? p with { Severity = ProblemSeverity.Warning } : p) : _problems);
        ReadShoreline();
        Shoreline ??= sum.Shoreline;
        bool hasDepths = sum.Soundings.Count + sum.Contours.Count + sum.Rasters.Count > 0;
        if (any && (hasDepths || sum.Shoreline is not null)) Survey = sum with { Shoreline = Shoreline };
        else if (Shoreline is not null) Survey = new Survey { Shoreline = Shoreline };
    }

    private SurveyOptions OptionsOf(string name)
    {
        SurveyOptions all = document.SurveyOptions.TryGetValue("", out SurveyOptions? common) ? common : new SurveyOptions();
        return document.SurveyOptions.TryGetValue(name, out SurveyOptions? own) ? own.Over(all) : all;
    }

    // Files named survey.* or under survey/; without one, whatever else in the folder is a survey by its content.
    private List<string> Candidates(bool hasHypsography)
    {
        List<string> named = [.. files.Entries.Select(e => e.Name).Where(n => !IsCompanion(n)
            && (n.StartsWith("survey/", StringComparison.OrdinalIgnoreCase) || (!n.Contains('/') && n.StartsWith("survey", StringComparison.OrdinalIgnoreCase))))];
        List<string> chosen = [.. document.SurveyOptions.Keys.Where(k => k.Length > 0).Select(files.Find).OfType<string>().Where(k => !named.Contains(k))];
        if (named.Count > 0 || hasHypsography) return [.. named, .. chosen];
        string[] others = [.. files.Entries.Select(e => e.Name).Where(n => !n.Contains('/') && !OwnFiles.Contains(n) && !IsCompanion(n))];
        if (others.Length == 0 && chosen.Count == 0 && files.Entries.Where(e => !OwnFiles.Contains(e.Name)).ToArray() is [LakeFileEntry only]) return [only.Name];
        if (others.Length == 0) return chosen;
        _byContent = true;
        List<string> found = [];
        foreach (LakeFileEntry entry in files.Entries)
        {
            if (entry.Name.Contains('/') || OwnFiles.Contains(entry.Name) || IsCompanion(entry.Name) || entry.LengthBytes == 0) continue;
            if (chosen.Contains(entry.Name) || (TrySource(entry.Name) is SurveySource source && SurveyImporter.Sniff(source) > 0.25)) found.Add(entry.Name);
        }

        if (found.Count > 0 && files.Find("lake.json") is not null)
            log.Note(files.Name, $"no file is named survey; taken as surveys by their content: {string.Join(", ", found)}.");
        if (found.Count == 0 && files.Entries.Count(e => !OwnFiles.Contains(e.Name)) == 1) found.AddRange(files.Entries.Select(e => e.Name).Where(n => !OwnFiles.Contains(n)));
        return found;
    }

    private static bool IsCompanion(string name)
    {
        string ending = FileNames.Ending(name);
        return ending is "prj" or "dbf" or "shx" or "cpg" or "qpj" or "tfw" or "tifw" or "xml" or "ovr" or "sbn" or "sbx" or "md" or "json" or "html" or "pdf"
            || name.EndsWith(".aux.xml", StringComparison.OrdinalIgnoreCase);
    }

    private Survey? ReadOne(string name, SurveyOptions options)
    {
        if (TrySource(name) is not SurveySource source) return null;
        SurveyContext context = new(document.Position, document.ElevationM, document.MaxDepthM, document.SurveyBelowFullPoolM)
        {
            HintLonDeg = document.TimeZoneId is string id && Text.TimeZones.TryFind(id, out TimeZoneInfo zone) && zone.BaseUtcOffset != TimeSpan.Zero ? zone.BaseUtcOffset.TotalHours * 15 : null,
        };
        SurveyImport import = SurveyImporter.Read(source, options, context, null, cancellation);
        _problems.AddRange(import.Problems);
        if (import.Question is not null) _questions.Add(import.Question);
        if (import.Understanding is SurveyUnderstanding understanding)
        {
            _understandings.Add(understanding);
            foreach (Finding doubt in understanding.Doubts) log.Note(name, doubt);
            if (import.Survey is not null) Middle ??= MiddleOf(understanding.Extent);
        }

        return import.Survey;
    }

    private void ReadShoreline()
    {
        if (files.Find("shoreline.geojson") is not string name || TrySource(name) is not SurveySource source) return;
        SurveyImport import = SurveyImporter.Read(source, new SurveyOptions { Sense = DepthSense.Depth, Unit = DepthUnit.Metres },
            new SurveyContext(document.Position, null, null, null), null, cancellation);
        log.AddRange(import.Problems);
        Shoreline = import.Survey?.Shoreline;
        if (Shoreline is null && import.Survey is not null)
            log.Error(name, "the file holds no polygon of water; a Polygon or MultiPolygon with islands as holes is expected.");
        else Middle ??= MiddleOf(import.Understanding?.Extent);
    }

    private SurveySource? TrySource(string name)
    {
        try
        {
            return new SurveySource(files, name);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            log.Error(name, FileFaults.Of(e));
            return null;
        }
    }

    private static Shoreline? Join(Shoreline? a, Shoreline? b) =>
        a is null ? b : b is null ? a : new Shoreline([.. a.Polygons, .. b.Polygons]);

    private static GeoPoint? MiddleOf(GeoExtent? extent)
    {
        if (extent is null) return null;
        double span = GeoPoint.WrapLongitudeDeg(extent.EastDeg - extent.WestDeg);
        return new GeoPoint((extent.SouthDeg + extent.NorthDeg) / 2, GeoPoint.WrapLongitudeDeg(extent.WestDeg + (span / 2)));
    }
}
