using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Season;

namespace SecondShore.Engine.Tests.Season;

/// <summary>One random lake, weather and start, run for some days: heat closes and nothing leaves the range of water.</summary>
internal static class RandomLake
{
    public static bool Holds(double areaM2, double depthM, double latDeg, ulong seed, MixingStructure structure, int days)
    {
        SeededRandom random = new(seed);
        LakeSite site = new() { Name = "r", Position = new GeoPoint(latDeg, random.NextDouble(-170, 170)), TimeZoneId = "UTC", ElevationM = random.NextDouble(0, 3000) };
        Hypsography basin = Hypsography.FromShape(areaM2, depthM, depthM * random.NextDouble(0.1, 0.9));
        WeatherSeries weather = ClimateWeather.Make(site, new DateTimeOffset(2024, 1, 1, 0, 0, 0, TimeSpan.Zero).AddDays(random.NextInt(365)), days * 24, random);
        for (int i = 0; i < weather.Count; i++)
        {
            weather.WindMps[i] *= random.NextDouble(0, 4);
            weather.AirTempC[i] += random.NextDouble(-15, 15);
        }

        ColumnForcing forcing = new(weather, site.Position, site.ElevationM);
        LakePriors priors = LakePriors.For(site, basin, (WeatherSource)random.NextInt(3), random.NextDouble(0.2, 8));
        ColumnGrid grid = new(basin, random.NextDouble(0.3, 2), 1);
        LakeColumn column = new(grid, priors.At(LakePriors.Draw(random)) with { Structure = structure }, random.NextDouble(0, 35));
        double[] z = [0, depthM / 3, depthM], t = [random.NextDouble(0, 35), random.NextDouble(0, 30), random.NextDouble(0, 25)];
        column.SetProfile(z, t);
        OxygenColumn oxygen = new(column, priors.DemandAt(LakePriors.Draw(random)), forcing.PressurePa);
        double start = column.HeatContentJ;
        for (int k = 0; k < forcing.Count; k++)
        {
            if (k % 24 == 0 && k > 0)
            {
                if (k % 120 == 0) column.MoveLevel(random.NextDouble(-0.9, 0.3 * depthM), random.NextDouble() < 0.5 ? null : random.NextDouble(0, depthM), random.NextDouble(1, 28), 86400);
                oxygen.StepDay(4);
            }

            column.Step(forcing, k);
            oxygen.Watch();
        }

        foreach (double temp in column.TempC[column.Top..])
            if (!(temp is >= -1e-6 and < 60)) return false;
        foreach (double mg in oxygen.OxygenMgPerL[column.Top..])
            if (!(mg is >= -1e-9 and < 30)) return false;
        return Math.Abs(column.HeatContentJ - start - column.HeatInJ) <= 1e-9 * (Math.Abs(start) + Math.Abs(column.HeatInJ) + 1);
    }
}
