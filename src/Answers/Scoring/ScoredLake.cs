using SecondShore.Engine.Basin;
using SecondShore.Engine.Season;

namespace SecondShore.Answers.Scoring;

/// <summary>A measured lake, ready to be scored on.</summary>
public sealed record ScoredLake
{
    /// <summary>The lake's folder name.</summary>
    public required string Name { get; init; }

    /// <summary>What is known of it.</summary>
    public required LakeSite Site { get; init; }

    /// <summary>Its shape at full pool.</summary>
    public required Hypsography Basin { get; init; }

    /// <summary>Its weather, all years.</summary>
    public required PreparedWeather Weather { get; init; }

    /// <summary>Measured profiles in time order.</summary>
    public required IReadOnlyList<WaterProfile> Profiles { get; init; }

    /// <summary>Measured dates of overturn.</summary>
    public required IReadOnlyList<MeasuredOverturn> Overturns { get; init; }

    /// <summary>Pool levels; may be empty.</summary>
    public IReadOnlyList<PoolLevel> Levels { get; init; } = [];

    /// <summary>Daily flows; may be empty.</summary>
    public IReadOnlyList<DailyFlow> Flows { get; init; } = [];

    /// <summary>Numbers that its priors are made of; null takes the learned ones. Set where the lake's region was left out of them.</summary>
    public PriorNumbers? Numbers { get; init; }

    /// <summary>Secchi depths, m; may be empty.</summary>
    public IReadOnlyList<(DateTimeOffset At, double SecchiM)> Secchi { get; init; } = [];
}

/// <summary>When a lake turned over, as its profiles tell.</summary>
/// <param name="Year">The year.</param>
/// <param name="LastStratified">Last day seen layered.</param>
/// <param name="FirstMixed">First day after which every later day was seen mixed; null when sampling ended before.</param>
public sealed record MeasuredOverturn(int Year, DateOnly LastStratified, DateOnly? FirstMixed);

/// <summary>How a lake is scored.</summary>
public enum ScoreMode
{
    /// <summary>Defaults only.</summary>
    Blind,

    /// <summary>Three readings between mid July and mid September.</summary>
    Few,

    /// <summary>Fitted on the first half of the years, scored on the second.</summary>
    Fit,

    /// <summary>Cut in autumn; weather after the cut from other years.</summary>
    Hindcast,

    /// <summary>Position, height, area and depth alone, on a made-up climate.</summary>
    Bare,

    /// <summary>The same without the depth.</summary>
    BareDepthUnknown,
}
