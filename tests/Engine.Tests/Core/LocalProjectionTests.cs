using CsCheck;
using SecondShore.Engine.Core.Geo;
using SecondShore.TestKit;

namespace SecondShore.Engine.Tests.Core;

public class LocalProjectionTests
{
    [Fact]
    public void A_point_goes_to_the_plane_and_back_to_a_micrometre()
    {
        Gen.Select(Gen.Double[-85, 85], Gen.Double[-180, 180], Gen.Double[-1, 1], Gen.Double[-1, 1]).Hold((lat, lon, dLat, dLon) =>
        {
            LocalProjection projection = new(new GeoPoint(lat, lon));
            GeoPoint place = new(lat + dLat, lon + dLon);
            GeoPoint back = projection.ToGeo(projection.ToPlane(place));
            Assert.Equal(place.LatDeg, back.LatDeg, 1e-11);
            Assert.Equal(0, GeoPoint.WrapLongitudeDeg(place.LonDeg - back.LonDeg), 1e-10);
        });
    }

    [Fact]
    public void A_degree_of_latitude_at_45_north_has_its_published_length()
    {
        LocalProjection projection = new(new GeoPoint(44.5, 10));
        Assert.Equal(111_131.8, projection.ToPlane(new GeoPoint(45.5, 10)).YM, 0.1);
    }

    [Fact]
    public void A_lake_on_the_date_line_is_whole()
    {
        LocalProjection projection = new(new GeoPoint(52, 179.99));
        PlanePoint west = projection.ToPlane(52, 179.98), east = projection.ToPlane(52, -179.98);
        // Along the parallel the radius is that of the prime vertical, a / sqrt(1 - e2 sin2 lat).
        double radiusM = 6_378_137 / Math.Sqrt(1 - (0.00669438 * Math.Pow(Math.Sin(52 * Math.PI / 180), 2)));
        Assert.Equal(0.04 * Math.PI / 180 * radiusM * Math.Cos(52 * Math.PI / 180), east.XM - west.XM, 0.01);
    }
}
