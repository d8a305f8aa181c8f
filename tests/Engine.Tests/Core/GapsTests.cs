using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Tests.Core;

public class GapsTests
{
    [Fact]
    public void Short_gaps_between_known_values_become_a_straight_line_and_others_stay()
    {
        double[] values = [double.NaN, 1, double.NaN, double.NaN, 4, double.NaN, double.NaN, double.NaN, 8, double.NaN];
        Gaps.Bridge(values, 2);
        Assert.Equal([double.NaN, 1, 2, 3, 4, double.NaN, double.NaN, double.NaN, 8, double.NaN], values);
    }
}
