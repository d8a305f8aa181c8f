using SecondShore.Answers.Lake;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Season;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Scoring;

/// <summary>Makes a scored lake of a lake folder.</summary>
public static class ScoredLakeReader
{
    /// <summary>The lake of a folder.</summary>
    /// <param name="folder">A folder with a position, a shape, weather and profiles.</param>
    /// <exception cref="CouldNotComputeException">One of these is missing; the message says which.</exception>
    public static ScoredLake From(LakeFolder folder)
    {
        ArgumentNullException.ThrowIfNull(folder);
        string name = Path.GetFileName(Path.TrimEndingDirectorySeparator(folder.Files.Name));
        if (!folder.HasSite) throw new CouldNotComputeException($"{name} gives no position, so it cannot be scored: put latitude_deg and longitude_deg into lake.json.");
        if (folder.Weather is not { Count: > 0 } table) throw new CouldNotComputeException($"{name} has no weather.csv with rows, so there is nothing to run the lake on.");
        if (folder.Profiles.Count == 0) throw new CouldNotComputeException($"{name} has no profiles.csv with rows, so there is nothing to score against.");
        Hypsography basin = folder.Hypsography ?? FromShape(folder, name);
        return new ScoredLake
        {
            Name = name,
            Site = folder.Site,
            Basin = basin,
            Weather = WeatherPreparation.Prepare(WeatherInput.ToRaw(table), folder.Site),
            Profiles = [.. folder.Profiles.OrderBy(p => p.At)],
            Overturns = [.. folder.Overturns.Where(o => o.LastStratified is not null).Select(o => new MeasuredOverturn(o.Year, o.LastStratified!.Value, o.FirstMixed))],
            Levels = folder.Levels,
            Flows = folder.Flows,
            Secchi = [.. folder.Secchi.Concat(folder.Readings.Where(r => r.Kind == ReadingKind.Secchi)).Where(r => r.Value > 0).OrderBy(r => r.At).Select(r => (r.At, r.Value))],
        };
    }

    private static Hypsography FromShape(LakeFolder folder, string name) =>
        folder.Site.SurfaceAreaM2 is { } area && folder.Site.MaxDepthM is { } depth
            ? Hypsography.FromShape(area, depth, folder.Document.MeanDepthM)
            : throw new CouldNotComputeException($"{name} has neither hypsography.csv nor surface_area_m2 with max_depth_m, so its shape is not known.");
}
