using SecondShore.Engine.Core.Words;

namespace SecondShore.Engine.Day;

/// <summary>What is known of a day when its cautions are chosen. Null and empty mean not known or not the case.</summary>
public sealed record PlanFacts
{
    /// <summary>The plan.</summary>
    public required DayPlan Plan { get; init; }

    /// <summary>The boat.</summary>
    public required Boat Boat { get; init; }

    /// <summary>Temperature of the surface water, degC.</summary>
    public double? SurfaceTempC { get; init; }

    /// <summary>Hours of wind while the boat is out: time, mean and gust.</summary>
    public IReadOnlyList<WindHour> Wind { get; init; } = [];

    /// <summary>Hours with showers in the weather while the boat is out, in order.</summary>
    public IReadOnlyList<DateTimeOffset> Showers { get; init; } = [];

    /// <summary>Hours of likely fog (damp, calm air), in order.</summary>
    public IReadOnlyList<DateTimeOffset> Fog { get; init; } = [];

    /// <summary>First light (civil).</summary>
    public DateTimeOffset? LightAt { get; init; }

    /// <summary>Dark (end of civil twilight).</summary>
    public DateTimeOffset? DarkAt { get; init; }

    /// <summary>How far the surface lies below full pool, m.</summary>
    public double BelowFullPoolM { get; init; }

    /// <summary>Hazards on the lake at today's level.</summary>
    public IReadOnlyList<HazardArea> Hazards { get; init; } = [];

    /// <summary>Whether a rig of the plan is of lead.</summary>
    public bool UsesLead { get; init; }

    /// <summary>Whether fish are to be kept alive aboard (a competition day).</summary>
    public bool KeepsFishAlive { get; init; }
}

/// <summary>Wind in an hour.</summary>
/// <param name="At">Start of the hour.</param>
/// <param name="WindMps">Mean wind, m/s.</param>
/// <param name="GustMps">Gust, m/s.</param>
public readonly record struct WindHour(DateTimeOffset At, double WindMps, double GustMps);

/// <summary>Kinds of caution.</summary>
public enum CautionKind
{
    /// <summary>Wind.</summary>
    Wind,

    /// <summary>Waves on the way or at a stop.</summary>
    Waves,

    /// <summary>Lightning.</summary>
    Lightning,

    /// <summary>Cold water.</summary>
    ColdWater,

    /// <summary>Dark.</summary>
    Dark,

    /// <summary>Fog.</summary>
    Fog,

    /// <summary>Timber, stumps, shallows at today's level.</summary>
    Hazards,

    /// <summary>Fish brought up from depth.</summary>
    FishFromDepth,

    /// <summary>Fish handled in warm water.</summary>
    WarmWater,

    /// <summary>Lead tackle.</summary>
    Lead,

    /// <summary>The tool plans and does not navigate; rules above all.</summary>
    Always,
}

/// <summary>How strongly a caution speaks.</summary>
public enum CautionLevel
{
    /// <summary>To know.</summary>
    Note,

    /// <summary>Take care.</summary>
    Care,

    /// <summary>Do not.</summary>
    Stop,
}

/// <summary>A caution that bears on a plan.</summary>
/// <param name="Kind">Of what.</param>
/// <param name="Level">How strongly.</param>
/// <param name="Words">In a sentence or two.</param>
public sealed record Caution(CautionKind Kind, CautionLevel Level, string Words);

/// <summary>How to say depths, waves, winds and temperatures: the reader's units.</summary>
/// <param name="Depth">A depth or height given in m.</param>
/// <param name="Wave">A wave height given in m.</param>
/// <param name="Wind">A wind given in m/s.</param>
/// <param name="Temp">A temperature given in degC.</param>
public sealed record CautionUnits(Func<double, string> Depth, Func<double, string> Wave, Func<double, string> Wind, Func<double, string> Temp)
{
    /// <summary>The reader's language.</summary>
    public Speech Speech { get; init; } = Speech.English;
}
