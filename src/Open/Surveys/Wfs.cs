using System.Globalization;
using System.Text.Json;
using SecondShore.Open.Asking;
using SecondShore.Open.Outlines;

namespace SecondShore.Open.Surveys;

/// <summary>OGC Web Feature Service 2: feature types, then their features in a box, as GeoJSON where it is offered, else GML 3.2.</summary>
internal static class Wfs
{
    private const string Degrees = "urn:ogc:def:crs:EPSG::4326";

    /// <summary>The feature types.</summary>
    public static async Task<IReadOnlyList<SurveyLayer>> LayersAsync(SurveyAsking asking, Uri link, CancellationToken cancel)
    {
        Uri address = SurveyAsking.With(link, ("service", "WFS"), ("version", "2.0.0"), ("request", "GetCapabilities"));
        Answer answer = await asking.PageAsync(address, Finding.Of("the question for its layers"), cancel).ConfigureAwait(false);
        return Read(answer.Body, link);
    }

    /// <summary>Reads what a service can do.</summary>
    internal static IReadOnlyList<SurveyLayer> Read(byte[] body, Uri address)
    {
        XmlTree root = XmlTree.Read(body) ?? throw SurveyAsking.Odd(address);
        root.Refuse(address);
        XmlTree? about = root.Child("ServiceIdentification");
        string[] formats =
            [.. root.All("Parameter").Where(p => p.Attributes.GetValueOrDefault("name") == "outputFormat").SelectMany(p => p.All("Value"))
            .Select(v => v.Text)];
        string json =
            formats.FirstOrDefault(f => f.Contains("json", StringComparison.OrdinalIgnoreCase)
            && !f.Contains("callback", StringComparison.OrdinalIgnoreCase)) ?? "";
        string licence =
            string.Join("; ",
            new[] { about?.Said("AccessConstraints", 200), about?.Said("Fees", 100) }.Where(t => !string.IsNullOrEmpty(t)));
        List<SurveyLayer> layers = [.. root.All("FeatureType").Where(t => t.Said("Name").Length > 0).Take(500)
            .Select(t =>
                new SurveyLayer(SurveyStandard.Wfs, address, t.Said("Name", 200), t.Said("Title") is { Length: > 0 } title ? title
                : t.Said("Name"))
            {
                Licence = licence,
                Format = ServiceText.Plain(json, 60),
            })];
        return layers.Count > 0 ? layers : throw SurveyAsking.Odd(address);
    }

    /// <summary>The features in a box.</summary>
    public static async Task<GeoJsonPages> FetchAsync(SurveyAsking asking, SurveyLayer layer, GeoBox box, CancellationToken cancel)
    {
        GeoJsonPages pages = new(layer.Address);
        // In this system the box is latitude first, whatever the form of the answer.
        string corners =
            string.Join(',', SurveyAsking.Text(box.SouthDeg), SurveyAsking.Text(box.WestDeg), SurveyAsking.Text(box.NorthDeg),
            SurveyAsking.Text(box.EastDeg), Degrees);
        for (int start = 0; ;)
        {
            Uri address =
                SurveyAsking.With(layer.Address, ("service", "WFS"), ("version", "2.0.0"), ("request", "GetFeature"),
                ("typenames", layer.Id), ("srsName", Degrees),
                ("bbox", corners), ("count", layer.PageSize.ToString(CultureInfo.InvariantCulture)),
                    ("startIndex", start.ToString(CultureInfo.InvariantCulture)));
            if (layer.Format.Length > 0) address = SurveyAsking.With(address, ("outputFormat", layer.Format));
            Answer answer = await asking.PageAsync(address, SurveyAsking.Said(box, layer.Title), cancel).ConfigureAwait(false);
            using JsonDocument json = ServiceText.Json(answer.Body) ?? Gml(answer.Body, layer.Address);
            int here = pages.Add(json.RootElement);
            start += here;
            double? matched = json.RootElement.Number("numberMatched", 0, 1e9) ?? json.RootElement.Number("totalFeatures", 0, 1e9);
            if (here == 0 || (matched is { } all ? start >= all : here < layer.PageSize)) return pages;
        }
    }

    private static JsonDocument Gml(byte[] body, Uri address)
    {
        XmlTree root = XmlTree.Read(body) ?? throw SurveyAsking.Odd(address);
        root.Refuse(address);
        return root.Name == "FeatureCollection" ? GmlFeatures.ToGeoJson(root) : throw SurveyAsking.Odd(address);
    }
}
