using System.Text.Json.Serialization;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Desk.Views;

/// <summary>An opened lake, as far as it is known before anything is worked out. SI throughout.</summary>
public sealed record LakeView
{
    /// <summary>The lake's name.</summary>
    public required string Name { get; init; }

    /// <summary>IANA time zone.</summary>
    public required string ZoneId { get; init; }

    /// <summary>The instant that answers stand for when none is asked: the end of the measured weather, or the newest reading after it, or now.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>End of the measured weather; null without any.</summary>
    public DateTimeOffset? WeatherUntil { get; init; }

    /// <summary>End of the forecast; null without weather.</summary>
    public DateTimeOffset? ForecastUntil { get; init; }

    /// <summary>Whether the lake is made up, as the demo lake is.</summary>
    public bool IsInvented { get; init; }

    /// <summary>What the licence of the weather's source asks to be shown; null where none is named.</summary>
    public string? WeatherSource { get; init; }

    /// <summary>How many past years of weather the lake has.</summary>
    public int PastYears { get; init; }

    /// <summary>Origin of the lake's plane, degrees.</summary>
    public double OriginLatDeg { get; init; }

    /// <summary>Places whose wind is asked for with the weather, in one line; empty where one wind serves the lake.</summary>
    public string WindPlaces { get; init; } = "";

    /// <summary>Origin of the lake's plane, degrees.</summary>
    public double OriginLonDeg { get; init; }

    /// <summary>How far the surface lies below full pool, m; null when not known.</summary>
    public double? BelowFullPoolM { get; init; }

    /// <summary>Ramps by name.</summary>
    public IReadOnlyList<string> Ramps { get; init; } = [];

    /// <summary>The log that came with the files; ids may be corrected by this device's records.</summary>
    public IReadOnlyList<Entries.RecordRow> Log { get; init; } = [];

    /// <summary>What there is to tie on.</summary>
    public TackleView Tackle { get; init; } = TackleView.Empty;

    /// <summary>What was odd in the files, one sentence each.</summary>
    public IReadOnlyList<string> Problems { get; init; } = [];

    /// <summary>Greatest depth at the day's level, m; null for a lake without a surveyed bottom.</summary>
    public double? MaxDepthM { get; init; }

    /// <summary>Whether there is a surveyed bottom to draw.</summary>
    [JsonIgnore]
    public bool HasBottom => MaxDepthM is not null;
}

/// <summary>A spread's three numbers, or nothing.</summary>
public static class SpreadViews
{
    /// <summary>The spread of a distribution, or null.</summary>
    public static Spread? SpreadOrNull(this SampleDistribution? distribution) => distribution?.Spread;
}
