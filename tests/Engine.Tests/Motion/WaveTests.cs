using SecondShore.Engine.Motion;
using Xunit;

namespace SecondShore.Engine.Tests.Motion;

public class WaveTests
{
    [Fact]
    public void Check_values_of_growth_are_met()
    {
        Assert.Equal(0.483841, WaveGrowth.HeightM(10, 5000, 50), 0.003);
        Assert.Equal(2.49786, WaveGrowth.PeriodS(10, 5000, 50), 0.02);
        Assert.Equal(0.445734, WaveGrowth.HeightM(10, 5000, 3), 0.003);
        Assert.Equal(0.481372, WaveGrowth.BretschneiderHeightM(10, 5000, 50), 0.003);
        Assert.Equal(2.64591, WaveGrowth.BretschneiderPeriodS(10, 5000, 50), 0.02);
        Assert.Equal(0.355046, WaveGrowth.DeepHeightM(10, 5000), 0.003);
        Assert.Equal(1.7607, WaveGrowth.DeepPeriodS(10, 5000), 0.02);
        Assert.Equal(1.38849, WaveGrowth.GrowthTimeS(10, 5000) / 3600, 0.01);
    }

    [Fact]
    public void Check_values_of_theory_are_met()
    {
        Assert.Equal(0.892061, WaveTheory.HighestOfM(0.48, 1000), 0.003);
        Assert.Equal(9.72767, WaveTheory.LengthM(2.5, 5), 0.02);
        Assert.Equal(0.155389, WaveTheory.BedSpeedMps(0.45, 2.5, 3), 0.003);
        Assert.Equal(0.0711153, WaveTheory.StokesDriftMps(0.3, 2, 0), 0.001);
    }

    [Fact]
    public void Check_values_of_stress_are_met()
    {
        Assert.Equal(0.0675541, WindStress.StressPa(7), 3e-4);
        Assert.Equal(0.00821913, WindStress.WaterFrictionMps(7), 3e-5);
    }

    [Fact]
    public void The_wave_number_solves_its_equation_from_ripples_to_shallows()
    {
        for (double periodS = 0.3; periodS < 12; periodS *= 1.4)
        {
            for (double depthM = 0.05; depthM < 300; depthM *= 2)
            {
                double k = WaveTheory.WaveNumberPerM(periodS, depthM), frequency = 2 * Math.PI / periodS;
                Assert.Equal(1.0, 9.81 * k * Math.Tanh(k * depthM) / (frequency * frequency), 1e-10);
            }
        }
    }

    [Fact]
    public void Waves_of_a_growing_wind_reach_the_fetch_limit_near_the_growth_time()
    {
        // Two published fits, time for a fetch and fetch of a time: the second grows up to a third slower on a lake.
        double fetchM = 3000, ageS = WaveGrowth.GrowthTimeS(8, fetchM);
        Assert.InRange(WaveGrowth.FetchOfAgeM(8, ageS) / fetchM, 0.6, 1.1);
    }

    [Fact]
    public void Other_laws_lie_near_the_stated_doubt()
    {
        foreach (double wind in new[] { 5.0, 8, 12 })
        {
            foreach (double fetchM in new[] { 500.0, 2000, 8000 })
            {
                double height = WaveGrowth.HeightM(wind, fetchM, 30);
                Assert.InRange(WaveGrowth.BretschneiderHeightM(wind, fetchM, 30) / height, 0.8, 1.35);
                Assert.InRange(WaveGrowth.DeepHeightM(wind, fetchM) / height, 0.65, 1.2);
            }
        }
    }

    [Fact]
    public void Comfort_falls_with_height_steepness_and_cold_water()
    {
        BoatLimits limits = new BoatLimits().Checked();
        WaveState calm = new(0.02, 0.8, 1, 0, 2, 3, 0, false), gentle = new(0.2, 2, 6.2, 0, 6, 8, 0, false);
        Assert.Equal(Comfort.Good, limits.ComfortOf(calm, 5));
        Assert.Equal(Comfort.Good, limits.ComfortOf(gentle, 18));
        Assert.Equal(Comfort.Caution, limits.ComfortOf(gentle, 10));
        Assert.Equal(Comfort.Caution, limits.ComfortOf(gentle with { LengthM = 3 }, 18));
        Assert.Equal(Comfort.Poor, limits.ComfortOf(gentle with { HeightM = 0.6, LengthM = 20 }, 18));
        Assert.Equal(Comfort.DoNotGo, limits.ComfortOf(gentle with { HeightM = 0.75 }, 25));
        Assert.Equal(Comfort.DoNotGo, limits.ComfortOf(gentle with { WindMps = 12 }, 25));
        Assert.Throws<ArgumentException>(() => (limits with { GoodBelowM = 1 }).Checked());
    }
}
