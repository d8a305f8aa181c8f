using SecondShore.Engine.Core;

namespace SecondShore.Engine.Tests.Core;

public class SideBySideTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(31)]
    [InlineData(1000)]
    public void Bands_take_every_row_once(int rows)
    {
        int[] taken = new int[rows];
        SideBySide.Bands(rows, () => 0, (_, first, end) =>
        {
            for (int row = first; row < end; row++) taken[row]++;
        }, CancellationToken.None);
        Assert.All(taken, t => Assert.Equal(1, t));
    }

    [Fact]
    public void Stopped_work_says_so()
    {
        CancellationToken stopped = new(true);
        Assert.Throws<OperationCanceledException>(() => SideBySide.Bands(1000, () => 0, (_, _, _) => { }, stopped));
        Assert.Throws<OperationCanceledException>(() => SideBySide.Both(() => { }, () => { }, stopped));
    }

    [Fact]
    public void Both_pieces_are_run()
    {
        int one = 0, two = 0;
        SideBySide.Both(() => one++, () => two++, CancellationToken.None);
        Assert.Equal((1, 1), (one, two));
    }
}
