using SecondShore.Atlas;

namespace SecondShore.Formats.Coordinates;

/// <summary>The shift of a datum to WGS 84 by three or seven parameters, at height 0. Immutable.</summary>
/// <remarks>Position vector convention, as OGP publication 373-7-2 gives it (methods 9603 and 9606); latitudes back by Bowring's formula (Bowring1976).</remarks>
internal sealed class DatumShift
{
    private static readonly Ellipsoid Wgs84 = new(6378137, 1 / 298.257223563);
    private readonly Ellipsoid _own;
    private readonly double _dx, _dy, _dz, _rx, _ry, _rz, _scale;

    public DatumShift(EpsgEntry entry)
    {
        _own = new Ellipsoid(entry.RadiusM, entry.InverseFlattening == 0 ? 0 : 1 / entry.InverseFlattening);
        double[] s = entry.Shift;
        IsNone = s.Length == 0 || s.All(v => v == 0);
        if (IsNone) return;
        (_dx, _dy, _dz) = (s[0], s[1], s[2]);
        if (s.Length < 7) return;
        double second = Math.PI / 648000;
        (_rx, _ry, _rz, _scale) = (s[3] * second, s[4] * second, s[5] * second, s[6] * 1e-6);
    }

    /// <summary>Whether there is nothing to shift.</summary>
    public bool IsNone { get; }

    /// <summary>The place on WGS 84, degrees.</summary>
    public (double LatDeg, double LonDeg) ToWgs84(double latDeg, double lonDeg)
    {
        (double x, double y, double z) = _own.ToSpace(latDeg, lonDeg);
        double m = 1 + _scale;
        return Wgs84.ToDegrees(_dx + (m * (x - (_rz * y) + (_ry * z))), _dy + (m * ((_rz * x) + y - (_rx * z))), _dz + (m * ((-_ry * x) + (_rx * y) + z)));
    }

    /// <summary>The place on the datum, degrees.</summary>
    public (double LatDeg, double LonDeg) FromWgs84(double latDeg, double lonDeg)
    {
        // The shift is small and nearly even: two rounds of stepping back by the misfit end below a millimetre.
        (double lat, double lon) = (latDeg, lonDeg);
        for (int round = 0; round < 3; round++)
        {
            (double there, double across) = ToWgs84(lat, lon);
            (lat, lon) = (lat + latDeg - there, lon + lonDeg - across);
        }

        return (lat, lon);
    }

    private readonly record struct Ellipsoid(double RadiusM, double Flattening)
    {
        private double Eccentricity2 => Flattening * (2 - Flattening);

        public (double X, double Y, double Z) ToSpace(double latDeg, double lonDeg)
        {
            (double sin, double cos) = Math.SinCos(double.DegreesToRadians(latDeg));
            (double sinLon, double cosLon) = Math.SinCos(double.DegreesToRadians(lonDeg));
            double normal = RadiusM / Math.Sqrt(1 - (Eccentricity2 * sin * sin));
            return (normal * cos * cosLon, normal * cos * sinLon, normal * (1 - Eccentricity2) * sin);
        }

        public (double LatDeg, double LonDeg) ToDegrees(double x, double y, double z)
        {
            double b = RadiusM * (1 - Flattening), p = Math.Sqrt((x * x) + (y * y)), second = Eccentricity2 / (1 - Eccentricity2);
            (double sin, double cos) = Math.SinCos(Math.Atan2(z * RadiusM, p * b));
            double lat = Math.Atan2(z + (second * b * sin * sin * sin), p - (Eccentricity2 * RadiusM * cos * cos * cos));
            return (double.RadiansToDegrees(lat), double.RadiansToDegrees(Math.Atan2(y, x)));
        }
    }
}
