using SecondShore.Engine.Basin.Gridding;

namespace SecondShore.Engine.Tests.Basin.Gridding;

public class FalseEchoesTests
{
    [Theory]
    [InlineData(0, "a lost echo")]
    [InlineData(6.1, "a second echo")]
    [InlineData(32, "noise")]
    public void A_ping_that_its_neighbours_rule_out_is_dropped(double depthM, string why)
    {
        PointCloud track = Track([3, 3.1, 3, depthM, 3.1, 3, 3.1, 3, 3.2, 3, 3.1, 3, 3, 3.2, 3.1, 3], 2);
        bool[] keep = FalseEchoes.Keep(track);
        Assert.False(keep[3], why);
        Assert.Equal(15, keep.Count(k => k));
    }

    [Fact]
    public void Two_false_echoes_with_a_good_ping_between_are_both_dropped()
    {
        bool[] keep = FalseEchoes.Keep(Track([3, 3.1, 3, 0, 3.1, 0, 3.1, 3, 3.1], 2));
        Assert.Equal([3, 5], Enumerable.Range(0, keep.Length).Where(i => !keep[i]));
    }

    [Fact]
    public void A_channel_that_one_ping_hit_a_shore_and_a_step_stay() =>
        Assert.All(FalseEchoes.Keep(Track([3, 3.1, 3, 9, 3.1, 3, 0.3, 0, 0.2, 2, 3, 3, 12, 12, 12], 8)), Assert.True);

    [Fact]
    public void Pings_of_another_track_judge_nobody()
    {
        PointCloud cloud = Track([3, 3], 2);
        cloud.Add(100, 0, 0, PointKind.Sounding, 2);
        cloud.Add(200, 0, 3, PointKind.Sounding, 3);
        Assert.All(FalseEchoes.Keep(cloud), Assert.True);
    }

    private static PointCloud Track(double[] depthsM, double stepM)
    {
        PointCloud cloud = new();
        for (int i = 0; i < depthsM.Length; i++) cloud.Add(i * stepM, 0, depthsM[i], PointKind.Sounding, 1);
        return cloud;
    }
}
