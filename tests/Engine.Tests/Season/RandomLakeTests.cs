using CsCheck;
using SecondShore.Engine.Season;

namespace SecondShore.Engine.Tests.Season;

public class RandomLakeTests
{
    [Fact]
    public void No_lake_weather_or_start_gives_anything_but_finite_water()
    {
        Gen.Select(Gen.Double[3.5, 8.5], Gen.Double[1.5, 90], Gen.Double[-65, 65], Gen.ULong, Gen.Enum<MixingStructure>()).Sample(
            (logArea, depth, lat, seed, structure) => RandomLake.Holds(Math.Pow(10, logArea), depth, lat, seed, structure, 20), iter: 15, threads: 1);
    }
}
