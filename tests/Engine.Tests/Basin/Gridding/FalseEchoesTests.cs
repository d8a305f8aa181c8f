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
    public void A_reading_that_stuck_is_dropped_whole_and_the_pings_beside_it_stay()
    {
        bool[] keep = FalseEchoes.Keep(Track([0.6, 0.6, 0.5, 0.5, 26.3, 26.3, 26.3, 26.3, 26.3, 0, 0, 0.6, 0.6, 0.6, 0.5, 0.6], 2));
        Assert.Equal([4, 5, 6, 7, 8], Enumerable.Range(0, keep.Length).Where(i => !keep[i]));
    }

    [Theory]
    [InlineData("a hole with slopes that stand", 8)]
    [InlineData("a wall on one side only", 0.5, true)]
    public void A_hole_that_a_bed_can_have_stays(string why, double stepM, bool oneSided = false)
    {
        double[] depths = [1, 1, 1.1, 1, 9, 9.5, 9.4, 9, oneSided ? 8.5 : 1, oneSided ? 8 : 1, oneSided ? 7 : 1.1, oneSided ? 6 : 1, oneSided ? 5 : 1];
        Assert.True(FalseEchoes.Keep(Track(depths, stepM)).All(k => k), why);
    }

    [Fact]
    public void A_canal_between_walls_stays() =>
        Assert.All(FalseEchoes.Keep(Track([0, 0, 4, 4.1, 4, 4.2, 4, 0, 0, 4, 4.1, 4, 0, 0], 0.8)), Assert.True);

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
