using SecondShore.Engine.Core.Geo;

namespace SecondShore.Formats.Coordinates;

/// <summary>The Mercator of web maps: degrees of WGS 84 drawn as if the earth were a sphere (EPSG guidance note 7-2, method 1024).</summary>
internal sealed class SphereMercator : CoordinateSystem
{
    private const double RadiusM = 6378137;

    // Maps end where the square does.
    private const double HighestLatDeg = 85.06;

    public override string Name => "WGS 84 / Pseudo-Mercator (EPSG:3857)";

    public override bool IsGeographic => false;

    /// <summary>Whether a projection's name in WKT stands for it.</summary>
    public static bool IsNamed(string projection) => projection is "Mercator_Auxiliary_Sphere" or "Popular_Visualisation_Pseudo_Mercator"
        or "Popular Visualisation Pseudo Mercator" or "Popular_Visualisation_Pseudo-Mercator" or "Popular Visualisation Pseudo-Mercator";

    public override bool TryToGeo(double x, double y, out double latDeg, out double lonDeg)
    {
        latDeg = lonDeg = 0;
        if (!(Math.Abs(x) <= RadiusM * Math.PI * 1.01) || !double.IsFinite(y)) return false;
        double lat = Math.Atan(Math.Sinh(y / RadiusM)) * 180 / Math.PI;
        if (!(Math.Abs(lat) <= HighestLatDeg)) return false;
        latDeg = lat;
        lonDeg = GeoPoint.WrapLongitudeDeg(x / RadiusM * 180 / Math.PI);
        return true;
    }

    public override (double X, double Y) FromGeo(GeoPoint place) =>
        (RadiusM * place.LonDeg * Math.PI / 180, RadiusM * Math.Asinh(Math.Tan(place.LatDeg * Math.PI / 180)));
}
