using System.Diagnostics;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Season;

namespace SecondShore.Bench;

/// <summary>Time of one column-year: hourly steps, 100 layers.</summary>
internal sealed class SeasonColumn : IFigure
{
    public string Name => "season-column";

    public string Claim => "one column-year of hourly steps on 100 layers; nothing is allocated in the step";

    public IEnumerable<Measured> Measure()
    {
        LakeSite site = new() { Name = "Bench", Position = new GeoPoint(45, -93), TimeZoneId = "UTC", ElevationM = 300, SecchiM = 3 };
        Hypsography basin = Hypsography.FromShape(5e6, 50);
        WeatherSeries weather = ClimateWeather.Make(site, new DateTimeOffset(2024, 1, 1, 0, 0, 0, TimeSpan.Zero), 8760, new(1));
        ColumnForcing forcing = new(weather, site.Position, site.ElevationM);
        ColumnGrid grid = new(basin, 0.5);
        double best = double.MaxValue;
        long allocated = 0;
        for (int round = 0; round < 9; round++)
        {
            LakeColumn column = new(grid, LakePriors.For(site, basin, WeatherSource.Grid).Centre);
            long before = GC.GetAllocatedBytesForCurrentThread(), start = Stopwatch.GetTimestamp();
            for (int k = 0; k < forcing.Count; k++) column.Step(forcing, k);
            best = Math.Min(best, Stopwatch.GetElapsedTime(start).TotalMilliseconds);
            allocated = GC.GetAllocatedBytesForCurrentThread() - before;
        }

        yield return new Measured("season-column-year", best, "ms", "best of 9, target 15");
        yield return new Measured("season-column-layer-step", best * 1e6 / (8760.0 * grid.Count), "ns", $"{grid.Count} layers");
        yield return new Measured("season-column-allocated", allocated, "bytes", "8760 steps, must be 0");
    }
}
