namespace SecondShore.Engine.Core.Geo;

/// <summary>A place in a lake's local plane: metres east and north of the projection's origin. Default: the origin.</summary>
public readonly record struct PlanePoint(double XM, double YM)
{
    /// <summary>Straight distance to another point of the same plane, m.</summary>
    public double DistanceToM(PlanePoint other) => Math.Sqrt(SquaredDistanceToM2(other));

    /// <summary>Squared straight distance to another point of the same plane, m2.</summary>
    public double SquaredDistanceToM2(PlanePoint other)
    {
        double dx = other.XM - XM, dy = other.YM - YM;
        return (dx * dx) + (dy * dy);
    }

    /// <summary>Compass bearing to another point, degrees clockwise from grid north, 0 (inclusive) to 360.</summary>
    public double BearingToDeg(PlanePoint other)
    {
        double bearingDeg = double.RadiansToDegrees(Math.Atan2(other.XM - XM, other.YM - YM));
        return bearingDeg < 0 ? bearingDeg + 360.0 : bearingDeg;
    }
}
