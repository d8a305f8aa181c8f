using SecondShore.Engine.Core;
using SecondShore.Engine.Water;

namespace SecondShore.Engine.Motion;

/// <summary>Carries the wind of a station to 10 m over open water (Wieringa1986).</summary>
public static class StationExposure
{
    // Open country with low growth: what a well placed station on land stands in.
    private static readonly double LandRoughnessM = 0.03;

    // Where the wind no longer feels which of the two lies below.
    private static readonly double BlendingM = 60;

    /// <summary>Height that is taken where a station does not say, m.</summary>
    public static readonly double UsualHeightM = 10;

    /// <summary>Factor on the wind measured.</summary>
    /// <param name="heightM">Height of the measurement, m, 0.2 or more; null takes 10.</param>
    /// <param name="onLand">Whether land lies around the station.</param>
    public static double Factor(double? heightM, bool onLand)
    {
        double height = Math.Max(0.5, Require.Positive(heightM ?? UsualHeightM));
        if (!onLand) return WindOverWater.HeightFactor(height, UsualHeightM);
        return WindOverWater.HeightFactor(height, BlendingM, LandRoughnessM) * WindOverWater.HeightFactor(BlendingM, UsualHeightM);
    }
}
