using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Motion;
using SecondShore.Engine.Rig;
using SecondShore.Engine.Season;
using SecondShore.Engine.Water;

namespace SecondShore.Answers.Rig;

/// <summary>The water of a place and hour as a rig meets it: current with depth along and across the drag, and how thick it is.</summary>
public static class StopWater
{
    // The model's own doubt of a current, as a share of it (choice), beside what no model knows.
    private static readonly double CurrentDoubtShare = 0.3;
    private static readonly double LeastSdMps = 0.02;

    /// <summary>Current by height over the bottom; null where nothing is known of the motion.</summary>
    /// <param name="motion">What the wind does to the water.</param>
    /// <param name="place">The place, in the lake's plane.</param>
    /// <param name="depthM">Depth there, m.</param>
    /// <param name="headingDeg">Where the boat drags to, degrees from north.</param>
    /// <param name="at">The hour.</param>
    public static CurrentProfile? Current(IWaterMotion motion, PlanePoint place, double depthM, double headingDeg, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(motion);
        if (motion is StillWater) return null;
        double[] heights = Heights(depthM), along = new double[heights.Length], across = new double[heights.Length];
        (double sin, double cos) = Math.SinCos(double.DegreesToRadians(headingDeg));
        for (int i = 0; i < heights.Length; i++)
        {
            Current current = motion.CurrentAt(place, depthM - heights[i], at);
            along[i] = Math.Clamp((current.EastMps * sin) + (current.NorthMps * cos), -3, 3);
            across[i] = Math.Clamp((current.NorthMps * sin) - (current.EastMps * cos), -3, 3);
        }

        return CurrentProfile.Of(heights, along, across);
    }

    /// <summary>Standard deviation of that current along the drag, m s-1.</summary>
    public static double CurrentSdMps(CurrentProfile? current, double depthM)
    {
        if (current is null) return LeastSdMps;
        double sum = 0;
        const int Parts = 8;
        for (int i = 0; i < Parts; i++)
        {
            current.At((i + 0.5) * depthM / Parts, out double along, out _);
            sum += Math.Abs(along) / Parts;
        }

        return Math.Sqrt((LeastSdMps * LeastSdMps) + (CurrentDoubtShare * CurrentDoubtShare * sum * sum));
    }

    /// <summary>Density and viscosity of the water from the surface down to a depth, at its mean temperature; null without a profile.</summary>
    public static RigWater? Water(Outlook outlook, double depthM)
    {
        ArgumentNullException.ThrowIfNull(outlook);
        IReadOnlyList<ProfilePoint> profile = outlook.Lake.Profile;
        double sum = 0, reached = 0;
        for (int i = 0; i < profile.Count && reached < depthM; i++)
        {
            double to = Math.Min(depthM, i + 1 < profile.Count ? 0.5 * (profile[i].DepthM + profile[i + 1].DepthM) : depthM);
            if (to <= reached) continue;
            sum += profile[i].TempC.P50 * (to - reached);
            reached = to;
        }

        if (reached <= 0) return null;
        double tempC = Math.Clamp(sum / reached, 0.1, 39);
        return new RigWater(FreshWater.DensityKgPerM3(tempC), FreshWater.KinematicViscosityM2PerS(tempC));
    }

    // Close at the bottom and at the surface, where the current changes most.
    private static double[] Heights(double depthM)
    {
        List<double> heights = [];
        foreach (double h in (double[])[0.1, 0.4, 1.0, 0.25 * depthM, 0.5 * depthM, 0.75 * depthM, depthM - 2.0, depthM - 1.0, depthM - 0.4, depthM - 0.05])
            if (h >= 0.1 && h < depthM && !heights.Exists(k => Math.Abs(k - h) < 0.04)) heights.Add(h);
        heights.Sort();
        return heights.Count > 0 ? [.. heights] : [0.5 * depthM];
    }
}
