namespace SecondShore.Engine.Core.Geo;

/// <summary>
/// The lake's own plane: a transverse Mercator projection of the WGS 84 ellipsoid whose central meridian and
/// origin lie on the lake, with scale 1 there. Within 100 km of the origin lengths are true to 1.3e-4.
/// </summary>
/// <remarks>
/// Source: Karney2011 (Krueger's series to sixth order in the third flattening). Longitudes are taken relative to
/// the origin, so a lake on the date line is an ordinary lake.
/// </remarks>
public sealed class LocalProjection
{
    private static readonly Series Ellipsoid = new(PhysicalConstants.EarthSemiMajorM, PhysicalConstants.EarthFlattening);
    private readonly double _northingAtOriginM;

    /// <summary>Makes the plane whose (0, 0) is <paramref name="origin"/>.</summary>
    /// <param name="origin">Any place on or near the lake, no nearer than 1 degree to a pole.</param>
    /// <exception cref="ArgumentOutOfRangeException">The origin lies within 1 degree of a pole.</exception>
    public LocalProjection(GeoPoint origin)
    {
        Require.InRange(origin.LatDeg, -89.0, 89.0, nameof(origin));
        Origin = origin;
        _northingAtOriginM = Ellipsoid.Forward(origin.LatDeg, 0).YM;
    }

    /// <summary>The place that maps to (0, 0).</summary>
    public GeoPoint Origin { get; }

    /// <summary>Plane coordinates of a place. Meaningful within some thousands of kilometres of the origin.</summary>
    public PlanePoint ToPlane(GeoPoint place) => ToPlane(place.LatDeg, place.LonDeg);

    /// <summary>Plane coordinates of a latitude and longitude in degrees.</summary>
    public PlanePoint ToPlane(double latDeg, double lonDeg)
    {
        PlanePoint point = Ellipsoid.Forward(latDeg, GeoPoint.WrapLongitudeDeg(lonDeg - Origin.LonDeg));
        return new PlanePoint(point.XM, point.YM - _northingAtOriginM);
    }

    /// <summary>The place at plane coordinates: the inverse of <see cref="ToPlane(GeoPoint)"/>.</summary>
    public GeoPoint ToGeo(PlanePoint point)
    {
        (double latDeg, double lonDifferenceDeg) = Ellipsoid.Inverse(point.XM, point.YM + _northingAtOriginM);
        return new GeoPoint(latDeg, Origin.LonDeg + lonDifferenceDeg);
    }

    private sealed class Series
    {
        private readonly double _eccentricity;
        private readonly double _rectifyingRadiusM;
        private readonly double[] _forward;
        private readonly double[] _inverse;

        public Series(double semiMajorM, double flattening)
        {
            double n = flattening / (2.0 - flattening);
            double n2 = n * n, n3 = n2 * n, n4 = n3 * n, n5 = n4 * n, n6 = n5 * n;
            _eccentricity = Math.Sqrt(flattening * (2.0 - flattening));
            _rectifyingRadiusM = semiMajorM / (1.0 + n) * (1.0 + (n2 / 4.0) + (n4 / 64.0) + (n6 / 256.0));
            _forward =
            [
                (n / 2.0) - (2.0 * n2 / 3.0) + (5.0 * n3 / 16.0) + (41.0 * n4 / 180.0) - (127.0 * n5 / 288.0) + (7891.0 * n6 / 37800.0),
                (13.0 * n2 / 48.0) - (3.0 * n3 / 5.0) + (557.0 * n4 / 1440.0) + (281.0 * n5 / 630.0) - (1983433.0 * n6 / 1935360.0),
                (61.0 * n3 / 240.0) - (103.0 * n4 / 140.0) + (15061.0 * n5 / 26880.0) + (167603.0 * n6 / 181440.0),
                (49561.0 * n4 / 161280.0) - (179.0 * n5 / 168.0) + (6601661.0 * n6 / 7257600.0),
                (34729.0 * n5 / 80640.0) - (3418889.0 * n6 / 1995840.0),
                212378941.0 * n6 / 319334400.0,
            ];
            _inverse =
            [
                (n / 2.0) - (2.0 * n2 / 3.0) + (37.0 * n3 / 96.0) - (n4 / 360.0) - (81.0 * n5 / 512.0) + (96199.0 * n6 / 604800.0),
                (n2 / 48.0) + (n3 / 15.0) - (437.0 * n4 / 1440.0) + (46.0 * n5 / 105.0) - (1118711.0 * n6 / 3870720.0),
                (17.0 * n3 / 480.0) - (37.0 * n4 / 840.0) - (209.0 * n5 / 4480.0) + (5569.0 * n6 / 90720.0),
                (4397.0 * n4 / 161280.0) - (11.0 * n5 / 504.0) - (830251.0 * n6 / 7257600.0),
                (4583.0 * n5 / 161280.0) - (108847.0 * n6 / 3991680.0),
                20648693.0 * n6 / 638668800.0,
            ];
        }

        public PlanePoint Forward(double latDeg, double lonDifferenceDeg)
        {
            double lat = double.DegreesToRadians(latDeg), lon = double.DegreesToRadians(lonDifferenceDeg);
            double tau = Math.Tan(lat);
            double sigma = Math.Sinh(_eccentricity * Math.Atanh(_eccentricity * tau / Math.Sqrt(1.0 + (tau * tau))));
            double conformal = (tau * Math.Sqrt(1.0 + (sigma * sigma))) - (sigma * Math.Sqrt(1.0 + (tau * tau)));
            double xi0 = Math.Atan2(conformal, Math.Cos(lon));
            double eta0 = Math.Asinh(Math.Sin(lon) / Math.Sqrt((conformal * conformal) + (Math.Cos(lon) * Math.Cos(lon))));
            double xi = xi0, eta = eta0;
            for (int j = 0; j < _forward.Length; j++)
            {
                double k = 2.0 * (j + 1);
                xi += _forward[j] * Math.Sin(k * xi0) * Math.Cosh(k * eta0);
                eta += _forward[j] * Math.Cos(k * xi0) * Math.Sinh(k * eta0);
            }

            return new PlanePoint(_rectifyingRadiusM * eta, _rectifyingRadiusM * xi);
        }

        public (double LatDeg, double LonDifferenceDeg) Inverse(double xM, double yM)
        {
            double eta = xM / _rectifyingRadiusM, xi = yM / _rectifyingRadiusM;
            double xi0 = xi, eta0 = eta;
            for (int j = 0; j < _inverse.Length; j++)
            {
                double k = 2.0 * (j + 1);
                xi0 -= _inverse[j] * Math.Sin(k * xi) * Math.Cosh(k * eta);
                eta0 -= _inverse[j] * Math.Cos(k * xi) * Math.Sinh(k * eta);
            }

            double sinhEta = Math.Sinh(eta0), cosXi = Math.Cos(xi0);
            double conformal = Math.Sin(xi0) / Math.Sqrt((sinhEta * sinhEta) + (cosXi * cosXi));
            double lon = Math.Atan2(sinhEta, cosXi);
            return (double.RadiansToDegrees(Math.Atan(TauFromConformal(conformal))), double.RadiansToDegrees(lon));
        }

        // Newton's method of Karney2011, section 2; five passes are ample for terrestrial eccentricity.
        private double TauFromConformal(double conformal)
        {
            double e2 = _eccentricity * _eccentricity;
            double tau = conformal / (1.0 - e2);
            for (int pass = 0; pass < 5; pass++)
            {
                double root = Math.Sqrt(1.0 + (tau * tau));
                double sigma = Math.Sinh(_eccentricity * Math.Atanh(_eccentricity * tau / root));
                double estimate = (tau * Math.Sqrt(1.0 + (sigma * sigma))) - (sigma * root);
                double step = (conformal - estimate) / Math.Sqrt(1.0 + (estimate * estimate))
                    * (1.0 + ((1.0 - e2) * tau * tau)) / ((1.0 - e2) * root);
                tau += step;
                if (Math.Abs(step) < 1e-14 * Math.Max(1.0, Math.Abs(tau))) break;
            }

            return tau;
        }
    }
}
