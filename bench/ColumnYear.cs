using System.Diagnostics;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Season;

namespace SecondShore.Bench;

/// <summary>A year of hourly steps on a hundred layers: the same natively and in a browser.</summary>
internal sealed class ColumnYear
{
    private readonly ColumnForcing _forcing;
    private readonly ColumnGrid _grid;
    private readonly ColumnParameters _parameters;

    public ColumnYear()
    {
        LakeSite site = new() { Name = "Bench", Position = new GeoPoint(45, -93), TimeZoneId = "UTC", ElevationM = 300, SecchiM = 3 };
        Hypsography basin = Hypsography.FromShape(5e6, 50);
        WeatherSeries weather = ClimateWeather.Make(site, new DateTimeOffset(2024, 1, 1, 0, 0, 0, TimeSpan.Zero), 8760, new(1));
        _forcing = new ColumnForcing(weather, site.Position, site.ElevationM);
        _grid = new ColumnGrid(basin, 0.5);
        _parameters = LakePriors.For(site, basin, WeatherSource.Grid).Centre;
    }

    /// <summary>Layers of the column.</summary>
    public int Layers => _grid.Count;

    /// <summary>Runs the year.</summary>
    public (double Ms, long AllocatedBytes) Run()
    {
        LakeColumn column = new(_grid, _parameters);
        long before = GC.GetAllocatedBytesForCurrentThread(), start = Stopwatch.GetTimestamp();
        for (int k = 0; k < _forcing.Count; k++) column.Step(_forcing, k);
        return (Stopwatch.GetElapsedTime(start).TotalMilliseconds, GC.GetAllocatedBytesForCurrentThread() - before);
    }
}
