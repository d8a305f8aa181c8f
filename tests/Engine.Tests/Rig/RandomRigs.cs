using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Rig;

namespace SecondShore.Engine.Tests.Rig;

/// <summary>Rigs from all of the solver's bounds, corners included.</summary>
internal static class RandomRigs
{
    public const int Count = 100_000;

    public static TowCase Next(SeededRandom random) => new()
    {
        DepthM = Log(random, 0.3, 100),
        LineOutM = Log(random, 0.3, 400),
        SpeedMps = random.NextInt(10) == 0 ? 0 : Log(random, 1e-4, 3),
        TipHeightM = random.NextInt(3) == 0 ? 0 : random.NextDouble(0, 5),
        Motion = random.NextInt(2) == 0 ? TowMotion.BehindBoat : TowMotion.WorkedIn,
        Current = random.NextInt(3) switch
        {
            0 => null,
            1 => CurrentProfile.Uniform(random.NextDouble(-1, 1), random.NextDouble(-1, 1)),
            _ => CurrentProfile.Of([0, 2, 10, 40],
                [random.NextDouble(-0.3, 0.3), random.NextDouble(-0.3, 0.3), random.NextDouble(-1, 1), random.NextDouble(-1, 1)],
                [random.NextDouble(-0.3, 0.3), random.NextDouble(-0.3, 0.3), random.NextDouble(-1, 1), random.NextDouble(-1, 1)]),
        },
        SlopeRad = random.NextInt(2) == 0 ? 0 : random.NextDouble(-0.53, 0.53),
        JigWeightN = Log(random, 0.002, 20),
        JigDragAreaM2 = random.NextInt(10) == 0 ? 0 : Log(random, 1e-6, 0.01),
        FrictionCoefficient = random.NextInt(10) == 0 ? 0 : random.NextDouble(0, 2),
        LineDiameterM = Log(random, 5e-5, 2e-3),
        LineDensityKgPerM3 = random.NextInt(5) == 0 ? 1000 : random.NextDouble(500, 8000),
        LineModulusPa = random.NextInt(4) == 0 ? 0 : Log(random, 1e8, 3e11),
        LineDragFactor = random.NextDouble(0.1, 5),
        WaterDensityKgPerM3 = random.NextInt(5) == 0 ? 1000 : random.NextDouble(900, 1100),
        ViscosityM2PerS = random.NextDouble(2e-7, 1e-5),
    };

    public static bool IsSound(in TowCase tow, in TowResult r) =>
        double.IsFinite(r.TensionN) && r.TensionN >= 0 && double.IsFinite(r.TrailM) && double.IsFinite(r.SideM)
        && double.IsFinite(r.LineAngleRad) && double.IsFinite(r.JigTensionN)
        && r.WeightOnBottomShare is >= 0 and <= 1.0000001
        && r.HeightOverBottomM >= 0 && r.HeightOverBottomM <= tow.DepthM + tow.TipHeightM + 1e-6
        && r.LineOnBottomM >= 0 && r.LineOnBottomM <= tow.LineOutM + 1e-6
        && (r.Contact == JigContact.Lifted) == (r.HeightOverBottomM > 0 || r.BottomPushN == 0);

    private static double Log(SeededRandom random, double low, double high) => low * Math.Pow(high / low, random.NextDouble());
}
