using System.Globalization;

namespace SecondShore.Engine.Core.Geo;

/// <summary>A place on the WGS 84 ellipsoid, latitude first. Default: 0, 0.</summary>
public readonly record struct GeoPoint
{
    /// <summary>Makes a point; longitude is wrapped into -180 (inclusive) to 180 (exclusive).</summary>
    /// <param name="latDeg">Latitude in degrees, north positive, -90 to 90.</param>
    /// <param name="lonDeg">Longitude in degrees, east positive, -540 to 540.</param>
    /// <exception cref="ArgumentOutOfRangeException">A coordinate lies outside its range or is NaN.</exception>
    public GeoPoint(double latDeg, double lonDeg)
    {
        LatDeg = Require.InRange(latDeg, -90.0, 90.0);
        LonDeg = WrapLongitudeDeg(Require.InRange(lonDeg, -540.0, 540.0));
    }

    /// <summary>Latitude in degrees, north positive.</summary>
    public double LatDeg { get; }

    /// <summary>Longitude in degrees, east positive, -180 (inclusive) to 180 (exclusive).</summary>
    public double LonDeg { get; }

    /// <summary>Brings a longitude or a difference of longitudes into -180 (inclusive) to 180 (exclusive).</summary>
    public static double WrapLongitudeDeg(double lonDeg)
    {
        if (lonDeg >= -180.0 && lonDeg < 180.0) return lonDeg;
        double turned = (lonDeg + 180.0) % 360.0;
        if (turned < 0) turned += 360.0;
        return turned - 180.0;
    }

    /// <summary>Latitude and longitude with the invariant culture, such as <c>45.1, -93.2</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{LatDeg}, {LonDeg}");
}
