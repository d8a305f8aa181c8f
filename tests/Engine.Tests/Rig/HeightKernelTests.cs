using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Rig;

namespace SecondShore.Engine.Tests.Rig;

public class HeightKernelTests
{
    [Fact]
    public void Quick_height_of_rigs_in_use_is_that_of_the_whole_integration()
    {
        SeededRandom random = new(11);
        for (int i = 0; i < 20_000; i++)
        {
            TowCase tow = InUse(random);
            double apartM = ApartM(tow, random.NextDouble());
            Assert.True(apartM < 2e-5 * (tow.DepthM + tow.LineOutM), $"rig {i}: {apartM} m apart over {tow.LineOutM} m of line");
        }
    }

    // In the bounds' corners a line may be so slack and stiff that a rounding moves it: there most must agree, not all.
    [Fact]
    public void Quick_height_of_rigs_from_the_corners_mostly_is()
    {
        SeededRandom random = new(12);
        int far = 0;
        for (int i = 0; i < 10_000; i++)
        {
            TowCase tow = RandomRigs.Next(random) with { Current = CurrentProfile.Of([0, 3, 9], [0.02, random.NextDouble(-0.2, 0.2), 0.1], [0, 0, 0]) };
            if (!(ApartM(tow, random.NextDouble()) < 2e-4 * (tow.DepthM + tow.LineOutM))) far++;
        }

        Assert.True(far < 100, $"{far} of 10,000 differ");
    }

    private static double ApartM(in TowCase tow, double share)
    {
        TowSetup setup = new(tow, TowSolver.DefaultSteps);
        LineState start = new JigForces(tow, setup).Start(share * tow.JigWeightN, 0);
        TowKernel.Shoot(setup, start, tow.LineOutM, out LineEnd end, default);
        return Math.Abs(HeightKernel.ResidualM(setup, start, tow.LineOutM) - end.Residual);
    }

    private static TowCase InUse(SeededRandom random)
    {
        double depthM = random.NextDouble(1, 30);
        return new TowCase
        {
            DepthM = depthM,
            LineOutM = depthM * random.NextDouble(1.2, 4),
            SpeedMps = random.NextDouble(0.02, 1),
            TipHeightM = random.NextDouble(0, 1.5),
            Motion = random.NextInt(2) == 0 ? TowMotion.BehindBoat : TowMotion.WorkedIn,
            Current = random.NextInt(2) == 0 ? null : CurrentProfile.Of([0, 3, 9], [0.02, random.NextDouble(-0.1, 0.1), 0.1], [0, 0, 0]),
            JigWeightN = random.NextDouble(0.03, 0.5),
            JigDragAreaM2 = random.NextDouble(1e-4, 1e-3),
            FrictionCoefficient = random.NextDouble(0.2, 0.8),
            LineDiameterM = random.NextDouble(1.5e-4, 5e-4),
            LineDensityKgPerM3 = random.NextInt(3) switch { 0 => 975, 1 => 1140, _ => 1780 },
            LineModulusPa = 2e9,
            LineDragFactor = random.NextDouble(0.5, 2),
            WaterDensityKgPerM3 = 999,
            ViscosityM2PerS = 1.1e-6,
        };
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(3)]
    [InlineData(41)]
    [InlineData(43)]
    public void Tabled_drag_is_the_law(double reynolds)
    {
        double node = Math.Sqrt(reynolds) * DragTable.PerUnit;
        int k = (int)node;
        double tabled = DragTable.Normal[k] + ((node - k) * (DragTable.Normal[k + 1] - DragTable.Normal[k]));
        Assert.Equal(1.0, tabled / (LineDrag.NormalCoefficient(reynolds) * reynolds), 5);
    }
}
