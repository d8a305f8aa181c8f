using SecondShore.Answers.Lake;
using SecondShore.Engine.Season;

namespace SecondShore.Answers.Tests;

public class PoolDropTests
{
    private static readonly DateTimeOffset Day = new(2026, 9, 1, 0, 0, 0, TimeSpan.Zero);

    [Fact]
    public void Level_is_linear_between_gauges_and_held_outside()
    {
        PoolLevel[] levels = [new(Day, 1), new(Day.AddDays(10), 2)];
        Assert.Equal(1, PoolDrop.AtM(levels, Day.AddDays(-5)));
        Assert.Equal(1.3, PoolDrop.AtM(levels, Day.AddDays(3)), 1e-12);
        Assert.Equal(2, PoolDrop.AtM(levels, Day.AddDays(10)));
        Assert.Equal(2, PoolDrop.AtM(levels, Day.AddDays(50)));
        Assert.Equal(0, PoolDrop.AtM([], Day));
    }
}
