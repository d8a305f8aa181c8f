using System.Globalization;
using System.Text.Json;
using SecondShore.Engine.Core.Geo;
using SecondShore.Open.Asking;

namespace SecondShore.Open.Places;

/// <summary>Finds places by name through the documented form of an open geocoding interface. Only the name is sent.</summary>
/// <param name="client">Who asks.</param>
/// <param name="services">Whom.</param>
public sealed class PlaceSearch(PoliteClient client, OpenServices services)
{
    private const int MostPlaces = 20, LongestName = 100;

    private static Finding Otherwise => Finding.Of("Or give the place itself, as latitude and longitude: 45.123,-84.567.");

    /// <summary>Finds places.</summary>
    /// <param name="name">A name; a region or country may follow after a comma.</param>
    /// <param name="cancel">Stops it.</param>
    /// <returns>Standing waters first, each group in the service's order; none twice.</returns>
    /// <exception cref="OpenException">No answer comes, or nothing has that name; the finding says how to go on.</exception>
    public async Task<IReadOnlyList<FoundPlace>> FindAsync(string name, CancellationToken cancel = default)
    {
        string asked = ServiceText.Plain(name, LongestName);
        if (asked.Length < 2) throw new OpenException($"'{asked}' is too short to be searched for. {Otherwise}");
        string joint = services.Geocoder.Query.Length > 0 ? "&" : "?";
        Uri address = new($"{services.Geocoder.AbsoluteUri}{joint}name={Uri.EscapeDataString(asked)}&count={MostPlaces}&language=en&format=json");
        Ask ask = new(address, Finding.Of($"the name '{asked}'")) { Otherwise = Otherwise };
        Answer answer = await client.AskAsync(ask, cancel).ConfigureAwait(false);
        IReadOnlyList<FoundPlace> found = Read(answer.Body, services.Geocoder.Host);
        return found.Count > 0 ? found
            : throw new OpenException($"No place named '{asked}' was found. Try its name without additions. {Otherwise}");
    }

    /// <summary>Reads an answer.</summary>
    /// <exception cref="OpenException">It is not of the documented form.</exception>
    internal static IReadOnlyList<FoundPlace> Read(ReadOnlyMemory<byte> body, string host)
    {
        using JsonDocument? json = ServiceText.Json(body);
        if (json is null || json.RootElement.ValueKind != JsonValueKind.Object)
            throw new OpenException($"The answer of {host} breaks off or is not of the documented form. {Otherwise}");
        JsonElement root = json.RootElement;
        if (root.TryGetProperty("error", out JsonElement error) && error.ValueKind == JsonValueKind.True)
            throw new OpenException($"{host} says: {root.Text("reason", 200)}. {Otherwise}");
        List<FoundPlace> places = [];
        foreach (JsonElement item in root.Items("results").Take(MostPlaces))
            if (One(item) is { } place && !places.Exists(p => p.Name == place.Name && p.Place == place.Place)) places.Add(place);
        return [.. places.OrderBy(p => p.IsWater ? 0 : 1)];
    }

    private static FoundPlace? One(JsonElement item)
    {
        string name = item.Text("name");
        if (name.Length == 0 || item.Number("latitude", -89, 89) is not { } latDeg
            || item.Number("longitude", -180, 180) is not { } lonDeg) return null;
        string[] region =
            [.. new[] { item.Text("admin2", 60), item.Text("admin1", 60), item.Text("country", 60) }.Where(r => r.Length > 0).Distinct()];
        string zone = item.Text("timezone", 60), code = item.Text("feature_code", 12);
        return new FoundPlace(name, new GeoPoint(latDeg, lonDeg), string.Join(", ", region))
        {
            ElevationM = item.Number("elevation", -450, 6500),
            TimeZoneId = zone.Contains('/', StringComparison.Ordinal)
                && zone.All(c => char.IsAsciiLetterOrDigit(c) || c is '/' or '_' or '-' or '+') ? zone : null,
            IsWater = code.StartsWith("LK", StringComparison.Ordinal) || code.StartsWith("PND", StringComparison.Ordinal)
                || code is "RSV" or "RSVI" or "LGN" or "LGNS" or "OXBW",
        };
    }

    /// <summary>Whether a text is a place by its numbers.</summary>
    /// <param name="text">Such as <c>45.12,-84.5</c>.</param>
    /// <param name="place">The place; 0, 0 where it is none.</param>
    public static bool TryCoordinates(string? text, out GeoPoint place)
    {
        place = default;
        string[] parts = (text ?? "").Split(',');
        if (parts.Length != 2 || !Degrees(parts[0], 89, out double latDeg) || !Degrees(parts[1], 180, out double lonDeg)) return false;
        place = new GeoPoint(latDeg, lonDeg);
        return true;
    }

    private static bool Degrees(string text, double most, out double valueDeg) =>
        double.TryParse(text.Trim(), NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture,
            out valueDeg)
            && Math.Abs(valueDeg) <= most;
}
