using CsCheck;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Season;
using SecondShore.TestKit;

namespace SecondShore.Engine.Tests.Season;

public class RandomLakeTests
{
    [Fact]
    public void No_lake_weather_or_start_gives_anything_but_finite_water()
    {
        Gen.Select(Gen.Double[3.5, 8.5], Gen.Double[1.5, 90], Gen.Double[-65, 65], Gen.ULong, Gen.Enum<MixingStructure>()).Hold(
            (logArea, depth, lat, seed, structure) => RandomLake.Holds(Math.Pow(10, logArea), depth, lat, seed, structure, 20), 15);
    }

    [Fact]
    public void A_cold_flood_that_belongs_in_the_thin_layers_of_a_deep_hole_leaves_them_water()
    {
        SeededRandom random = new(4194, 4242);
        double areaM2 = Math.Pow(10, random.NextDouble(3.5, 8.5)), depthM = random.NextDouble(1.5, 90), latDeg = random.NextDouble(-65, 65);
        Assert.True(RandomLake.Holds(areaM2, depthM, latDeg, 4194, MixingStructure.EddyDiffusivity, 20));
    }
}
