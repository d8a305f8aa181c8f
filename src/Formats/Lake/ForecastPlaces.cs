using System.Globalization;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Formats.Lake;

/// <summary>Places on a lake whose wind is forecast beside the lake's own: their names, and how one line tells them.</summary>
public static class ForecastPlaces
{
    /// <summary>So many at most, however large the lake: the service is a gift.</summary>
    public static readonly int Most = 8;

    private const string Prefix = "forecast-";

    /// <summary>The places as stations of 10 m wind over water, named by their number.</summary>
    public static IReadOnlyList<WindStation> Of(IEnumerable<GeoPoint> places) =>
        [.. places.Select((p, i) => new WindStation(string.Create(CultureInfo.InvariantCulture, $"{Prefix}{i + 1}"), p, 10, false))];

    /// <summary>Whether a station is one of these; any other is the user's own.</summary>
    public static bool IsOne(WindStation station) => station?.Name.StartsWith(Prefix, StringComparison.Ordinal) == true;

    /// <summary>The places in one line, <c>latitude,longitude;latitude,longitude</c>, to about a kilometre; empty without any.</summary>
    public static string Text(IReadOnlyList<WindStation> stations) =>
        string.Join(';', stations.Select(s => string.Create(CultureInfo.InvariantCulture, $"{s.Place.LatDeg:0.00},{s.Place.LonDeg:0.00}")));

    /// <summary>Reads such a line; null where it is none, or tells more places than <see cref="Most"/>.</summary>
    public static IReadOnlyList<WindStation>? Parse(string? text)
    {
        if (string.IsNullOrEmpty(text)) return [];
        List<GeoPoint> places = [];
        foreach (string part in text.Split(';'))
        {
            string[] two = part.Split(',');
            if (places.Count == Most || two.Length != 2) return null;
            if (!Within(two[0], 90, out double latDeg) || !Within(two[1], 180, out double lonDeg)) return null;
            places.Add(new GeoPoint(latDeg, lonDeg));
        }

        return Of(places);
    }

    private static bool Within(string text, double most, out double value) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value) && Math.Abs(value) <= most;
}
