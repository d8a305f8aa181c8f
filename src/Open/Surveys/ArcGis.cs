using System.Globalization;
using System.Text.Json;
using SecondShore.Open.Asking;
using SecondShore.Open.Outlines;

namespace SecondShore.Open.Surveys;

/// <summary>ArcGIS feature, map and image services: their layers, the features of one in a box page by page, or a raster of it.</summary>
internal static class ArcGis
{
    private const int MostPixels = 2000;

    /// <summary>The layers at an address: a service or one of its layers.</summary>
    public static async Task<IReadOnlyList<SurveyLayer>> LayersAsync(SurveyAsking asking, Uri link, CancellationToken cancel)
    {
        string path = link.AbsolutePath.TrimEnd('/');
        if (path.EndsWith("/query", StringComparison.OrdinalIgnoreCase)) path = path[..^"/query".Length];
        Uri address = SurveyAsking.With(new UriBuilder(link) { Path = path, Query = "" }.Uri, ("f", "json"));
        Answer answer = await asking.PageAsync(address, Finding.Of("the question for its layers"), cancel).ConfigureAwait(false);
        return Read(answer.Body, new UriBuilder(address) { Query = "" }.Uri);
    }

    /// <summary>Reads what a service or a layer says of itself.</summary>
    internal static IReadOnlyList<SurveyLayer> Read(ReadOnlyMemory<byte> body, Uri address)
    {
        using JsonDocument json = ServiceText.Json(body) ?? throw SurveyAsking.Odd(address);
        JsonElement root = json.RootElement;
        Refuse(root, address);
        string licence = root.Text("copyrightText", 300), path = address.AbsolutePath.TrimEnd('/');
        int pageSize = (int)(root.Number("maxRecordCount", 1, 1e6) ?? 1000);
        if (path.EndsWith("/ImageServer", StringComparison.OrdinalIgnoreCase))
            return [new SurveyLayer(SurveyStandard.ArcGisImage, address, "", root.Text("name") is { Length: > 0 } n ? n
                : path) { Licence = licence }];
        if (root.Text("type").Contains("Layer", StringComparison.Ordinal))
            return [Layer(address, root.Number("id", 0, 1e6)?.ToString(CultureInfo.InvariantCulture)
                ?? "", root.Text("name"), licence, pageSize)];
        List<SurveyLayer> layers = [];
        foreach (JsonElement item in root.Items("layers").Take(500))
            if (item.Number("id", 0, 1e6) is { } id && item.Text("type") is "" or "Feature Layer")
                layers.Add(Layer(SurveyAsking.At(address, $"{path}/{(int)id}"), ((int)id).ToString(CultureInfo.InvariantCulture),
                    item.Text("name"), licence, pageSize));
        return layers.Count > 0 ? layers : throw SurveyAsking.Odd(address);
    }

    /// <summary>The features in a box.</summary>
    public static async Task<GeoJsonPages> FeaturesAsync(SurveyAsking asking, SurveyLayer layer, GeoBox box, CancellationToken cancel)
    {
        GeoJsonPages pages = new(layer.Address);
        Uri query = SurveyAsking.At(layer.Address, layer.Address.AbsolutePath.TrimEnd('/') + "/query");
        for (int offset = 0; ;)
        {
            Uri address =
                SurveyAsking.With(query, ("where", "1=1"), ("geometry", Corners(box)), ("geometryType", "esriGeometryEnvelope"),
                ("inSR", "4326"),
                ("spatialRel", "esriSpatialRelIntersects"), ("outFields", "*"), ("outSR", "4326"), ("returnGeometry", "true"),
                    ("f", "geojson"),
                ("resultOffset", offset.ToString(CultureInfo.InvariantCulture)),
                    ("resultRecordCount", layer.PageSize.ToString(CultureInfo.InvariantCulture)));
            Answer answer = await asking.PageAsync(address, SurveyAsking.Said(box, layer.Title), cancel).ConfigureAwait(false);
            using JsonDocument json = ServiceText.Json(answer.Body) ?? throw SurveyAsking.Odd(layer.Address);
            Refuse(json.RootElement, layer.Address);
            int here = pages.Add(json.RootElement);
            // The mark of more stands beside the features, or among the collection's properties where the form is GeoJSON.
            if (here == 0 || !Exceeded(json.RootElement)) return pages;
            offset += here;
        }
    }

    /// <summary>A raster of a box.</summary>
    public static async Task<byte[]> ImageAsync(SurveyAsking asking, SurveyLayer layer, GeoBox box, CancellationToken cancel)
    {
        double widthM = box.WidthM, heightM = box.HeightM, pixelM = Math.Max(2, Math.Max(widthM, heightM) / MostPixels);
        string size =
            string.Create(CultureInfo.InvariantCulture, $"{Math.Max(2, (int)(widthM / pixelM))},{Math.Max(2, (int)(heightM / pixelM))}");
        Uri address =
            SurveyAsking.With(SurveyAsking.At(layer.Address, layer.Address.AbsolutePath.TrimEnd('/') + "/exportImage"),
            ("bbox", Corners(box)), ("bboxSR", "4326"),
            ("imageSR", "4326"), ("size", size), ("format", "tiff"), ("pixelType", "F32"), ("interpolation", "RSP_NearestNeighbor"),
                ("f", "image"));
        Answer answer = await asking.FileAsync(address, SurveyAsking.Said(box, layer.Title), cancel).ConfigureAwait(false);
        if (ServiceText.Json(answer.Body) is { } json)
        {
            using (json) Refuse(json.RootElement, layer.Address);
            throw SurveyAsking.Odd(layer.Address);
        }

        return answer.Body;
    }

    private static SurveyLayer Layer(Uri address, string id, string name, string licence, int pageSize) =>
        new(SurveyStandard.ArcGisFeatures, address, id, name.Length > 0 ? name
            : id)
        { Licence = licence, PageSize = Math.Clamp(pageSize, 1, 2000) };

    private static string Corners(GeoBox box) =>
        string.Join(',', SurveyAsking.Text(box.WestDeg), SurveyAsking.Text(box.SouthDeg), SurveyAsking.Text(box.EastDeg),
            SurveyAsking.Text(box.NorthDeg));

    private static bool Exceeded(JsonElement root) => IsTrue(root)
        || (root.TryGetProperty("properties", out JsonElement properties) && IsTrue(properties));

    private static bool IsTrue(JsonElement element) => element.ValueKind == JsonValueKind.Object
        && element.TryGetProperty("exceededTransferLimit", out JsonElement more) && more.ValueKind == JsonValueKind.True;

    // These services tell of errors with status 200.
    private static void Refuse(JsonElement root, Uri address)
    {
        if (root.ValueKind != JsonValueKind.Object) throw SurveyAsking.Odd(address);
        if (root.TryGetProperty("error", out JsonElement error)
            && error.ValueKind == JsonValueKind.Object) throw SurveyAsking.Said(address, error.Text("message", 200));
    }
}
