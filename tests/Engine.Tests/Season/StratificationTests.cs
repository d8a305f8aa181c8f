using SecondShore.Engine.Season;

namespace SecondShore.Engine.Tests.Season;

public class StratificationTests
{
    private static readonly double[] Depths = [.. Enumerable.Range(0, 21).Select(i => (double)i)];
    private static readonly double[] Temps = [.. Depths.Select(z => 8 + (14 / (1 + Math.Exp((z - 8.3) / 0.9))))];

    [Fact]
    public void Thermocline_and_edges_of_the_example_are_the_check_values()
    {
        Stratification seen = Stratification.Of(Depths, Temps);
        Assert.Equal(7.83768, seen.ThermoclineM, 0.01);
        Assert.Equal(5.01355, seen.TopM, 0.01);
        Assert.Equal(10.4501, seen.BottomM, 0.01);
    }

    [Fact]
    public void Buoyancy_between_two_layers_is_the_check_value() =>
        Assert.Equal(0.00734534, Stratification.BuoyancyPerS2(20, 10, 2), 2e-6);

    [Fact]
    public void One_temperature_has_no_thermocline()
    {
        Stratification seen = Stratification.Of(Depths, [.. Depths.Select(_ => 12.0)]);
        Assert.False(seen.HasThermocline);
        Assert.Equal(0, seen.DensityDifferenceKgPerM3);
    }

    [Fact]
    public void Afternoon_warmth_does_not_hide_the_seasonal_step()
    {
        double[] warmed = [.. Depths.Select((z, i) => Temps[i] + (4 * Math.Exp(-z / 0.5)))];
        Stratification seen = Stratification.Of(Depths, warmed);
        Assert.InRange(seen.ThermoclineM, 7.5, 8.5);
        Assert.InRange(seen.SecondaryM, 0.2, 1.6);
        Assert.Equal(seen.SecondaryM, seen.StepSeenM(1, 0), 1e-12);
        Assert.Equal(seen.ThermoclineM, seen.StepSeenM(9, 0), 1e-12);
    }
}
