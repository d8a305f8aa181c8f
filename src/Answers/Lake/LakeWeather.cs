using SecondShore.Engine.Season;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Lake;

/// <summary>A lake's weather made ready once: the record of its own, and past years.</summary>
/// <param name="Own">The lake's record with its gaps filled; null where it has none.</param>
/// <param name="PastYears">Gap-free stretches of the past years filed beside it.</param>
public sealed record LakeWeather(PreparedWeather? Own, IReadOnlyList<WeatherSeries> PastYears)
{
    /// <summary>The weather of a lake.</summary>
    public static LakeWeather Of(PreparedLake lake)
    {
        ArgumentNullException.ThrowIfNull(lake);
        LakeFolder folder = lake.Folder;
        PreparedWeather? own = folder.Weather is { Count: > 0 } table
            ? WeatherPreparation.Prepare(WeatherInput.ToRaw(table), lake.Site) : null;
        return new LakeWeather(own, folder.Climate.Count == 0 ? []
            : WeatherPreparation.Prepare(WeatherInput.Join(folder.Climate.Values), lake.Site).Segments);
    }
}
