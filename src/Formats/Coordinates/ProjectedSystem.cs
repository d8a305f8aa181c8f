using ProjNet.CoordinateSystems;
using ProjNet.CoordinateSystems.Transformations;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Formats.Coordinates;

/// <summary>A projected system, computed by ProjNET between its own plane and its own datum's degrees.</summary>
/// <remarks>
/// The shift between datums is made where the atlas gives one; without, none is: WGS 84, NAD83 and ETRS89 differ by a metre or two,
/// which no angler feels.
/// </remarks>
internal sealed class ProjectedSystem : CoordinateSystem
{
    private readonly MathTransform _toGeo;
    private readonly MathTransform _fromGeo;
    private readonly double _primeMeridianDeg;

    private readonly DatumShift? _shift;

    public ProjectedSystem(ProjectedCoordinateSystem system, string name, string doubt, DatumShift? shift = null, double? meridianDeg = null)
    {
        _shift = shift is { IsNone: false } ? shift : null;
        Name = name;
        Doubt = doubt;
        CoordinateTransformationFactory factory = new();
        ICoordinateTransformation there = factory.CreateFromCoordinateSystems(system, system.GeographicCoordinateSystem);
        _toGeo = there.MathTransform;
        _fromGeo = factory.CreateFromCoordinateSystems(system.GeographicCoordinateSystem, system).MathTransform;
        UnitM = system.LinearUnit?.MetersPerUnit ?? 1;
        AxisLonDeg = system.Projection?.GetParameter("central_meridian")?.Value;
        _primeMeridianDeg = meridianDeg ?? system.GeographicCoordinateSystem.PrimeMeridian?.Longitude ?? 0;
    }

    public override string Name { get; }

    public override bool IsGeographic => false;

    public override string Doubt { get; }

    internal override double UnitM { get; }

    internal override double? AxisLonDeg { get; }

    public override bool TryToGeo(double x, double y, out double latDeg, out double lonDeg)
    {
        latDeg = lonDeg = 0;
        if (!(Math.Abs(x) < 1e8 && Math.Abs(y) < 1e8)) return false;
        double lon, lat;
        try
        {
            (lon, lat) = _toGeo.Transform(x, y);
        }
        catch (Exception e) when (e is ArgumentException or InvalidOperationException or ArithmeticException)
        {
            // Far outside a projection's reach its iteration does not settle.
            return false;
        }

        if (!double.IsFinite(lat) || !double.IsFinite(lon) || Math.Abs(lat) > 90 || Math.Abs(lon) > 540) return false;
        latDeg = lat;
        lonDeg = GeoPoint.WrapLongitudeDeg(lon + _primeMeridianDeg);
        if (_shift is not null) (latDeg, lonDeg) = _shift.ToWgs84(latDeg, lonDeg);
        return true;
    }

    public override (double X, double Y) FromGeo(GeoPoint place)
    {
        (double lat, double lon) = _shift is null ? (place.LatDeg, place.LonDeg) : _shift.FromWgs84(place.LatDeg, place.LonDeg);
        return _fromGeo.Transform(lon - _primeMeridianDeg, lat);
    }
}
