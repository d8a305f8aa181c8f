using SecondShore.Open.Asking;
using SecondShore.Open.Outlines;

namespace SecondShore.Open.Surveys;

/// <summary>OGC Web Coverage Service 2: coverages, then a GeoTIFF of a box in degrees.</summary>
internal static class Wcs
{
    private const string Degrees = "http://www.opengis.net/def/crs/EPSG/0/4326";

    /// <summary>The coverages.</summary>
    public static async Task<IReadOnlyList<SurveyLayer>> LayersAsync(SurveyAsking asking, Uri link, CancellationToken cancel)
    {
        Uri address = SurveyAsking.With(link, ("service", "WCS"), ("version", "2.0.1"), ("request", "GetCapabilities"));
        Answer answer = await asking.PageAsync(address, Finding.Of("the question for its layers"), cancel).ConfigureAwait(false);
        return Read(answer.Body, link);
    }

    /// <summary>Reads what a service can do.</summary>
    internal static IReadOnlyList<SurveyLayer> Read(byte[] body, Uri address)
    {
        XmlTree root = XmlTree.Read(body) ?? throw SurveyAsking.Odd(address);
        root.Refuse(address);
        XmlTree? about = root.Child("ServiceIdentification");
        string licence =
            string.Join("; ",
            new[] { about?.Said("AccessConstraints", 200), about?.Said("Fees", 100) }.Where(t => !string.IsNullOrEmpty(t)));
        List<SurveyLayer> layers = [.. root.All("CoverageSummary").Where(c => c.Said("CoverageId").Length > 0).Take(500)
            .Select(c =>
                new SurveyLayer(SurveyStandard.Wcs, address, c.Said("CoverageId", 200), c.Said("Title") is { Length: > 0 } title ? title
                : c.Said("CoverageId")) { Licence = licence })];
        return layers.Count > 0 ? layers : throw SurveyAsking.Odd(address);
    }

    /// <summary>A raster of a box.</summary>
    public static async Task<byte[]> FetchAsync(SurveyAsking asking, SurveyLayer layer, GeoBox box, CancellationToken cancel)
    {
        Uri about = SurveyAsking.With(layer.Address, ("service", "WCS"), ("version", "2.0.1"), ("request", "DescribeCoverage"),
            ("coverageId", layer.Id));
        Answer described = await asking.PageAsync(about, Finding.Of($"the question what '{layer.Title}' is"), cancel).ConfigureAwait(false);
        (string north, string east, bool inDegrees) = AxesOf(described.Body, layer.Address);
        // A coverage in degrees is cut by its own axes; another one is cut and given in degrees, where the service can.
        string rows = $"{north}({SurveyAsking.Text(box.SouthDeg)},{SurveyAsking.Text(box.NorthDeg)})";
        string columns = $"{east}({SurveyAsking.Text(box.WestDeg)},{SurveyAsking.Text(box.EastDeg)})";
        Uri address = SurveyAsking.With(layer.Address, ("service", "WCS"), ("version", "2.0.1"), ("request", "GetCoverage"),
            ("coverageId", layer.Id), ("format", "image/tiff"), ("subset", rows), ("subset", columns));
        if (!inDegrees) address = SurveyAsking.With(address, ("subsettingCrs", Degrees), ("outputCrs", Degrees));
        Answer answer = await asking.FileAsync(address, SurveyAsking.Said(box, layer.Title), cancel).ConfigureAwait(false);
        if (answer.Body is [(byte)'<', ..] && XmlTree.Read(answer.Body) is { } refused)
        {
            refused.Refuse(layer.Address);
            throw SurveyAsking.Odd(layer.Address);
        }

        return answer.Body;
    }

    internal static (string North, string East, bool InDegrees) AxesOf(byte[] body, Uri address)
    {
        XmlTree root = XmlTree.Read(body) ?? throw SurveyAsking.Odd(address);
        root.Refuse(address);
        XmlTree envelope = root.All("Envelope").FirstOrDefault() ?? throw SurveyAsking.Odd(address);
        string[] labels = (envelope.Attributes.GetValueOrDefault("axisLabels") ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (labels.Length < 2
            || !labels.Take(2).All(l => l.Length <= 20 && l.All(char.IsAsciiLetterOrDigit))) throw SurveyAsking.Odd(address);
        bool inDegrees = (envelope.Attributes.GetValueOrDefault("srsName") ?? "").EndsWith("4326", StringComparison.Ordinal);
        int north = labels[1] is "Lat" or "lat" or "N" or "n" or "y" or "Y" or "Latitude" or "latitude" or "Northing" ? 1 : 0;
        return (labels[north], labels[1 - north], inDegrees);
    }
}
