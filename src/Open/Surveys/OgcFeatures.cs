using System.Globalization;
using System.Text.Json;
using SecondShore.Open.Asking;
using SecondShore.Open.Outlines;

namespace SecondShore.Open.Surveys;

/// <summary>OGC API Features: collections, then their items in a box, page after page by the links that the service gives.</summary>
internal static class OgcFeatures
{
    /// <summary>The collections at an address: a landing page, the list of collections, a collection or its items.</summary>
    public static async Task<IReadOnlyList<SurveyLayer>> LayersAsync(SurveyAsking asking, Uri link, CancellationToken cancel)
    {
        string path = link.AbsolutePath.TrimEnd('/');
        if (path.EndsWith("/items", StringComparison.OrdinalIgnoreCase)) path = path[..^"/items".Length];
        int at = path.LastIndexOf("/collections/", StringComparison.OrdinalIgnoreCase);
        Uri address =
            SurveyAsking.With(SurveyAsking.At(link, at >= 0 || path.EndsWith("/collections", StringComparison.OrdinalIgnoreCase) ? path
            : path + "/collections"), ("f", "json"));
        Answer answer = await asking.PageAsync(address, Finding.Of("the question for its layers"), cancel).ConfigureAwait(false);
        return Read(answer.Body, address, at >= 0);
    }

    /// <summary>Reads a list of collections, or one collection.</summary>
    internal static IReadOnlyList<SurveyLayer> Read(ReadOnlyMemory<byte> body, Uri address, bool one)
    {
        using JsonDocument json = ServiceText.Json(body) ?? throw SurveyAsking.Odd(address);
        IEnumerable<JsonElement> collections = one ? [json.RootElement] : json.RootElement.Items("collections");
        string path = address.AbsolutePath.TrimEnd('/');
        List<SurveyLayer> layers = [];
        foreach (JsonElement item in collections.Take(500))
        {
            string id = item.Text("id", 200);
            if (id.Length == 0) continue;
            JsonElement licence = item.Items("links").FirstOrDefault(l => l.Text("rel") == "license");
            string items = one ? path + "/items" : $"{path}/{Uri.EscapeDataString(id)}/items";
            layers.Add(new SurveyLayer(SurveyStandard.OgcFeatures, SurveyAsking.At(address, items), id,
                item.Text("title") is { Length: > 0 } title ? title : id)
            {
                Licence = string.Join(' ', new[] { licence.Text("title", 200), licence.Text("href", 200) }.Where(t => t.Length > 0)),
            });
        }

        return layers.Count > 0 ? layers : throw SurveyAsking.Odd(address);
    }

    /// <summary>The items in a box.</summary>
    public static async Task<GeoJsonPages> FetchAsync(SurveyAsking asking, SurveyLayer layer, GeoBox box, CancellationToken cancel)
    {
        GeoJsonPages pages = new(layer.Address);
        string corners =
            string.Join(',', SurveyAsking.Text(box.WestDeg), SurveyAsking.Text(box.SouthDeg), SurveyAsking.Text(box.EastDeg),
            SurveyAsking.Text(box.NorthDeg));
        Uri? next = SurveyAsking.With(layer.Address, ("f", "json"), ("bbox", corners),
            ("limit", layer.PageSize.ToString(CultureInfo.InvariantCulture)));
        while (next is not null)
        {
            Answer answer = await asking.PageAsync(next, SurveyAsking.Said(box, layer.Title), cancel).ConfigureAwait(false);
            using JsonDocument json = ServiceText.Json(answer.Body) ?? throw SurveyAsking.Odd(layer.Address);
            int here = pages.Add(json.RootElement);
            string link = json.RootElement.Items("links").FirstOrDefault(l => l.Text("rel") == "next").Text("href", 2000);
            next = here == 0 || link.Length == 0 ? null : Following(layer.Address, next, link);
        }

        return pages;
    }

    // A page leads on within its own service, not into somebody else's.
    private static Uri Following(Uri service, Uri page, string link)
    {
        if (Uri.TryCreate(page, link, out Uri? next) && next.Scheme == service.Scheme && next.Authority == service.Authority) return next;
        throw new OpenException($"{service.Host} leads on to another service; nothing is kept. {SurveyAsking.Otherwise}");
    }
}
