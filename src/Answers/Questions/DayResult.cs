using SecondShore.Answers.Rig;
using SecondShore.Answers.Sheet;
using SecondShore.Engine.Basin.Spots;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Day;

namespace SecondShore.Answers.Questions;

/// <summary>A planned day with everything it rests on. Treated as immutable.</summary>
public sealed record DayResult
{
    /// <summary>The wish it answers.</summary>
    public required DayWish Wish { get; init; }

    /// <summary>Second shore, belt and spots of the day.</summary>
    public required ShoreResult Shore { get; init; }

    /// <summary>The plan.</summary>
    public required DayPlan Plan { get; init; }

    /// <summary>Spots by the ids of the plan's stops.</summary>
    public required IReadOnlyDictionary<string, Spot> Spots { get; init; }

    /// <summary>What to tie on, by id of the plan's stops.</summary>
    public required IReadOnlyDictionary<string, RigPick> Rigs { get; init; }

    /// <summary>The same day by another plan, its rigs and cautions worked out for its own stops.</summary>
    internal Func<DayPlan, DayResult>? By { get; init; }

    /// <summary>Whether the plans that differ in kind were left for later.</summary>
    public bool OthersWait => Others is not null;

    /// <summary>Finds the plans that differ in kind, where they were left for later.</summary>
    internal Func<CancellationToken, IReadOnlyList<DayAlternative>>? Others { get; init; }

    /// <summary>The ramp's name.</summary>
    public required string RampName { get; init; }

    /// <summary>The ramp's place in the plane.</summary>
    public required PlanePoint Ramp { get; init; }

    /// <summary>First light (civil).</summary>
    public required DateTimeOffset? LightAt { get; init; }

    /// <summary>Dark (end of civil twilight).</summary>
    public required DateTimeOffset? DarkAt { get; init; }

    /// <summary>Wind by hour while the boat is out; empty without weather.</summary>
    public required IReadOnlyList<SheetWind> Wind { get; init; }

    /// <summary>Hazards at the day's level.</summary>
    public required IReadOnlyList<HazardArea> Hazards { get; init; }

    /// <summary>Cautions, strongest first.</summary>
    public required IReadOnlyList<Caution> Cautions { get; init; }

    /// <summary>What had to be assumed.</summary>
    public required IReadOnlyList<Finding> Assumed { get; init; }

    /// <summary>What was asked and could not be met, in sentences of the plan's own language.</summary>
    public IReadOnlyList<string> Unmet { get; init; } = [];

    /// <summary>What had to be assumed, and what could not be met, in sentences.</summary>
    /// <param name="units">Whose language and units.</param>
    public IReadOnlyList<string> SayAssumed(UnitSystem units) => [.. Assumed.Say(units).Concat(Unmet).Distinct()];
}
