using SecondShore.Engine.Core;

namespace SecondShore.Engine.Motion;

/// <summary>Height and period of wind waves by fetch, depth and wind. All at 10 m wind, SI.</summary>
public static class WaveGrowth
{
    private static readonly double Gravity = PhysicalConstants.GravityMps2;

    /// <summary>Significant height, m, any depth (YoungVerhagen1996, refitted BreugemHolthuijsen2007).</summary>
    /// <param name="windMps">Wind, m s-1; 0 or less gives 0.</param>
    /// <param name="fetchM">Fetch, m; 0 or less gives 0.</param>
    /// <param name="depthM">Mean depth along the fetch, m.</param>
    public static double HeightM(double windMps, double fetchM, double depthM)
    {
        if (!(windMps > 0) || !(fetchM > 0) || !(depthM > 0)) return 0.0;
        double scaleM = ScaleM(windMps);
        return 0.24 * scaleM * Math.Pow(Limited(Growth(fetchM, scaleM), depthM, scaleM), 0.572);
    }

    /// <summary>Length scale of a wind's waves, m: its square over gravity.</summary>
    internal static double ScaleM(double windMps) => windMps * windMps / Gravity;

    /// <summary>Factor on <see cref="Limited"/> that orders the seas of different winds by height.</summary>
    internal static double Size(double windMps) => Math.Pow(ScaleM(windMps), 1.0 / 0.572);

    /// <summary>How far a fetch lets the sea grow in deep water, dimensionless; 0 without fetch.</summary>
    internal static double Growth(double fetchM, double scaleM) => fetchM > 0 ? 4.41e-4 * Math.Pow(fetchM / scaleM, 0.79) : 0.0;

    /// <summary>The same held down by the depth: the height is its power 0.572.</summary>
    internal static double Limited(double growth, double depthM, double scaleM)
    {
        if (!(depthM > 0)) return 0.0;
        double limit = Math.Tanh(0.343 * Math.Pow(depthM / scaleM, 1.14));
        return limit * Math.Tanh(growth / limit);
    }

    /// <summary>Peak period, s, any depth (YoungVerhagen1996, refitted BreugemHolthuijsen2007); ranges as for the height.</summary>
    public static double PeriodS(double windMps, double fetchM, double depthM)
    {
        if (!(windMps > 0) || !(fetchM > 0) || !(depthM > 0)) return 0.0;
        double scaleM = windMps * windMps / Gravity;
        double depthLimit = Math.Tanh(0.10 * Math.Pow(depthM / scaleM, 2.01));
        double growth = 2.77e-7 * Math.Pow(fetchM / scaleM, 1.45);
        return 7.69 * (windMps / Gravity) * Math.Pow(depthLimit * Math.Tanh(growth / depthLimit), 0.187);
    }

    /// <summary>Significant height, m, by the form of Bretschneider (UsArmy1977): a cross-check.</summary>
    public static double BretschneiderHeightM(double windMps, double fetchM, double depthM)
    {
        double scaleM = windMps * windMps / Gravity;
        double limit = Math.Tanh(0.530 * Math.Pow(depthM / scaleM, 0.75));
        return 0.283 * scaleM * limit * Math.Tanh(0.0125 * Math.Pow(fetchM / scaleM, 0.42) / limit);
    }

    /// <summary>Significant period, s, by the form of Bretschneider (UsArmy1977): a cross-check.</summary>
    public static double BretschneiderPeriodS(double windMps, double fetchM, double depthM)
    {
        double scaleM = windMps * windMps / Gravity;
        double limit = Math.Tanh(0.833 * Math.Pow(depthM / scaleM, 0.375));
        return 2.0 * Math.PI * windMps / Gravity * 1.20 * limit * Math.Tanh(0.077 * Math.Pow(fetchM / scaleM, 0.25) / limit);
    }

    /// <summary>Significant height, m, deep water (UsArmy2002): a cross-check.</summary>
    public static double DeepHeightM(double windMps, double fetchM)
    {
        double friction = FrictionMps(windMps), scaleM = friction * friction / Gravity;
        return scaleM * Math.Min(0.0413 * Math.Sqrt(fetchM / scaleM), 211.5);
    }

    /// <summary>Peak period, s, deep water (UsArmy2002): a cross-check.</summary>
    public static double DeepPeriodS(double windMps, double fetchM)
    {
        double friction = FrictionMps(windMps);
        return friction / Gravity * Math.Min(0.651 * Math.Cbrt(Gravity * fetchM / (friction * friction)), 239.8);
    }

    /// <summary>Time a wind must blow before the fetch limits the waves, s (UsArmy2002).</summary>
    public static double GrowthTimeS(double windMps, double fetchM) =>
        77.23 * Math.Pow(fetchM, 0.67) / (Math.Pow(windMps, 0.34) * Math.Pow(Gravity, 0.33));

    /// <summary>Fetch, m, that a wind of a given age makes up for (UsArmy2002): the lesser of it and the true fetch counts.</summary>
    /// <param name="windMps">Wind, m s-1, above 0.</param>
    /// <param name="ageS">Time for which it has blown, s.</param>
    public static double FetchOfAgeM(double windMps, double ageS)
    {
        double friction = FrictionMps(windMps);
        return friction * friction / Gravity * 5.23e-3 * Math.Pow(Gravity * ageS / friction, 1.5);
    }

    private static double FrictionMps(double windMps) => windMps * Math.Sqrt(0.001 * (1.1 + (0.035 * windMps)));
}
