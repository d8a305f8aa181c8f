using System.Buffers;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using SecondShore.Open.Asking;

namespace SecondShore.Open.Surveys;

/// <summary>Puts pages of features together into one GeoJSON file; a feature that comes on two pages counts once.</summary>
internal sealed class GeoJsonPages(Uri address)
{
    private const int MostFeatures = 400_000;
    private readonly ArrayBufferWriter<byte> _features = new();
    private readonly HashSet<string> _ids = new(StringComparer.Ordinal), _pages = new(StringComparer.Ordinal);
    private string _crs = "";

    /// <summary>Features so far.</summary>
    public int Count { get; private set; }

    /// <summary>How many came twice.</summary>
    public int Twice { get; private set; }

    /// <summary>Adds a page.</summary>
    /// <param name="root">A feature collection.</param>
    /// <returns>How many features the page has.</returns>
    /// <exception cref="OpenException">It is none, or the same page comes again.</exception>
    public int Add(JsonElement root)
    {
        if (root.ValueKind != JsonValueKind.Object || !root.TryGetProperty("features", out JsonElement list)
            || list.ValueKind != JsonValueKind.Array) throw SurveyAsking.Odd(address);
        if (Count == 0 && root.TryGetProperty("crs", out JsonElement crs) && crs.ValueKind == JsonValueKind.Object) _crs = crs.GetRawText();
        int here = 0, fresh = 0;
        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (JsonElement feature in list.EnumerateArray())
        {
            here++;
            byte[] text = Encoding.UTF8.GetBytes(feature.GetRawText());
            hash.AppendData(text);
            if (IdOf(feature) is { } id && !_ids.Add(id))
            {
                Twice++;
                continue;
            }

            if (Count++ > 0) _features.Write(","u8);
            _features.Write(text);
            fresh++;
            if (Count > MostFeatures) throw new OpenException(
                $"{address.Host} has more than {MostFeatures} features for this box; nothing is kept. {SurveyAsking.Otherwise}");
        }

        // A service that forgets where it was would be asked for ever.
        if (here > 0 && (fresh == 0 || !_pages.Add(Convert.ToHexString(hash.GetHashAndReset()))))
            throw new OpenException($"{address.Host} sends the same page again; nothing is kept. {SurveyAsking.Otherwise}");
        return here;
    }

    /// <summary>The file.</summary>
    public byte[] ToBytes()
    {
        using MemoryStream all = new();
        all.Write("{\"type\":\"FeatureCollection\","u8);
        if (_crs.Length > 0) all.Write(Encoding.UTF8.GetBytes($"\"crs\":{_crs},"));
        all.Write("\"features\":["u8);
        all.Write(_features.WrittenSpan);
        all.Write("]}\n"u8);
        return all.ToArray();
    }

    private static string? IdOf(JsonElement feature)
    {
        if (feature.ValueKind != JsonValueKind.Object) return null;
        return feature.TryGetProperty("id", out JsonElement id) && id.ValueKind is JsonValueKind.String or JsonValueKind.Number
            ? id.GetRawText() : null;
    }
}
