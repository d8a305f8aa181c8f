using SecondShore.Answers.Lake;
using SecondShore.Answers.Wind;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Motion;
using SecondShore.Engine.Season;
using SecondShore.Formats.Lake;

namespace SecondShore.Answers.Scoring.Chains;

/// <summary>When and how chains are compared.</summary>
public sealed record WindScoreQuestion
{
    /// <summary>Start; null takes the first profile.</summary>
    public DateTimeOffset? From { get; init; }

    /// <summary>End; null takes the last profile.</summary>
    public DateTimeOffset? To { get; init; }

    /// <summary>Length of a window, days: layers at rest and the trend are each window's own.</summary>
    public double WindowDays { get; init; } = 7.5;

    /// <summary>Place of a chain that lake.json does not name.</summary>
    public GeoPoint? Place { get; init; }

    /// <summary>How the water is computed.</summary>
    public WindFieldOptions Field { get; init; } = new();
}

/// <summary>
/// Runs the interface model beside measured chains. The layers at rest are the chain's own mean profile of the window, so that what
/// is judged is what the wind does to them; displacements are compared without their straight-line trend.
/// </summary>
public static class WindScorer
{
    private const double ShortestH = 5, LongestH = 60;

    // With less of a window seen, a trend would be made of its gap.
    private const double LeastSeenShare = 0.7;

    /// <summary>Scores the chains of a lake.</summary>
    /// <param name="lake">The lake, with a survey and wind.</param>
    /// <param name="chains">Its chains.</param>
    /// <param name="question">When and how.</param>
    /// <param name="units">Units of the words.</param>
    /// <param name="progress">Share done, 0 to 1.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="CouldNotComputeException">No survey, no wind of that time, or a chain without a place.</exception>
    public static WindScore Run(PreparedLake lake, IReadOnlyList<MeasuredChain> chains, WindScoreQuestion question, UnitSystem units,
        IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(lake);
        ArgumentNullException.ThrowIfNull(chains);
        ArgumentNullException.ThrowIfNull(question);
        LocalProjection plane = lake.RequireGrid().Projection;
        Moored[] moored = [.. chains.Select(chain => new Moored(chain, plane.ToPlane(PlaceOf(lake, chain, question))))];
        DateTimeOffset from = Hour(question.From ?? chains.Min(c => c.Casts[0].At)), to = question.To ?? chains.Max(c => c.Casts[^1].At);
        int count = Math.Max(1, (int)Math.Round((to - from).TotalDays / question.WindowDays));
        int hours = (int)Math.Floor((to - from).TotalHours / count);
        if (hours < 24) throw new CouldNotComputeException(AnswerFindings.ChainTooShort.Of(from, to));
        WindForces forces = WindForces.Of(lake, from, question.Field, out List<Finding> assumed);
        List<WindScoreWindow> windows = [];
        for (int w = 0; w < count; w++)
        {
            windows.Add(Window(lake, moored, forces, from.AddHours((double)w * hours), hours, cancel));
            progress?.Report((w + 1.0) / count);
        }

        return new WindScore
        {
            Lake = lake.Site.Name,
            Winds = Math.Max(1, forces.Options.Stations.Count),
            Windows = windows,
            Summary = WindScoreSummary.Of(windows),
            Assumed = assumed.Say(units),
        };
    }

    private static WindScoreWindow Window(PreparedLake lake, Moored[] chains, WindForces forces, DateTimeOffset from, int hours, CancellationToken cancel)
    {
        DateTimeOffset to = from.AddHours(hours);
        ChainLayers?[] found = [.. chains.Select(c => LayersOf(c.Chain, from, to, lake))];
        TwoLayers[] layers = [.. found.OfType<ChainLayers>().Select(f => f.Layers)];
        if (layers.Length == 0) return new WindScoreWindow(from, to, null, [.. chains.Select(c => new WindScoreSite(c.Chain.Site, null, null, null, null, "no thermocline stands in the mean profile"))]);
        WindField field = forces.Field(lake, layers, from, hours, cancel);
        return new WindScoreWindow(from, to, field.PeriodS / 3600, [.. chains.Select((c, i) => Site(c, found[i], field, from, hours))]);
    }

    private static WindScoreSite Site(Moored moored, ChainLayers? layers, WindField field, DateTimeOffset from, int hours)
    {
        string site = moored.Chain.Site;
        if (layers is null) return new WindScoreSite(site, null, null, null, null, "no thermocline stands in the mean profile");
        double[] measured = CourseFilter.Bridged(ChainCourse.IsothermM(moored.Chain, from, hours, layers.IsothermC));
        int seen = measured.Count(m => !double.IsNaN(m));
        if (seen < LeastSeenShare * hours)
            return new WindScoreSite(site, layers.IsothermC, layers.Layers.UpperM, null, null, FormattableString.Invariant($"the isotherm lies within the chain in {seen} of {hours} hours only"));
        double[] computed = new double[hours], half = new double[hours];
        for (int h = 0; h < hours; h++)
        {
            Spread spread = field.OffsetM(moored.Place, from.AddHours(h))!.Spread;
            computed[h] = double.IsNaN(measured[h]) ? double.NaN : 0.5 * (spread.P10 + spread.P90);
            half[h] = 0.5 * (spread.P90 - spread.P10);
        }

        double[] tilted = CourseFilter.Detrended(computed), seenTilt = CourseFilter.Detrended(measured);
        return new WindScoreSite(site, layers.IsothermC, layers.Layers.UpperM, CourseFigures.Of(tilted, seenTilt, half),
            CourseFigures.Of(CourseFilter.Band(tilted, ShortestH, LongestH), CourseFilter.Band(seenTilt, ShortestH, LongestH), null), null);
    }

    private static ChainLayers? LayersOf(MeasuredChain chain, DateTimeOffset from, DateTimeOffset to, PreparedLake lake)
    {
        (double[] depthM, double[] tempC) = ChainCourse.Mean(chain, from, to);
        return ChainLayers.Of(depthM, tempC, lake.Hypsography);
    }

    private static GeoPoint PlaceOf(PreparedLake lake, MeasuredChain chain, WindScoreQuestion question)
    {
        IReadOnlyList<Mooring> moorings = lake.Folder.Document.Moorings;
        if (moorings.FirstOrDefault(m => string.Equals(m.Name, chain.Site, StringComparison.OrdinalIgnoreCase)) is { } named) return named.Place;
        if (question.Place is { } given) return given;
        return chain.Site.Length == 0 && moorings.Count == 1 ? moorings[0].Place : throw new CouldNotComputeException(AnswerFindings.ChainWithoutPlace.Of(chain.Site));
    }

    private static DateTimeOffset Hour(DateTimeOffset at) => DateTimeOffset.FromUnixTimeSeconds((long)Math.Ceiling(at.ToUnixTimeSeconds() / 3600.0) * 3600);

    private sealed record Moored(MeasuredChain Chain, PlanePoint Place);
}
