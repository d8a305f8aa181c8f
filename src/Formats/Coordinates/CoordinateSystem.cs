using SecondShore.Engine.Core.Geo;

namespace SecondShore.Formats.Coordinates;

/// <summary>Turns the numbers of a file into places and back. Immutable.</summary>
public abstract class CoordinateSystem
{
    /// <summary>The system in words, such as <c>WGS 84 / UTM zone 18N (EPSG:32618)</c>.</summary>
    public abstract string Name { get; }

    /// <summary>Whether its numbers are degrees.</summary>
    public abstract bool IsGeographic { get; }

    /// <summary>What should be known about its accuracy, as a sentence; empty when nothing.</summary>
    public virtual string Doubt => "";

    /// <summary>Metres per unit of its numbers; 1 for degrees.</summary>
    internal virtual double UnitM => 1;

    /// <summary>Longitude of a projection's axis, degrees; null where it has none.</summary>
    internal virtual double? AxisLonDeg => null;

    /// <summary>The place of an x (east, or longitude) and y (north, or latitude); false where there is none.</summary>
    public abstract bool TryToGeo(double x, double y, out double latDeg, out double lonDeg);

    /// <summary>The x and y of a place; NaN where there are none.</summary>
    public abstract (double X, double Y) FromGeo(GeoPoint place);

    /// <summary>Degrees on a modern datum (WGS 84, NAD83, ETRS89: within a few metres of each other).</summary>
    public static CoordinateSystem Degrees { get; } = new GeographicSystem("geographic degrees, WGS 84 (EPSG:4326)", "");

    /// <summary>Whether an x and y can be a longitude and a latitude.</summary>
    internal static bool InDegrees(double x, double y) => Math.Abs(x) <= 360 && Math.Abs(y) <= 90;
}

/// <summary>A system whose numbers are degrees of longitude and latitude.</summary>
internal sealed class GeographicSystem(string name, string doubt) : CoordinateSystem
{
    public override string Name => name;

    public override bool IsGeographic => true;

    public override string Doubt => doubt;

    public override bool TryToGeo(double x, double y, out double latDeg, out double lonDeg)
    {
        bool ok = InDegrees(x, y);
        latDeg = ok ? y : 0;
        lonDeg = ok ? GeoPoint.WrapLongitudeDeg(x) : 0;
        return ok;
    }

    public override (double X, double Y) FromGeo(GeoPoint place) => (place.LonDeg, place.LatDeg);
}
