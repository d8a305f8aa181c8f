using SecondShore.Answers.Lake;
using SecondShore.Engine.Basin;
using SecondShore.Engine.Motion;
using SecondShore.Engine.Season;

namespace SecondShore.Answers.Wind;

/// <summary>What will the wind do to the thermocline, the currents and the waves, by place and hour?</summary>
public static class WindAnswer
{
    /// <summary>Computes the field of a prepared lake from its own weather.</summary>
    /// <param name="lake">The lake, with a survey.</param>
    /// <param name="outlook">Its outlook for about that time.</param>
    /// <param name="question">Hours and settings.</param>
    /// <param name="progress">Share done, 0 to 1.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="CouldNotComputeException">No survey, no weather, or weather of another time.</exception>
    public static WindResult Compute(PreparedLake lake, Outlook outlook, WindQuestion question,
        IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        WindRun run = Prepare(lake, outlook, question, out WindQuestion asked, out List<Finding> assumed, cancel);
        return new WindResult(run.Compute(progress, cancel), outlook, asked, assumed);
    }

    /// <summary>How much deeper than at rest the wind holds the thermocline at one hour, for a belt and spots of that hour.</summary>
    /// <param name="lake">The lake, with a survey.</param>
    /// <param name="outlook">Its outlook; its instant is the hour.</param>
    /// <param name="progress">Share done, 0 to 1.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns>[Ny*Nx] of the lake's grid at that hour, m; null where there are no layers or no wind is known: the thermocline is then taken level.</returns>
    public static float[]? OffsetsAt(PreparedLake lake, Outlook outlook, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(lake);
        ArgumentNullException.ThrowIfNull(outlook);
        if (outlook.Lake.Layers.Count == 0) return null;
        try
        {
            WindResult result = Compute(lake, outlook, new WindQuestion { At = outlook.At, Hours = 0, Field = new() { Members = 3 } }, progress, cancel);
            return result.Field.IsLayered ? result.Field.OffsetsM(lake.GridAt(outlook.At), 0) : null;
        }
        catch (CouldNotComputeException)
        {
            return null;
        }
    }

    /// <summary>Prepares the same work for a caller that takes it step by step.</summary>
    /// <param name="lake">The lake, with a survey.</param>
    /// <param name="outlook">Its outlook.</param>
    /// <param name="question">Hours and settings.</param>
    /// <param name="asked">The question with its hours cut to the weather at hand.</param>
    /// <param name="assumed">What had to be assumed.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="CouldNotComputeException">No survey, no weather, or weather of another time.</exception>
    public static WindRun Prepare(PreparedLake lake, Outlook outlook, WindQuestion question, out WindQuestion asked,
        out List<Finding> assumed, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(lake);
        ArgumentNullException.ThrowIfNull(outlook);
        ArgumentNullException.ThrowIfNull(question);
        if (lake.Folder.Weather is not { Count: > 0 } table)
            throw new CouldNotComputeException(AnswerFindings.NoWeather.Of(lake.Folder.Files.Name));
        List<Finding> placed = [];
        WindQuestion here = question with { Field = WindForces.With(lake, question.At, question.Field, placed) };
        WindRun run = Prepare(lake.GridAt(question.At), outlook, WeatherPreparation.Prepare(WeatherInput.ToRaw(table), lake.Site).Segments,
            here, out asked, out assumed, cancel);
        assumed.AddRange(placed);
        return run;
    }

    /// <summary>Prepares the work from its parts.</summary>
    /// <param name="grid">Depths at the level of the day.</param>
    /// <param name="outlook">The outlook.</param>
    /// <param name="segments">Gap-free stretches of weather.</param>
    /// <param name="question">Hours and settings.</param>
    /// <param name="asked">The question with its hours cut to the weather at hand.</param>
    /// <param name="assumed">What had to be assumed.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="CouldNotComputeException">No weather of that time.</exception>
    public static WindRun Prepare(DepthGrid grid, Outlook outlook, IReadOnlyList<WeatherSeries> segments, WindQuestion question,
        out WindQuestion asked, out List<Finding> assumed, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(segments);
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(outlook);
        WeatherSeries weather = WindForces.Holding(segments, question.At);
        assumed = [.. outlook.Assumed];
        int hours = Math.Min(question.Hours, Math.Max(0, (int)Math.Floor((weather.EndUtc - question.At).TotalHours)));
        if (hours < question.Hours)
            assumed.Add(AnswerFindings.WeatherEndsEarly.Of(weather.EndUtc.ToOffset(question.At.Offset), hours, question.Hours));
        double spinUpDays = Math.Max(0, (question.At - weather.StartUtc).TotalDays);
        if (spinUpDays < 1)
            assumed.Add(AnswerFindings.StillAtFirst.Of());
        asked = question with { Hours = hours };
        WindFieldOptions field = question.Field with { Ahead = Ahead(outlook, question.At, hours) };
        WindRun run = new(grid, outlook.Lake.Layers, weather, question.At, hours, field, cancel);
        return run;
    }

    // The hours of the layers are counted from the outlook's instant, those of the water from the first hour asked for.
    private static IReadOnlyList<TwoLayers?>[] Ahead(Outlook outlook, DateTimeOffset from, int hours)
    {
        IReadOnlyList<LayerHour> ahead = outlook.Lake.Ahead;
        int first = (int)Math.Round((from - outlook.At).TotalHours);
        return ahead.Count == 0 ? [] : [.. Enumerable.Range(first + 1, hours).Select(h => ahead[Math.Clamp(h, 0, ahead.Count - 1)].Layers)];
    }
}
