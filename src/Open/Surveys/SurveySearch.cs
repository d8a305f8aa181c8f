using System.Globalization;
using SecondShore.Formats.Files;
using SecondShore.Open.Asking;
using SecondShore.Open.Outlines;

namespace SecondShore.Open.Surveys;

/// <summary>Looks at a link for depths by an open standard, lists its layers, and fetches one in the lake's box alone.</summary>
/// <param name="client">Who asks.</param>
/// <param name="clock">The present.</param>
public sealed class SurveySearch(PoliteClient client, TimeProvider clock)
{
    /// <summary>The standard that a link speaks, by its address.</summary>
    public static SurveyStandard StandardOf(Uri link)
    {
        ArgumentNullException.ThrowIfNull(link);
        string path = link.AbsolutePath.TrimEnd('/').ToLowerInvariant(), query = link.Query.ToLowerInvariant(), leaf = FileNames.Leaf(path);
        if (path.Contains("/featureserver", StringComparison.Ordinal) || path.Contains("/mapserver", StringComparison.Ordinal)
            && path.Contains("/rest/", StringComparison.Ordinal)) return SurveyStandard.ArcGisFeatures;
        if (path.EndsWith("/imageserver", StringComparison.Ordinal)) return SurveyStandard.ArcGisImage;
        if (query.Contains("service=wfs", StringComparison.Ordinal) || leaf is "wfs") return SurveyStandard.Wfs;
        if (query.Contains("service=wcs", StringComparison.Ordinal) || leaf is "wcs") return SurveyStandard.Wcs;
        if (path.Contains("/collections", StringComparison.Ordinal)
            || FileNames.Ending(leaf).Length == 0) return SurveyStandard.OgcFeatures;
        return SurveyStandard.File;
    }

    /// <summary>The layers at a link.</summary>
    /// <exception cref="OpenException">None come; the finding says how to go on.</exception>
    public async Task<IReadOnlyList<SurveyLayer>> LayersAsync(Uri link, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(link);
        SurveyAsking asking = new(client, clock);
        return StandardOf(link) switch
        {
            SurveyStandard.ArcGisFeatures or SurveyStandard.ArcGisImage => await ArcGis.LayersAsync(asking, link, cancel)
                .ConfigureAwait(false),
            SurveyStandard.Wfs => await Wfs.LayersAsync(asking, link, cancel).ConfigureAwait(false),
            SurveyStandard.Wcs => await Wcs.LayersAsync(asking, link, cancel).ConfigureAwait(false),
            SurveyStandard.OgcFeatures => await OgcFeatures.LayersAsync(asking, link, cancel).ConfigureAwait(false),
            _ => [new SurveyLayer(SurveyStandard.File, link, "", FileNames.Leaf(link.AbsolutePath))],
        };
    }

    /// <summary>A layer's depths in a box; a plain file comes whole.</summary>
    /// <param name="layer">One of those listed.</param>
    /// <param name="box">The lake's box.</param>
    /// <param name="cancel">Stops it; nothing is kept.</param>
    /// <exception cref="OpenException">They do not come whole; the finding says how to go on.</exception>
    public async Task<FetchedSurvey> FetchAsync(SurveyLayer layer, GeoBox box, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(layer);
        SurveyAsking asking = new(client, clock);
        GeoBox rough = SurveyAsking.Rough(box);
        List<Finding> notes = [];
        if (layer.Standard is SurveyStandard.ArcGisImage or SurveyStandard.Wcs)
        {
            byte[] raster = layer.Standard == SurveyStandard.Wcs ? await Wcs.FetchAsync(asking, layer, rough, cancel).ConfigureAwait(false)
                : await ArcGis.ImageAsync(asking, layer, rough, cancel).ConfigureAwait(false);
            return new FetchedSurvey(NameOf(layer, "tif"), raster, layer, notes);
        }

        if (layer.Standard == SurveyStandard.File)
        {
            Answer answer = await asking.FileAsync(layer.Address, Finding.Of("the question for the file"), cancel).ConfigureAwait(false);
            return new FetchedSurvey(NameOf(layer, EndingOf(layer.Address, answer.Type)), answer.Body, layer, notes);
        }

        GeoJsonPages pages = layer.Standard switch
        {
            SurveyStandard.Wfs => await Wfs.FetchAsync(asking, layer, rough, cancel).ConfigureAwait(false),
            SurveyStandard.OgcFeatures => await OgcFeatures.FetchAsync(asking, layer, rough, cancel).ConfigureAwait(false),
            _ => await ArcGis.FeaturesAsync(asking, layer, rough, cancel).ConfigureAwait(false),
        };
        if (pages.Count == 0) throw new OpenException(
            $"'{layer.Title}' of {layer.Address.Host} has nothing in the lake's box. {SurveyAsking.Otherwise}");
        if (pages.Twice > 0) notes.Add(
            $"{pages.Twice} features came on two pages and count once: the service changed meanwhile, some may be missing.");
        return new FetchedSurvey(NameOf(layer, "geojson"), pages.ToBytes(), layer, notes);
    }

    private static string EndingOf(Uri address, string type) => FileNames.Ending(address.AbsolutePath) is { Length: > 0 and <= 8 } ending
        && ending.All(char.IsAsciiLetterOrDigit) ? ending
        : type.Contains("json", StringComparison.Ordinal) ? "geojson" : type.Contains("tiff", StringComparison.Ordinal) ? "tif" : "csv";

    // Letters, digits and strokes: a name that every system takes, whatever a service calls its layer.
    private static string NameOf(SurveyLayer layer, string ending)
    {
        string stem = new([.. FileNames.Stem(layer.Title).ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-').Take(40)]);
        while (stem.Contains("--", StringComparison.Ordinal)) stem = stem.Replace("--", "-", StringComparison.Ordinal);
        stem = stem.Trim('-');
        return string.Create(CultureInfo.InvariantCulture, $"depths-{(stem.Length > 0 ? stem : "layer")}.{ending}");
    }
}
