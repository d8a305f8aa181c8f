using CsCheck;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Basin.Shore;
using SecondShore.Engine.Core.Numerics;
using SecondShore.TestKit;

namespace SecondShore.Engine.Tests.Basin.Shore;

public class BeltTests
{
    private static readonly DepthGrid Slope = LakeShapes.FromFormula(200, 3, 5, (x, _) => (x + 500) / 25);

    [Fact]
    public void Chance_is_the_thermoclines_law_widened_by_the_doubt_about_the_bottom()
    {
        float[] sdM = new float[Slope.Frame.Count];
        for (int i = 0; i < sdM.Length; i++) sdM[i] = (i % 4) * 0.5f;
        DepthGrid grid = new(Slope.Projection, Slope.Frame, Slope.DepthM, sdM);
        Belt belt = Belt.Compute(grid, SampleDistribution.Normal(18, 1.2, 400), null, 1.5);
        for (int i = 0; i < sdM.Length; i++)
        {
            double sd = Math.Sqrt((1.2 * 1.2) + (sdM[i] * sdM[i])), d = grid.DepthM[i];
            double exact = NormalLaw.ShareBelow((d + 1.5 - 18) / sd) - NormalLaw.ShareBelow((d - 1.5 - 18) / sd);
            Assert.Equal(exact, belt.Chance[i], 0.01);
        }
    }

    [Fact]
    public void A_sure_thermocline_over_a_sure_bottom_gives_a_sharp_belt()
    {
        DepthGrid grid = new(Slope.Projection, Slope.Frame, Slope.DepthM, new float[Slope.Frame.Count]);
        Belt belt = Belt.Compute(grid, SampleDistribution.Of([10.0]), null, 2);
        for (int i = 0; i < grid.DepthM.Length; i++)
        {
            double off = Math.Abs(grid.DepthM[i] - 10);
            if (Math.Abs(off - 2) > 0.05) Assert.Equal(off < 2 ? 1f : 0f, belt.Chance[i], 1e-6f);
        }

        Assert.Equal(4 * 25 * 15, belt.ExpectedAreaM2, 100.0);
    }

    [Fact]
    public void Chance_lies_between_0_and_1_and_grows_with_reach() =>
        Gen.Select(Gen.Double[1, 35].Array[1, 30], Gen.Double[0.2, 3], Gen.Double[0, 3]).Hold((samples, reachM, moreM) =>
        {
            SampleDistribution t = SampleDistribution.Of(samples);
            Belt narrow = Belt.Compute(Slope, t, null, reachM), wide = Belt.Compute(Slope, t, null, reachM + moreM);
            for (int i = 0; i < narrow.Chance.Length; i++)
            {
                Assert.InRange(narrow.Chance[i], 0f, 1f);
                Assert.True(wide.Chance[i] >= narrow.Chance[i] - 0.03f, $"{wide.Chance[i]} under {narrow.Chance[i]}");
            }
        }, 60);

    [Fact]
    public void A_deeper_thermocline_moves_the_belt_by_as_much()
    {
        float[] offset = new float[Slope.Frame.Count];
        Array.Fill(offset, 3f);
        Belt moved = Belt.Compute(Slope, SampleDistribution.Normal(12, 1), offset, 1), same = Belt.Compute(Slope, SampleDistribution.Normal(15, 1), null, 1);
        for (int i = 0; i < offset.Length; i++) Assert.Equal(same.Chance[i], moved.Chance[i], 0.005f);
    }

    [Fact]
    public void Bands_and_the_chance_of_a_thermocline_are_told()
    {
        Belt belt = Belt.Compute(Slope, SampleDistribution.Normal(12, 1, 999), null, 1, 0.5);
        Assert.Equal([0.1, 0.2, 0.35], belt.Bands.Select(b => b.LowShare));
        Assert.Equal(12 - 1.2816, belt.Bands[0].UpperM, 0.02);
        Assert.Equal(12 + 1.2816, belt.Bands[0].LowerM, 0.02);
        Assert.True(belt.Chance.Max() <= 0.5f);
        Assert.Equal(0, belt.AreaAboveM2(0.51));
    }
}
