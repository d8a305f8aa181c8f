using SecondShore.Engine.Rig;
using SecondShore.TestKit;

namespace SecondShore.Engine.Tests.Rig;

/// <summary>The check values I01 to I24, worked out from the printed formulas by a program apart, held against the list in tests/data.</summary>
public class RigCheckValueTests
{
    private static readonly double Deg = 180 / Math.PI;

    private static readonly FallCase Drop = new()
    {
        DepthM = 10,
        JigWeightN = 0.125229,
        MovingMassKg = 0.014 + (0.5 * 1000 * 0.014 / 11340),
        DragAreaM2 = 3e-4,
        LineDiameterM = 0.00028,
        LineDensityKgPerM3 = 1000,
        WaterDensityKgPerM3 = 1000,
        ViscosityM2PerS = 1.3e-6,
    };

    // Id, expected, tolerance, what the engine makes of the same inputs.
    private static readonly (string Id, double Expected, double Tolerance, Func<double> Found)[] Checks =
    [
        ("I01", 0.125229, 1e-4, () => Bare(0.014).WeightInWaterN(1000)),
        ("I02", 1.5, 0.002, () => LineDrag.NormalCoefficient(100)),
        ("I03", 2.52638, 0.005, () => LineDrag.NormalCoefficient(10)),
        ("I04", 0.0335196, 2e-4, () => ClosedForms.LineDragNPerM(0.00028, 0.4, 1000, 1.1e-6)),
        ("I05", 1.62213, 0.001, () => ClosedForms.ScopeRootRatio(1.5)),
        ("I06", 0.247822, 0.001, () => ClosedForms.LeastWeightN(0.0335, 12, 18)),
        ("I07", 27.7476, 0.05, () => MassOf(0.2482) * 1000),
        ("I08", 22.3418, 0.05, () => ClosedForms.LiftingAngleRad(1.5) * Deg),
        ("I09", 11.5224, 0.01, () => ClosedForms.FreeDepthM(0.25, 0.03, 0.0335, 18)),
        ("I10", 12.7714, 0.01, () => ClosedForms.FreeTrailM(0.25, 0.03, 0.0335, 18)),
        ("I11", 17.8885, 0.01, () => ClosedForms.CatenaryDepthM(0.05, 0.2, 0.1, 20)),
        ("I12", 65.5302, 0.02, () => ClosedForms.CriticalAngleRad(0.025, 0.05) * Deg),
        ("I13", 11.4836, 0.03, () => 60 - TowSolver.Solve(RigCases.Check).HeightOverBottomM),
        ("I14", 0.353641, 0.002, () => TowSolver.Solve(RigCases.Check).TensionN),
        ("I15", 0.0603042, 0.001, ClosedPush),
        // The bare sphere: the ball head's constant drag coefficient stands for the sphere's law to 3 % of the speed.
        ("I16", 1.92859, 0.06, () => FallSolver.TerminalMps(Bare(0.010).WeightInWaterN(999.7), Bare(0.010).DragAreaM2(), 999.7)),
        ("I17", 0.913706, 0.003, () => FallSolver.TerminalMps(0.125229, 3e-4, 1000)),
        ("I18", 11.0184, 0.14, () => FallSolver.Solve(Drop with { LineDiameterM = 5e-5, ViscosityM2PerS = 2e-7 }).TimeS),
        ("I19", 74.1782, 0.1, () => SwingSolver.TimeS(Drop, 12, 0.5 * Math.PI, 1.3)),
        ("I20", 0.855747, 0.001, () => Math.Cbrt(Bare(0.014).WeightInWaterN(1000) / 0.014 * 11340 / (Tungsten.WeightInWaterN(1000) / 0.014 * 17500))),
        ("I21", 1.41471, 0.01, () => new FishingLine("l", LineMaterial.Fluorocarbon, 0.0003, 50, true).StretchM(10, 20)),
        ("I22", 0.295242, 0.002, () => FishingLine.UsualDiameterM(44.5, 6.5e8) * 1000),
        ("I23", 0.018404, 2e-4, () => FallSolver.LineDragN(0.9, 10, 0.00028, 1000, 1.3e-6)),
        // Quasi-steady; from rest takes 0.07 s more.
        ("I24", 11.3912, 0.1, () => FallSolver.Solve(Drop).TimeS),
    ];

    private static Jig Tungsten => new("t", 0.014, JigMaterial.Tungsten, HeadShape.Ball, 0, Trailer.None);

    public static TheoryData<string> Ids => [.. Checks.Select(c => c.Id)];

    [Theory]
    [MemberData(nameof(Ids))]
    public void Check_value_is_met(string id)
    {
        (_, double expected, double tolerance, Func<double> found) = Checks.Single(c => c.Id == id);
        Assert.Equal(expected, found(), tolerance);
    }

    [Fact]
    public void None_of_the_list_is_left_out_and_all_are_those_of_the_list()
    {
        Assert.Equal(CheckValues.All.Keys.Where(id => id[0] == 'I').Order(), Checks.Select(c => c.Id).Order());
        foreach ((string id, double expected, _, _) in Checks) Assert.Equal(CheckValues.All[id].Expected, expected, 1e-9);
    }

    private static Jig Bare(double massKg) => new("j", massKg, JigMaterial.Lead, HeadShape.Ball, 0, Trailer.None);

    private static double MassOf(double weightN)
    {
        double low = 0, high = 1;
        for (int i = 0; i < 60; i++)
        {
            double kg = 0.5 * (low + high);
            if (Bare(kg).WeightInWaterN(1000) < weightN) low = kg; else high = kg;
        }

        return low;
    }

    // I15 by the closed form: the push at which the weightless line just spans the depth.
    private static double ClosedPush()
    {
        double low = 0, high = 0.35;
        for (int i = 0; i < 60; i++)
        {
            double n = 0.5 * (low + high);
            if (ClosedForms.FreeDepthM(0.35 - n, 0.02 + (0.5 * n), 0.0335, 18) > 12) low = n; else high = n;
        }

        return low;
    }
}
