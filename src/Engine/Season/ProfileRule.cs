using SecondShore.Engine.Water;

namespace SecondShore.Engine.Season;

/// <summary>Rules that call a profile or a course of days mixed.</summary>
public static class ProfileRule
{
    /// <summary>Temperature difference under which top and bottom count as one, K.</summary>
    public static readonly double SameTempK = 0.5;

    /// <summary>The strict rule of the measured lakes: mixed when the density difference is under 0.1 kg m-3, the temperatures differ by less than 0.5 K, or the top is colder.</summary>
    public static bool IsMixed(double topC, double bottomC) =>
        topC - bottomC < SameTempK || FreshWater.DensityKgPerM3(bottomC) - FreshWater.DensityKgPerM3(topC) < Stratification.LayeredKgPerM3;
}
