using System.Text.Json;
using SecondShore.Open.Asking;

namespace SecondShore.Open.Surveys;

/// <summary>A public agency's service of depths, as its own public pages describe it. Immutable.</summary>
/// <param name="Id">A short name to pick it by.</param>
/// <param name="Agency">Whose it is.</param>
/// <param name="Region">Where its lakes lie.</param>
/// <param name="Address">The link.</param>
/// <param name="DepthField">The attribute that holds the depth; empty where the page does not say.</param>
/// <param name="Licence">What the page says of its licence.</param>
public sealed record CatalogueEntry(string Id, string Agency, string Region, Uri Address, string DepthField, string Licence);

/// <summary>A list of services to pick from: the product's own, or one of the user's in the same form.</summary>
public static class ServiceCatalogue
{
    /// <summary>The list that comes with the product: gathered from public pages, not tried.</summary>
    public static IReadOnlyList<CatalogueEntry> Own()
    {
        using Stream stream = typeof(ServiceCatalogue).Assembly.GetManifestResourceStream("catalogue.json")
            ?? throw new InvalidOperationException("The catalogue is not in the program.");
        using MemoryStream copy = new();
        stream.CopyTo(copy);
        return Read(copy.ToArray(), "catalogue.json");
    }

    /// <summary>Reads a list.</summary>
    /// <param name="json">The file.</param>
    /// <param name="name">Its name, for messages.</param>
    /// <exception cref="OpenException">It is no such list.</exception>
    public static IReadOnlyList<CatalogueEntry> Read(ReadOnlyMemory<byte> json, string name)
    {
        using JsonDocument document = ServiceText.Json(json)
            ?? throw new OpenException($"{name} is no JSON that can be read; write it like docs/catalogue.json.");
        List<CatalogueEntry> entries = [];
        foreach (JsonElement item in document.RootElement.Items("services"))
        {
            string id = item.Text("id", 60);
            if (id.Length == 0 || !Uri.TryCreate(item.Text("address", 500), UriKind.Absolute, out Uri? address)
                || address.Scheme is not ("http" or "https"))
                throw new OpenException(
                    $"{name} has a service without 'id' or without a web address in 'address'; write it like docs/catalogue.json.");
            entries.Add(new CatalogueEntry(id, item.Text("agency"), item.Text("region"), address, item.Text("depth_field", 60),
                item.Text("licence", 300)));
        }

        return entries.Count > 0 ? entries : throw new OpenException($"{name} lists no 'services'; write it like docs/catalogue.json.");
    }
}
