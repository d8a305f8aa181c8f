using ProjNet.CoordinateSystems;
using ProjNet.CoordinateSystems.Transformations;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Formats.Coordinates;

/// <summary>A projected system, computed by ProjNET between its own plane and its own datum's degrees.</summary>
/// <remarks>No shift between datums is made: WGS 84, NAD83 and ETRS89 differ by a metre or two, which no angler feels.</remarks>
internal sealed class ProjectedSystem : CoordinateSystem
{
    private readonly MathTransform _toGeo;
    private readonly MathTransform _fromGeo;
    private readonly double _primeMeridianDeg;

    public ProjectedSystem(ProjectedCoordinateSystem system, string name, FindingForm doubt)
    {
        Name = name;
        Doubt = doubt;
        CoordinateTransformationFactory factory = new();
        ICoordinateTransformation there = factory.CreateFromCoordinateSystems(system, system.GeographicCoordinateSystem);
        _toGeo = there.MathTransform;
        _fromGeo = factory.CreateFromCoordinateSystems(system.GeographicCoordinateSystem, system).MathTransform;
        AxisLonDeg = system.Projection?.GetParameter("central_meridian")?.Value;
        _primeMeridianDeg = system.GeographicCoordinateSystem.PrimeMeridian?.Longitude ?? 0;
    }

    public override string Name { get; }

    public override bool IsGeographic => false;

    public override FindingForm Doubt { get; }

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
        return true;
    }

    public override (double X, double Y) FromGeo(GeoPoint place) => _fromGeo.Transform(place.LonDeg - _primeMeridianDeg, place.LatDeg);
}
