using SecondShore.Engine.Rig;

namespace SecondShore.Engine.Tests.Rig;

/// <summary>Tows that the tests share.</summary>
internal static class RigCases
{
    /// <summary>The line and water of check values I13 and I14, lifted far off a deep bottom.</summary>
    public static TowCase Check => new()
    {
        DepthM = 60,
        LineOutM = 18,
        SpeedMps = 0.4,
        JigWeightN = 0.25,
        JigDragAreaM2 = 2 * 0.03 / (1000 * 0.16),
        FrictionCoefficient = 0.5,
        LineDiameterM = 0.0003,
        LineDensityKgPerM3 = 1140,
        LineDragFactor = 1,
        WaterDensityKgPerM3 = 1000,
        ViscosityM2PerS = 1.1e-6,
    };

    /// <summary>A usual tow: 3/4 oz of lead with skirt and trailer on 0.33 mm fluorocarbon, 9 m deep, 18 m out, 0.25 m/s.</summary>
    public static TowCase Usual => new()
    {
        DepthM = 9,
        LineOutM = 18,
        SpeedMps = 0.25,
        JigWeightN = 0.19,
        JigDragAreaM2 = 3.2e-4,
        FrictionCoefficient = 0.5,
        LineDiameterM = 0.00033,
        LineDensityKgPerM3 = 1780,
        LineModulusPa = 2e9,
        LineDragFactor = 1,
        WaterDensityKgPerM3 = 999.2,
        ViscosityM2PerS = 1.15e-6,
    };
}
