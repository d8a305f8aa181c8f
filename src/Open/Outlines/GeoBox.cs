using SecondShore.Engine.Core.Geo;

namespace SecondShore.Open.Outlines;

/// <summary>A box of latitudes and longitudes that does not cross the date line, degrees. Default: the point 0, 0.</summary>
/// <param name="SouthDeg">South edge.</param>
/// <param name="WestDeg">West edge.</param>
/// <param name="NorthDeg">North edge.</param>
/// <param name="EastDeg">East edge.</param>
public readonly record struct GeoBox(double SouthDeg, double WestDeg, double NorthDeg, double EastDeg)
{
    /// <summary>Its middle.</summary>
    public GeoPoint Middle => new((SouthDeg + NorthDeg) / 2, (WestDeg + EastDeg) / 2);

    /// <summary>From south to north, m.</summary>
    public double HeightM => new LocalProjection(Middle).ToPlane(NorthDeg, Middle.LonDeg).YM * 2;

    /// <summary>From west to east along the middle, m.</summary>
    public double WidthM => new LocalProjection(Middle).ToPlane(Middle.LatDeg, EastDeg).XM * 2;

    /// <summary>Whether a place lies in it.</summary>
    public bool Holds(GeoPoint place) => place.LatDeg >= SouthDeg && place.LatDeg <= NorthDeg && place.LonDeg >= WestDeg
        && place.LonDeg <= EastDeg;

    /// <summary>How far a place lies from it, m; 0 inside.</summary>
    public double DistanceM(GeoPoint place)
    {
        GeoPoint nearest = new(Math.Clamp(place.LatDeg, SouthDeg, NorthDeg), Math.Clamp(place.LonDeg, WestDeg, EastDeg));
        if (nearest == place) return 0;
        PlanePoint way = new LocalProjection(place).ToPlane(nearest);
        return Math.Sqrt((way.XM * way.XM) + (way.YM * way.YM));
    }

    /// <summary>The box with a margin on every side, degrees.</summary>
    public GeoBox Wider(double marginDeg) => new(Math.Max(-89, SouthDeg - marginDeg), Math.Max(-180, WestDeg - marginDeg),
        Math.Min(89, NorthDeg + marginDeg), Math.Min(180, EastDeg + marginDeg));

    /// <summary>The box around places; null where there are none.</summary>
    public static GeoBox? Around(IEnumerable<GeoPoint> places)
    {
        ArgumentNullException.ThrowIfNull(places);
        double south = double.MaxValue, west = double.MaxValue, north = double.MinValue, east = double.MinValue;
        foreach (GeoPoint p in places)
            (south, west, north, east) =
                (Math.Min(south, p.LatDeg), Math.Min(west, p.LonDeg), Math.Max(north, p.LatDeg), Math.Max(east, p.LonDeg));
        return south > north ? null : new GeoBox(south, west, north, east);
    }
}
