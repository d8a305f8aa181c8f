using SecondShore.Answers.Lake;
using SecondShore.Engine.Motion;
using SecondShore.Engine.Season;

namespace SecondShore.Answers.Wind;

/// <summary>What pushes the water of a lake: the gap-free weather that holds an instant, and the winds by place beside it.</summary>
/// <param name="Weather">The lake's weather.</param>
/// <param name="Options">Settings with the winds by place and the doubt that goes with them.</param>
internal sealed record WindForces(WeatherSeries Weather, WindFieldOptions Options)
{
    /// <summary>Reads them from a lake's files.</summary>
    /// <param name="lake">The lake.</param>
    /// <param name="at">The instant.</param>
    /// <param name="options">Settings.</param>
    /// <param name="assumed">Receives what had to be assumed.</param>
    /// <exception cref="CouldNotComputeException">No weather of that time.</exception>
    public static WindForces Of(PreparedLake lake, DateTimeOffset at, WindFieldOptions options, out List<Finding> assumed)
    {
        if (lake.Folder.Weather is not { Count: > 0 } table)
            throw new CouldNotComputeException(AnswerFindings.NoWeather.Of(lake.Folder.Files.Name));
        assumed = [];
        return new WindForces(Holding(WeatherPreparation.Prepare(WeatherInput.ToRaw(table), lake.Site).Segments, at), With(lake, at, options, assumed));
    }

    /// <summary>The stretch of weather that holds an instant.</summary>
    /// <exception cref="CouldNotComputeException">None does.</exception>
    public static WeatherSeries Holding(IReadOnlyList<WeatherSeries> segments, DateTimeOffset at)
    {
        foreach (WeatherSeries segment in segments)
            if (segment.StartUtc <= at && at <= segment.EndUtc) return segment;
        throw new CouldNotComputeException(segments.Count == 0 ? AnswerFindings.WeatherEmpty.Of(at) : AnswerFindings.WeatherElsewhere.Of(at, segments[0].StartUtc, segments[^1].EndUtc));
    }

    /// <summary>Settings with the lake's winds by place, or with the wider doubt of one wind over several arms.</summary>
    public static WindFieldOptions With(PreparedLake lake, DateTimeOffset at, WindFieldOptions options, ICollection<Finding> assumed)
    {
        IReadOnlyList<StationWind> stations = WindStations.Of(lake.Folder, lake.RequireGrid().Projection, assumed);
        options = options with { Fetch = options.Fetch ?? lake.FetchAt(at), Stations = stations };
        // One place alone is one wind too, wherever it stands.
        if (stations.Count > 1 || lake.Arms is not { Arms.Count: > 1 } arms) return options;
        assumed.Add(AnswerFindings.OneWind.Of(arms.Arms.Count));
        return options with { ErrorShare = MotionError.ShareOfRmsOneWind };
    }

    /// <summary>The water of some hours.</summary>
    public WindField Field(PreparedLake lake, IReadOnlyList<TwoLayers> layers, DateTimeOffset from, int hours, CancellationToken cancel) =>
        WindField.Compute(lake.GridAt(from), layers, Weather, from, hours, Options, null, cancel);
}
