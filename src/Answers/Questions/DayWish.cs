using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Units;
using SecondShore.Engine.Day;

namespace SecondShore.Answers.Questions;

/// <summary>What the angler asks of a day; everything left out takes the usual.</summary>
public sealed record DayWish
{
    /// <summary>The day, on the lake's calendar.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>Name of the ramp; null takes the first that reaches the water.</summary>
    public string? Ramp { get; init; }

    /// <summary>Local time from which the boat may leave; null takes sunrise.</summary>
    public TimeOnly? Launch { get; init; }

    /// <summary>Local time to be back by; null takes three in the afternoon, or dark if that is earlier.</summary>
    public TimeOnly? HomeBy { get; init; }

    /// <summary>Most spots to weigh.</summary>
    public int MaxSpots { get; init; } = 16;

    /// <summary>Speed of dragging over ground.</summary>
    public Speed DragSpeed { get; init; } = Speed.FromMilesPerHour(0.6);

    /// <summary>The boat.</summary>
    public Boat Boat { get; init; } = new();

    /// <summary>Ids of spots that must be stops, besides those the lake's own marks name.</summary>
    public IReadOnlyList<string> Must { get; init; } = [];

    /// <summary>Ids of spots to leave out, besides those the lake's own marks name.</summary>
    public IReadOnlyList<string> Never { get; init; } = [];

    /// <summary>Where the boat is, when the day is planned anew on the water; null starts from the ramp.</summary>
    public BoatNow? Here { get; init; }

    /// <summary>Breaks, at most three.</summary>
    public IReadOnlyList<BreakWish> Breaks { get; init; } = [];

    /// <summary>Time kept in hand before dark, check-in and the wind limit.</summary>
    public TimeSpan Reserve { get; init; } = TimeSpan.FromMinutes(20);

    /// <summary>Mean wind at which to be off the water, m/s; null takes the small-craft wind of the cautions.</summary>
    public double? WindLimitMps { get; init; }

    /// <summary>What practice has covered, when this is a day of practice; null plans for bites.</summary>
    public PracticeSoFar? Practice { get; init; }

    /// <summary>The instant of the lake's outlook as it stands, on whose course the day lies; null runs the outlook up to the day's launch.</summary>
    public DateTimeOffset? StandsAt { get; init; }

    /// <summary>Members and seed of the outlook.</summary>
    public EnsembleOptions Ensemble { get; init; } = new();
}

/// <summary>The boat on the water, from which the rest of the day is planned.</summary>
/// <param name="At">The moment.</param>
/// <param name="Place">Where.</param>
/// <param name="FishedH">Hours fished today by spot id.</param>
public sealed record BoatNow(DateTimeOffset At, GeoPoint Place, IReadOnlyDictionary<string, double> FishedH);

/// <summary>A break, taken wherever the boat is.</summary>
/// <param name="From">Local time before which it is not begun.</param>
/// <param name="To">Local time after which it is not begun.</param>
/// <param name="Minutes">How long.</param>
public sealed record BreakWish(TimeOnly From, TimeOnly To, int Minutes);
