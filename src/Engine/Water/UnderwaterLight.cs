namespace SecondShore.Engine.Water;

/// <summary>Light at and under the surface.</summary>
public static class UnderwaterLight
{
    /// <summary>Share of shortwave in the near infrared, which the top half metre takes up.</summary>
    public static readonly double InfraredShare = 0.55;

    /// <summary>Extinction of that share, m-1 (e-fold 0.35 m; source: PaulsonSimpson1977).</summary>
    public static readonly double InfraredExtinctionPerM = 2.86;

    /// <summary>Reflectance of diffuse light, dimensionless.</summary>
    public static readonly double DiffuseAlbedoShare = 0.066;

    /// <summary>Reflectance of calm water for unpolarised direct light (Fresnel), 0 to 1.</summary>
    /// <param name="zenithDeg">Angle of incidence, degrees, 0 to 90.</param>
    /// <param name="refractiveRatio">Refractive index of water, 1.333.</param>
    public static double FresnelShare(double zenithDeg, double refractiveRatio = 1.333)
    {
        double i = double.DegreesToRadians(zenithDeg);
        if (i < 1e-6)
        {
            double normal = (refractiveRatio - 1.0) / (refractiveRatio + 1.0);
            return normal * normal;
        }

        double r = Math.Asin(Math.Sin(i) / refractiveRatio);
        double s = Math.Sin(i - r) / Math.Sin(i + r), p = Math.Tan(i - r) / Math.Tan(i + r);
        return 0.5 * ((s * s) + (p * p));
    }

    /// <summary>Broadband albedo of wavy open water for the direct beam, capped at 0.35 (source: Briegleb1986).</summary>
    public static double DirectAlbedoShare(double cosZenith)
    {
        double m = Math.Clamp(cosZenith, 0.0, 1.0);
        double albedo = (0.026 / (Math.Pow(m, 1.7) + 0.065)) + (0.15 * (m - 0.1) * (m - 0.5) * (m - 1.0));
        return Math.Min(0.35, albedo);
    }

    /// <summary>Extinction of visible light from Secchi depth, m-1 (source: PooleAtkins1929).</summary>
    /// <param name="secchiM">Secchi depth, m, above 0.</param>
    /// <param name="productFactor">Product of the two: 1.7 as published, about 2.0 on measured lakes here.</param>
    public static double ExtinctionPerM(double secchiM, double productFactor = 1.7) => productFactor / secchiM;

    /// <summary>Shortwave left at a depth, W m-2: two bands, each decaying exponentially.</summary>
    /// <param name="enteringWPerM2">Shortwave that passed the surface, W m-2.</param>
    /// <param name="extinctionPerM">Extinction of the visible band, m-1.</param>
    /// <param name="depthM">Depth, m, 0 or more.</param>
    public static double AtDepthWPerM2(double enteringWPerM2, double extinctionPerM, double depthM) =>
        enteringWPerM2 * LeftShare(extinctionPerM, depthM);

    /// <summary>Share of visible light that is red, which water itself takes up, dimensionless (choice).</summary>
    public static readonly double RedShare = 0.35;

    /// <summary>What water itself adds to the extinction of red light, m-1 (choice; pure water absorbs 0.2 to 0.6 from 600 to 700 nm).</summary>
    public static readonly double RedExtinctionPerM = 0.35;

    /// <summary>Share of the entering shortwave left at a depth when red light fades faster than the rest, 0 to 1: matters in clear lakes.</summary>
    public static double LeftThreeBandShare(double extinctionPerM, double depthM)
    {
        double visible = (1.0 - InfraredShare) * Math.Exp(-extinctionPerM * depthM);
        return (InfraredShare * Math.Exp(-InfraredExtinctionPerM * depthM)) + (visible * (1.0 - RedShare + (RedShare * Math.Exp(-RedExtinctionPerM * depthM))));
    }

    /// <summary>Share of the entering shortwave left at a depth, 0 to 1.</summary>
    public static double LeftShare(double extinctionPerM, double depthM) =>
        (InfraredShare * Math.Exp(-InfraredExtinctionPerM * depthM)) + ((1.0 - InfraredShare) * Math.Exp(-extinctionPerM * depthM));
}
