using System.Globalization;
using System.Text.Json;
using SecondShore.Engine.Core.Geo;
using SecondShore.Open.Asking;

namespace SecondShore.Open.Outlines;

/// <summary>
/// Finds waters and their outlines in the open map through the documented form of an Overpass interface. First which waters there are, with
/// their boxes alone; then the shape of the one that was chosen. The place goes out with two decimals.
/// </summary>
/// <param name="client">Who asks.</param>
/// <param name="services">Whom.</param>
public sealed class WaterSearch(PoliteClient client, OpenServices services)
{
    private const int MostWaters = 150, MostListBytes = 1 << 20, MostShapeBytes = 24 << 20;

    // Half a hundredth of a degree is some 600 m: the ring around the rounded place still holds what lies within 2.4 km of the true one.
    private const int RingM = 3000;
    private const double LargestBoxDeg = 6, FarthestM = 10_000;
    private const string Waters =
        "[\"natural\"=\"water\"][\"water\"!~\"^(river|stream|canal|ditch|wastewater|moat|pool|fountain|basin|fish_pass|lock)$\"]";
    private const string Reservoirs = "[\"landuse\"=\"reservoir\"]";

    /// <summary>How to go on where no outline comes.</summary>
    internal static Finding Otherwise =>
        Finding.Of("Or give the area alone, or an outline of your own as GeoJSON; the lake goes on without one.");

    /// <summary>Waters near a place, likeliest first.</summary>
    /// <param name="place">The place.</param>
    /// <param name="name">The name that was asked for; null for none.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="OpenException">No answer comes; the finding says how to go on.</exception>
    public async Task<IReadOnlyList<FoundWater>> NearAsync(GeoPoint place, string? name = null, CancellationToken cancel = default)
    {
        (string lat, string lon) = OpenServices.Rough(place);
        string around = $"(around:{RingM},{lat},{lon})";
        string query = $"[out:json][timeout:25][maxsize:67108864];is_in({lat},{lon})->.here;("
            + $"way(pivot.here){Waters};relation(pivot.here){Waters};way(pivot.here){Reservoirs};relation(pivot.here){Reservoirs};"
            + $"way{around}{Waters};relation{around}{Waters};way{around}{Reservoirs};relation{around}{Reservoirs};"
            + $");out tags bb {MostWaters};";
        Ask ask = Posted(query, Finding.Of($"waters within {RingM / 1000} km of {lat}, {lon} (two decimals)"), MostListBytes);
        Answer answer = await client.AskAsync(ask, cancel).ConfigureAwait(false);
        return Listed(answer.Body, services.Map.Host, place, name);
    }

    /// <summary>The outline of a water.</summary>
    /// <param name="water">One of those found.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="OpenException">No answer comes, or no outline can be made of it; the finding says how to go on.</exception>
    public async Task<LakeOutline> OutlineAsync(FoundWater water, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(water);
        string query = string.Create(CultureInfo.InvariantCulture,
            $"[out:json][timeout:60][maxsize:134217728];{(water.IsRelation ? "relation" : "way")}({water.Id});out geom;");
        Ask ask = Posted(query, Finding.Of($"the number of the water, {water.Source}"), MostShapeBytes);
        ask = ask with { KeepFor = TimeSpan.FromDays(30) };
        Answer answer = await client.AskAsync(ask, cancel).ConfigureAwait(false);
        return OutlineReply.Read(answer.Body, water, services);
    }

    /// <summary>The one water that is surely meant: the only one of that name, or the only one around the place. Null where that is to be
    /// asked.</summary>
    public static FoundWater? Certain(IReadOnlyList<FoundWater> waters)
    {
        ArgumentNullException.ThrowIfNull(waters);
        if (waters.Count == 1) return waters[0].DistanceM <= RingM ? waters[0] : null;
        FoundWater[] named = [.. waters.Where(w => w.NameRank == 0)];
        if (named.Length == 1) return named[0];
        FoundWater[] alike = [.. waters.Where(w => w.NameRank == 1 && w.DistanceM == 0)];
        if (named.Length == 0 && alike.Length == 1) return alike[0];
        FoundWater[] around = [.. waters.Where(w => w.DistanceM == 0)];
        return named.Length == 0 && waters.All(w => w.NameRank == 2) && around.Length == 1 ? around[0] : null;
    }

    /// <summary>Reads a list of waters.</summary>
    /// <exception cref="OpenException">It is not of the documented form, or the service ran into its own limits.</exception>
    internal static IReadOnlyList<FoundWater> Listed(ReadOnlyMemory<byte> body, string host, GeoPoint place, string? name)
    {
        using JsonDocument json = Parsed(body, host);
        List<FoundWater> waters = [];
        foreach (JsonElement item in json.RootElement.Items("elements").Take(2 * MostWaters))
            if (One(item, place, name) is { } water && !waters.Exists(w => w.Source == water.Source)) waters.Add(water);
        if (waters.Count == 0 && json.RootElement.Text("remark", 200) is { Length: > 0 } remark)
            throw new OpenException($"{host} stopped on its way: {remark}. {Otherwise}");
        // A water around the place comes before one beside it; of several around it the widest: a pond's box seldom holds a place by
        // chance.
        return [.. waters.OrderBy(w => w.NameRank).ThenBy(w => w.DistanceM > 0).ThenBy(w => w.DistanceM).ThenBy(w => w.Name.Length == 0)
            .ThenByDescending(w => w.Box.WidthM * w.Box.HeightM)];
    }

    /// <summary>An answer as JSON of the documented form.</summary>
    /// <exception cref="OpenException">It is none.</exception>
    internal static JsonDocument Parsed(ReadOnlyMemory<byte> body, string host)
    {
        JsonDocument? json = ServiceText.Json(body);
        if (json is { RootElement.ValueKind: JsonValueKind.Object } && json.RootElement.TryGetProperty("elements", out JsonElement list)
            && list.ValueKind == JsonValueKind.Array) return json;
        json?.Dispose();
        throw new OpenException($"The answer of {host} breaks off or is not of the documented form. {Otherwise}");
    }

    private Ask Posted(string query, Finding sent, int mostBytes) =>
        new(services.Map, sent) { Form = "data=" + Uri.EscapeDataString(query), MostBytes = mostBytes, Otherwise = Otherwise };

    private static FoundWater? One(JsonElement item, GeoPoint place, string? asked)
    {
        bool isRelation = item.Text("type") == "relation";
        if (!isRelation && item.Text("type") != "way") return null;
        if (item.Number("id", 1, 9e15) is not { } id || !item.TryGetProperty("bounds", out JsonElement bounds)) return null;
        if (bounds.Number("minlat", -89, 89) is not { } south || bounds.Number("maxlat", south, 89) is not { } north) return null;
        if (bounds.Number("minlon", -180, 180) is not { } west || bounds.Number("maxlon", west, 180) is not { } east) return null;
        if (north - south > LargestBoxDeg || east - west > LargestBoxDeg) return null;
        GeoBox box = new(south, west, north, east);
        // What lies elsewhere was not asked for.
        if (box.DistanceM(place) > FarthestM) return null;
        JsonElement tags = item.TryGetProperty("tags", out JsonElement told) ? told : default;
        string name = tags.Text("name");
        return new FoundWater(isRelation, (long)id, name, box)
        {
            IsReservoir = tags.Text("water") == "reservoir" || tags.Text("landuse") == "reservoir",
            DistanceM = box.DistanceM(place),
            NameRank = RankOf(name, asked),
        };
    }

    // Of 'Ketterfold, Ash County' only what stands before the comma is the water's own.
    private static int RankOf(string name, string? asked)
    {
        string wanted = (asked ?? "").Split(',')[0].Trim();
        if (wanted.Length == 0 || name.Length == 0) return 2;
        if (string.Equals(name, wanted, StringComparison.OrdinalIgnoreCase)) return 0;
        return name.Contains(wanted, StringComparison.OrdinalIgnoreCase)
            || wanted.Contains(name, StringComparison.OrdinalIgnoreCase) ? 1 : 2;
    }
}
