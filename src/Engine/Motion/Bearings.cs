using System.Runtime.CompilerServices;

namespace SecondShore.Engine.Motion;

/// <summary>Compass arithmetic: degrees clockwise from north.</summary>
internal static class Bearings
{
    /// <summary>East and north parts of the unit vector toward a bearing.</summary>
    public static (double East, double North) Unit(double toDeg)
    {
        double rad = toDeg * (Math.PI / 180.0);
        return (Math.Sin(rad), Math.Cos(rad));
    }

    /// <summary>Bearing of a vector, 0 (inclusive) to 360; 0 for the null vector.</summary>
    public static double OfVectorDeg(double east, double north)
    {
        if (east == 0 && north == 0) return 0;
        return WrapDeg(Math.Atan2(east, north) * (180.0 / Math.PI));
    }

    /// <summary>The same bearing in 0 (inclusive) to 360 (exclusive).</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double WrapDeg(double deg)
    {
        double wrapped = deg - (360.0 * Math.Floor(deg / 360.0));
        return wrapped >= 360.0 ? 0.0 : wrapped;
    }
}
