using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Day;

/// <summary>A day's plan. Immutable.</summary>
public sealed record DayPlan
{
    /// <summary>When the boat leaves the start.</summary>
    public required DateTimeOffset Launch { get; init; }

    /// <summary>When it is home.</summary>
    public required DateTimeOffset Home { get; init; }

    /// <summary>When it must be home.</summary>
    public required DateTimeOffset HomeBy { get; init; }

    /// <summary>Why then, in words, such as <c>because it is dark at 6:40 pm</c> without 'because'.</summary>
    public required string HomeByWhy { get; init; }

    /// <summary>The stops in order; empty when nothing can be reached.</summary>
    public required IReadOnlyList<PlannedStop> Stops { get; init; }

    /// <summary>The runs: one before each stop and one home.</summary>
    public required IReadOnlyList<PlannedLeg> Legs { get; init; }

    /// <summary>Breaks as planned.</summary>
    public required IReadOnlyList<PlannedPause> Pauses { get; init; }

    /// <summary>Bites the day may bring, with the doubt of the rates and of luck.</summary>
    public required Spread Bites { get; init; }

    /// <summary>Mean of the bites expected.</summary>
    public required double MeanBitesCount { get; init; }

    /// <summary>By how much, at most, any other plan could be better, as a share of this one's value; 0 when it is the best.</summary>
    public required double GapShare { get; init; }

    /// <summary>Length of all runs, m.</summary>
    public required double RouteLengthM { get; init; }

    /// <summary>Fuel for the runs, litres.</summary>
    public required double FuelL { get; init; }

    /// <summary>One sentence to obey, such as <c>Five stops, home by 2:40 pm.</c></summary>
    public required string Title { get; init; }

    /// <summary>Why this order, in words without 'because'.</summary>
    public required string Why { get; init; }

    /// <summary>What was asked and could not be done, in sentences.</summary>
    public required IReadOnlyList<string> Unmet { get; init; }

    /// <summary>Plans that differ in kind.</summary>
    public IReadOnlyList<DayAlternative> Alternatives { get; init; } = [];
}

/// <summary>A stop of a plan.</summary>
/// <param name="Candidate">The place.</param>
/// <param name="Arrive">When fishing begins.</param>
/// <param name="Leave">When it ends.</param>
/// <param name="BitesCount">Bites expected there.</param>
/// <param name="WaveM">Significant wave there while fishing, m.</param>
/// <param name="Why">Why there and then, in words without 'because'.</param>
public sealed record PlannedStop(StopCandidate Candidate, DateTimeOffset Arrive, DateTimeOffset Leave, double BitesCount, double WaveM, string Why);

/// <summary>A run of a plan.</summary>
/// <param name="From">Name of the place left.</param>
/// <param name="To">Name of the place entered.</param>
/// <param name="Leave">When.</param>
/// <param name="Arrive">When fishing begins there, or home is reached.</param>
/// <param name="Line">The way.</param>
/// <param name="LengthM">Its length, m.</param>
/// <param name="GreatestWaveM">Greatest significant wave on it, m.</param>
/// <param name="ByEyeM">Part at its ends too shallow or foul for a planned route, m.</param>
public sealed record PlannedLeg(string From, string To, DateTimeOffset Leave, DateTimeOffset Arrive, IReadOnlyList<PlanePoint> Line,
    double LengthM, double GreatestWaveM, double ByEyeM);

/// <summary>A break of a plan.</summary>
public sealed record PlannedPause(DateTimeOffset From, DateTimeOffset To);

/// <summary>Kinds of alternative.</summary>
public enum AlternativeKind
{
    /// <summary>Close to the ramp.</summary>
    NearRamp,

    /// <summary>Out of the waves.</summary>
    Sheltered,

    /// <summary>Places that may be far better or far worse.</summary>
    Gamble,

    /// <summary>If the lake has turned overnight.</summary>
    IfMixed,
}

/// <summary>A plan that differs in kind.</summary>
/// <param name="Kind">In what.</param>
/// <param name="Words">When to take it, in a sentence.</param>
/// <param name="Plan">The plan; its own alternatives are empty.</param>
public sealed record DayAlternative(AlternativeKind Kind, string Words, DayPlan Plan);
