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

    /// <summary>Members and seed of the outlook.</summary>
    public EnsembleOptions Ensemble { get; init; } = new();
}
