using CsCheck;
using SecondShore.Engine.Core.Numerics;
using SecondShore.TestKit;

namespace SecondShore.Engine.Tests.Core;

public class SampleDistributionTests
{
    [Fact]
    public void A_normal_law_keeps_its_quantiles_and_shares()
    {
        SampleDistribution law = SampleDistribution.Normal(10, 2, 2000);
        Assert.Equal(10 + (2 * 1.2815515655446004), law.Quantile(0.9), 0.01);
        Assert.Equal(0.8413447460685429, law.ShareBelow(12), 0.001);
        Assert.Equal(2, law.Sd, 0.01);
    }

    [Fact]
    public void Share_below_a_quantile_is_the_share()
    {
        Gen.Select(Gen.Double[-5, 5].Array[2, 40], Gen.Double[0.2, 0.8]).Hold((samples, share) =>
        {
            double[] distinct = [.. samples.Distinct()];
            if (distinct.Length < 2) return;
            SampleDistribution law = SampleDistribution.Of(distinct);
            double low = 0.5 / distinct.Length;
            if (share <= low || share >= 1 - low) return;
            Assert.Equal(share, law.ShareBelow(law.Quantile(share)), 1e-9);
        });
    }

    [Fact]
    public void A_sample_without_weight_does_not_count()
    {
        SampleDistribution law = SampleDistribution.Of([1, 2, 900], [1, 1, 0]);
        Assert.Equal(2, law.Count);
        Assert.Equal(1.5, law.Mean, 1e-12);
    }

    [Fact]
    public void The_normal_law_inverts_itself()
    {
        Gen.Double[0.0001, 0.9999].Hold(share =>
            Assert.Equal(share, NormalLaw.ShareBelow(NormalLaw.Quantile(share)), 1e-12));
    }
}
