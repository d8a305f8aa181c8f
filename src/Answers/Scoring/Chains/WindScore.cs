using System.Text.Json.Serialization;

namespace SecondShore.Answers.Scoring.Chains;

/// <summary>The interface model against measured chains: the document that <c>score-wind --json</c> prints.</summary>
public sealed record WindScore
{
    /// <summary>The lake's name.</summary>
    public required string Lake { get; init; }

    /// <summary>How many winds drove it: 1 for the lake's own alone.</summary>
    public required int Winds { get; init; }

    /// <summary>Each window of time.</summary>
    public required IReadOnlyList<WindScoreWindow> Windows { get; init; }

    /// <summary>Medians over all sites and windows; null without a figure.</summary>
    public required WindScoreSummary? Summary { get; init; }

    /// <summary>What had to be assumed.</summary>
    public required IReadOnlyList<string> Assumed { get; init; }
}

/// <summary>A window of time and its sites.</summary>
/// <param name="From">First hour, UTC.</param>
/// <param name="To">End, UTC.</param>
/// <param name="PeriodH">Period of the slowest rocking, h; null without layers.</param>
/// <param name="Sites">Each chain.</param>
public sealed record WindScoreWindow(DateTimeOffset From, DateTimeOffset To, double? PeriodH, IReadOnlyList<WindScoreSite> Sites);

/// <summary>One chain in one window.</summary>
/// <param name="Site">Its name; empty where the file names none.</param>
/// <param name="IsothermC">The temperature whose depth is compared, degC; null without a thermocline.</param>
/// <param name="UpperM">Thickness of the upper layer at rest, m; null without a thermocline.</param>
/// <param name="Whole">All periods.</param>
/// <param name="Band">Periods of 5 to 60 h.</param>
/// <param name="Why">Why there is no figure; null where there is one.</param>
public sealed record WindScoreSite(string Site, double? IsothermC, double? UpperM, CourseFigures? Whole,
    [property: JsonPropertyName("band_5_to_60_h")] CourseFigures? Band, string? Why);

/// <summary>Medians over sites and windows.</summary>
/// <param name="Count">Sites and windows with a figure.</param>
/// <param name="R">Correlation.</param>
/// <param name="AmplitudeRatio">Amplitude computed over measured.</param>
/// <param name="OfNone">Error over that of no tilt.</param>
/// <param name="WorstOfNone">The largest of them.</param>
/// <param name="Coverage80">Share of all hours within the 80 % interval.</param>
public sealed record WindScoreSummary(int Count, double R, double AmplitudeRatio, double OfNone, double WorstOfNone, double Coverage80)
{
    /// <summary>The summary of what was scored; null without a figure.</summary>
    internal static WindScoreSummary? Of(IEnumerable<WindScoreWindow> windows)
    {
        CourseFigures[] all = [.. windows.SelectMany(w => w.Sites).Select(s => s.Whole).OfType<CourseFigures>()];
        if (all.Length == 0) return null;
        double hours = all.Sum(f => f.Hours), within = all.Sum(f => f.Hours * (f.Coverage80 ?? 0));
        return new WindScoreSummary(all.Length, Median(all, f => f.R), Median(all, f => f.AmplitudeRatio), Median(all, f => f.OfNone), all.Max(f => f.OfNone), within / hours);
    }

    private static double Median(CourseFigures[] all, Func<CourseFigures, double> of)
    {
        double[] sorted = [.. all.Select(of).Order()];
        return 0.5 * (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]);
    }
}
