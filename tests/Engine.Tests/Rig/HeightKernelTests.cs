using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Rig;

namespace SecondShore.Engine.Tests.Rig;

public class HeightKernelTests
{
    [Fact]
    public void Quick_height_is_that_of_the_whole_integration()
    {
        SeededRandom random = new(11);
        int plane = 0;
        for (int i = 0; i < 20_000; i++)
        {
            TowCase tow = RandomRigs.Next(random);
            if (i % 2 == 0) tow = tow with { Current = CurrentProfile.Of([0, 3, 9], [0.02, random.NextDouble(-0.2, 0.2), 0.1], [0, 0, 0]) };
            TowSetup setup = new(tow, TowSolver.DefaultSteps);
            LineState start = new JigForces(tow, setup).Start(random.NextDouble() * tow.JigWeightN, 0);
            if (start.Fy == 0 && setup.Current.LargestAcrossMps == 0) plane++;
            TowKernel.Shoot(setup, start, tow.LineOutM, out LineEnd end, default);
            double quick = HeightKernel.ResidualM(setup, start, tow.LineOutM);
            Assert.True(Math.Abs(quick - end.Residual) < 2e-4 * (tow.DepthM + tow.LineOutM), $"rig {i}: {quick} m against {end.Residual} m over {tow.LineOutM} m of line");
        }

        Assert.True(plane > 10_000);
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
