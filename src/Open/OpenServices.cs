using System.Globalization;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Open;

/// <summary>Open services that know places and waters: who is asked, and what their licences want shown.</summary>
/// <param name="Geocoder">Address of the place search.</param>
/// <param name="Map">Address of the interface to the open map's data.</param>
/// <param name="PlaceAttribution">What the place search wants shown.</param>
/// <param name="MapAttribution">What the map's licence wants shown.</param>
public sealed record OpenServices(Uri Geocoder, Uri Map, string PlaceAttribution, string MapAttribution)
{
    /// <summary>The services used where no others are given: without a key.</summary>
    public static OpenServices Default { get; } = new(
        new Uri("https://geocoding-api.open-meteo.com/v1/search"),
        new Uri("https://overpass-api.de/api/interpreter"),
        "Place search by Open-Meteo.com (CC BY 4.0), names by GeoNames (CC BY 4.0)",
        "Outline © OpenStreetMap contributors, Open Database License (ODbL) 1.0, openstreetmap.org/copyright");

    /// <summary>The default with other addresses; the data's licences stay.</summary>
    public static OpenServices At(Uri? geocoder, Uri? map) =>
        Default with { Geocoder = geocoder ?? Default.Geocoder, Map = map ?? Default.Map };

    /// <summary>A place as it is sent where a kilometre is enough: two decimals, which do not tell the ramp.</summary>
    internal static (string Lat, string Lon) Rough(GeoPoint place) =>
        (place.LatDeg.ToString("0.00", CultureInfo.InvariantCulture), place.LonDeg.ToString("0.00", CultureInfo.InvariantCulture));
}
