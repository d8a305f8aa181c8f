using SecondShore.Engine.Core;

namespace SecondShore.Engine.Water;

/// <summary>Drag of the wind, its change with height, and shelter from banks and trees.</summary>
public static class WindOverWater
{
    private const double DragVonKarman = 0.41;

    /// <summary>Roughness of open water for the neutral change with height, m.</summary>
    public static readonly double RoughnessM = 1.5e-4;

    /// <summary>Drag coefficient of the capillary regime, dimensionless, wind held at 1 m/s or more (source: WuestLorke2003).</summary>
    public static double CapillaryDragShare(double windMps) => 0.0044 * Math.Pow(Math.Max(1.0, windMps), -1.15);

    /// <summary>Drag coefficient of the Charnock regime, dimensionless (source: WuestLorke2003).</summary>
    public static double CharnockDragShare(double windMps)
    {
        double speed = Math.Max(0.5, windMps), drag = 1e-3;
        for (int pass = 0; pass < 10; pass++)
        {
            double root = (Math.Log(10.0 * PhysicalConstants.GravityMps2 / (drag * speed * speed)) / DragVonKarman) + 11.3;
            drag = 1.0 / (root * root);
        }

        return drag;
    }

    /// <summary>Drag coefficient at 10 m: the larger of the two regimes, dimensionless.</summary>
    public static double DragShare(double windMps) => Math.Max(CapillaryDragShare(windMps), CharnockDragShare(windMps));

    /// <summary>Wind stress, N m-2.</summary>
    /// <param name="windMps">Wind at 10 m, m s-1, 0 or more.</param>
    /// <param name="airDensityKgPerM3">Density of the air, kg m-3.</param>
    public static double StressPa(double windMps, double airDensityKgPerM3) => airDensityKgPerM3 * DragShare(windMps) * windMps * windMps;

    /// <summary>Friction velocity on the water side, m s-1.</summary>
    public static double WaterFrictionMps(double stressPa, double waterDensityKgPerM3) => Math.Sqrt(stressPa / waterDensityKgPerM3);

    /// <summary>Factor that carries a neutral wind from one height to another, dimensionless.</summary>
    /// <param name="fromM">Height of the wind given, m, above the roughness.</param>
    /// <param name="toM">Height wanted, m.</param>
    /// <param name="roughnessM">Roughness, m; null takes open water.</param>
    public static double HeightFactor(double fromM, double toM, double? roughnessM = null)
    {
        double z0 = roughnessM ?? RoughnessM;
        return Math.Log(toM / z0) / Math.Log(fromM / z0);
    }

    /// <summary>Share of the wind's stirring that reaches a lake of an area, 0 to 1 (source: HondzoStefan1993).</summary>
    /// <param name="areaM2">Surface area, m2, above 0.</param>
    public static double AreaExposureShare(double areaM2) => 1.0 - Math.Exp(-0.3 * areaM2 / 1e6);

    /// <summary>Share of a round lake that lies beyond the lee of its trees, 0 to 1 (source: Markfort2010).</summary>
    /// <param name="diameterM">Diameter, m, above 0.</param>
    /// <param name="leeM">Length of the lee, m: about 50 tree heights.</param>
    public static double CanopyExposureShare(double diameterM, double leeM)
    {
        if (leeM >= diameterM) return 0;
        return (2.0 / Math.PI * Math.Acos(leeM / diameterM))
            - (2.0 * leeM / (Math.PI * diameterM * diameterM) * Math.Sqrt((diameterM * diameterM) - (leeM * leeM)));
    }

    /// <summary>Ratio of the mean cube to the cube of the mean of a Weibull wind, dimensionless.</summary>
    /// <param name="shape">Weibull shape, above 0; 2 for wind over a day or a season.</param>
    public static double MeanCubeFactor(double shape)
    {
        double first = Gamma(1.0 + (1.0 / shape));
        return Gamma(1.0 + (3.0 / shape)) / (first * first * first);
    }

    // Lanczos, g = 7: 1e-13 relative for the arguments met here.
    private static double Gamma(double x)
    {
        ReadOnlySpan<double> c =
        [
            0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
            12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
        ];
        double z = x - 1.0, sum = c[0], t = z + 7.5;
        for (int i = 1; i < c.Length; i++) sum += c[i] / (z + i);
        return Math.Sqrt(2.0 * Math.PI) * Math.Pow(t, z + 0.5) * Math.Exp(-t) * sum;
    }
}
