using System.Globalization;

namespace SecondShore.Formats.Coordinates;

/// <summary>WKT texts of the projected systems that inland surveys come in.</summary>
public static class EpsgTable
{
    private static readonly string Wgs84 = "GEOGCS[\"WGS 84\",DATUM[\"WGS_1984\",SPHEROID[\"WGS 84\",6378137,298.257223563]],PRIMEM[\"Greenwich\",0],UNIT[\"degree\",0.0174532925199433]]";
    private static readonly string Nad83 = "GEOGCS[\"NAD83\",DATUM[\"North_American_Datum_1983\",SPHEROID[\"GRS 1980\",6378137,298.257222101]],PRIMEM[\"Greenwich\",0],UNIT[\"degree\",0.0174532925199433]]";
    private static readonly string Etrs89 = "GEOGCS[\"ETRS89\",DATUM[\"European_Terrestrial_Reference_System_1989\",SPHEROID[\"GRS 1980\",6378137,298.257222101]],PRIMEM[\"Greenwich\",0],UNIT[\"degree\",0.0174532925199433]]";

    /// <summary>The WKT of a code; null when it is not known here.</summary>
    public static string? Wkt(int code) => code switch
    {
        >= 32601 and <= 32660 => Utm(code, "WGS 84", Wgs84, code - 32600, south: false),
        >= 32701 and <= 32760 => Utm(code, "WGS 84", Wgs84, code - 32700, south: true),
        >= 26901 and <= 26923 => Utm(code, "NAD83", Nad83, code - 26900, south: false),
        >= 25828 and <= 25838 => Utm(code, "ETRS89", Etrs89, code - 25800, south: false),
        3070 or 3071 => TransverseMercator(code, "NAD83 / Wisconsin Transverse Mercator", Nad83, 0, -90, 0.9996, 520000, -4480000),
        _ => null,
    };

    /// <summary>Codes of regional systems that a survey without a stated system may be in.</summary>
    public static IReadOnlyList<int> Regional { get; } = [3071];

    /// <summary>The code of the WGS 84 UTM zone that holds a place.</summary>
    public static int UtmCode(double latDeg, double lonDeg)
    {
        int zone = Math.Clamp((int)Math.Floor((lonDeg + 180) / 6) + 1, 1, 60);
        return (latDeg < 0 ? 32700 : 32600) + zone;
    }

    private static string Utm(int code, string datum, string geographic, int zone, bool south) =>
        TransverseMercator(code, string.Create(CultureInfo.InvariantCulture, $"{datum} / UTM zone {zone}{(south ? 'S' : 'N')}"),
            geographic, 0, (6 * zone) - 183, 0.9996, 500000, south ? 10000000 : 0);

    // lat0, lon0: the natural origin, degrees; scale at it; east, north: false easting and northing, m.
    private static string TransverseMercator(int code, string name, string geographic, double lat0, double lon0, double scale, double east, double north) =>
        string.Create(CultureInfo.InvariantCulture,
            $"PROJCS[\"{name}\",{geographic},PROJECTION[\"Transverse_Mercator\"],PARAMETER[\"latitude_of_origin\",{lat0}],PARAMETER[\"central_meridian\",{lon0}],PARAMETER[\"scale_factor\",{scale}],PARAMETER[\"false_easting\",{east}],PARAMETER[\"false_northing\",{north}],UNIT[\"metre\",1],AUTHORITY[\"EPSG\",{code}]]");
}
