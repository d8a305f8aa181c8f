using System.Text;
using SecondShore.Demo.Terrain;
using SecondShore.Demo.Weather;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Season;

namespace SecondShore.Demo.Ketterfold;

/// <summary>Ketterfold Reservoir, invented from its bottom to its weather: a whole lake folder with nothing real in it.</summary>
public static class KetterfoldDemo
{
    /// <summary>The seed of the demo as shipped.</summary>
    public static readonly ulong UsualSeed = 1907;

    /// <summary>End of what was measured: the demo's now.</summary>
    public static readonly DateTimeOffset MeasuredUntil = new(2026, 10, 6, 12, 0, 0, TimeSpan.Zero);

    /// <summary>First of the past years in <c>climate/</c>; the last is the year before the season.</summary>
    public static readonly int FirstClimateYear = 2011;

    private static readonly int Season = 2026;
    private static readonly int ForecastDays = 10;

    /// <summary>Makes the folder's files in memory. The same seed gives the same bytes.</summary>
    /// <param name="seed">Seed of the random parts: small bottom forms, weather, what was measured. The lay of the valleys is fixed.</param>
    /// <param name="progress">Share done, 0 to 1.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static KetterfoldLake Build(ulong seed, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        GeneratedLake lake = LakeGenerator.Generate(seed, KetterfoldRecipe.Recipe);
        LocalProjection plane = new(KetterfoldRecipe.Origin);
        progress?.Report(0.3);
        SortedDictionary<string, byte[]> files = new(StringComparer.Ordinal);
        KetterfoldPlaces places = new(lake, plane);
        files["survey.asc"] = SurveyText.Grid(lake, plane, seed);
        files["shoreline.geojson"] = SurveyText.Shoreline(lake, plane);
        files["truth.geojson"] = SurveyText.Truth(lake, plane);
        files["cover.csv"] = places.Cover(seed);
        progress?.Report(0.5);
        for (int year = FirstClimateYear; year < Season; year++)
        {
            cancel.ThrowIfCancellationRequested();
            files[$"climate/{year}.csv"] = WeatherText.Short(Year(seed, year, new DateTimeOffset(year + 1, 1, 1, 0, 0, 0, TimeSpan.Zero)));
            progress?.Report(0.5 + (0.03 * (year - FirstClimateYear)));
        }

        WeatherSeries weather = Year(seed, Season, MeasuredUntil.AddDays(ForecastDays));
        files["weather.csv"] = WeatherText.Full(weather);
        KetterfoldColumn column = KetterfoldColumn.Run(lake, weather, KetterfoldWater.Levels(weather), KetterfoldPlaces.OutletDepthM, null, cancel);
        KetterfoldWater water = new(lake, plane, column, seed);
        files["lake.json"] = places.LakeJson(lake, water.SecchiM);
        files["level.csv"] = KetterfoldWater.Level();
        files["readings.csv"] = water.Readings();
        files["profiles.csv"] = water.Profiles();
        files["tackle.json"] = KetterfoldTackle.Json();
        files["log.csv"] = new KetterfoldLog(lake, plane, water, seed).Csv();
        files["README.txt"] = Encoding.UTF8.GetBytes(
            "Ketterfold Reservoir is invented: its bottom, shore, weather, readings, places and log were made by a program.\n"
            + "No such lake exists, and nothing here may be used to find a way on any water.\n"
            + "truth.geojson holds every bottom form that the program placed, for scoring the finder of forms.\n");
        progress?.Report(1);
        return new KetterfoldLake(files, lake, KetterfoldRecipe.Origin);
    }

    private static WeatherSeries Year(ulong seed, int year, DateTimeOffset end)
    {
        DateTimeOffset start = new(year, 3, 1, 0, 0, 0, TimeSpan.Zero);
        return new MadeUpYear(seed, year, KetterfoldRecipe.Origin, KetterfoldRecipe.ElevationM).Hours(start, (int)(end - start).TotalHours);
    }
}

/// <summary>The demo lake: its folder and what is true of it. Immutable.</summary>
/// <param name="Files">Names relative to the folder, and bytes.</param>
/// <param name="Lake">The true bottom and forms.</param>
/// <param name="Origin">The place of the plane's (0, 0).</param>
public sealed record KetterfoldLake(IReadOnlyDictionary<string, byte[]> Files, GeneratedLake Lake, GeoPoint Origin);
