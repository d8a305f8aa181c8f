using SecondShore.Engine.Basin;
using SecondShore.Formats.Coordinates;
using SecondShore.Formats.Files;
using SecondShore.Formats.Surveys.AsciiGrid;
using SecondShore.Formats.Surveys.GeoJson;
using SecondShore.Formats.Surveys.GeoTiff;
using SecondShore.Formats.Surveys.Gpx;
using SecondShore.Formats.Surveys.Hypotheses;
using SecondShore.Formats.Surveys.Kml;
using SecondShore.Formats.Surveys.NetCdf;
using SecondShore.Formats.Surveys.Nmea;
using SecondShore.Formats.Surveys.Shapefile;
using SecondShore.Formats.Surveys.Xyz;
using SecondShore.Formats.Text;

namespace SecondShore.Formats.Surveys;

/// <summary>What came of reading one survey file.</summary>
/// <param name="Survey">The depths, below full pool; null when the file gives none that can be used.</param>
/// <param name="Understanding">What was understood, to be shown and confirmed; null when the format could not be read.</param>
/// <param name="Problems">What was found wrong.</param>
/// <param name="Question">What must be asked before the file can be used; null when nothing must.</param>
public sealed record SurveyImport(Survey? Survey, SurveyUnderstanding? Understanding, IReadOnlyList<Problem> Problems, SurveyQuestion? Question = null);

/// <summary>Reads a survey file of any known format.</summary>
public static class SurveyImporter
{
    private static readonly IReadOnlyList<ISurveyReader> Readers =
    [
        new AsciiGridReader(),
        new GeoTiffReader(),
        new GeoJsonReader(),
        new ShapefileReader(),
        new KmlReader(),
        new GpxReader(),
        new NmeaReader(),
        new NetCdfReader(),
        new XyzReader(),
    ];

    /// <summary>Names of the formats that are read.</summary>
    public static IReadOnlyList<string> Formats { get; } = [.. Readers.Select(r => r.Format)];

    /// <summary>How sure it is, 0 to 1, that a file is a survey of some format.</summary>
    public static double Sniff(SurveySource source) => Readers.Max(r => Sure(r, source));

    /// <summary>Reads a file. Never throws for what the file holds.</summary>
    /// <param name="source">The file.</param>
    /// <param name="options">What the user set.</param>
    /// <param name="context">What the lake folder knows.</param>
    /// <param name="progress">Share done, 0 to 1.</param>
    /// <param name="cancellation">Stops the reading.</param>
    public static SurveyImport Read(SurveySource source, SurveyOptions options, SurveyContext context,
        IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(source);
        ProblemLog log = new();
        if (source.Bytes.Length == 0)
        {
            log.Error(source.Name, "the file is empty; copy or export it again.");
            return new SurveyImport(null, null, log.ToList());
        }

        ISurveyReader? best = Readers.MaxBy(r => Sure(r, source));
        if (best is null || Sure(best, source) <= 0)
        {
            if (FileNames.Ending(source.Name) is "dbf" or "shx" or "prj" or "qpj" or "cpg" or "sbn" or "sbx")
                log.Error(source.Name, "this is one part of a Shapefile; name the .shp beside it, or the folder that holds them all.");
            else log.Error(source.Name, $"the file is of no kind that is read here ({string.Join(", ", Formats)}); export it as one of them.");
            return new SurveyImport(null, null, log.ToList());
        }

        RawSurvey? raw = best.Read(source, options, log, progress, cancellation);
        if (raw is null) return new SurveyImport(null, null, log.ToList());
        if (raw.Question is not null) return Asked(source.Name, null, raw.Question, log);
        if (raw.Words.Length == 0) raw.Words = source.Name;
        if (!AdjoiningRings.Sort(source.Name, raw, log, cancellation)) return new SurveyImport(null, null, log.ToList());
        TakeProjectionFile(source, raw, log);
        SurveyResolver resolver = new(source.Name, raw, options, context, log);
        (Survey? survey, SurveyUnderstanding understanding, SurveyQuestion? question) = resolver.Resolve(cancellation);
        return question is null ? new SurveyImport(survey, understanding, log.ToList()) : Asked(source.Name, understanding, question, log);
    }

    // A question stands as an error too, for whoever only reads those.
    private static SurveyImport Asked(string file, SurveyUnderstanding? understanding, SurveyQuestion question, ProblemLog log)
    {
        log.Error(file, question.Text);
        return new SurveyImport(null, understanding, log.ToList(), question);
    }

    private static void TakeProjectionFile(SurveySource source, RawSurvey raw, ProblemLog log)
    {
        if (raw.Crs is not null || source.Companion("prj") is not byte[] prj) return;
        raw.Crs = CoordinateSystems.FromWkt(TextDecoding.Decode(prj, out _), out FindingForm fault);
        raw.CrsKnown = Knowledge.Stated;
        if (raw.Crs is null) log.Warn(source.Name, $"its .prj file: {fault}");
    }

    private static double Sure(ISurveyReader reader, SurveySource source) => reader.Sniff(source);
}
