using SecondShore.Engine.Motion;

namespace SecondShore.Answers.Wind;

/// <summary>What to ask of the wind.</summary>
public sealed record WindQuestion
{
    /// <summary>First hour, on the lake's own clock.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>Hours after it.</summary>
    public int Hours { get; init; } = 24;

    /// <summary>Depth whose current is told, m; null takes the thermocline at rest, or mid-depth 6 m without one.</summary>
    public double? CurrentDepthM { get; init; }

    /// <summary>Most places that the document lists.</summary>
    public int MaxPlaces { get; init; } = 400;

    /// <summary>What the user's boat bears.</summary>
    public BoatLimits Boat { get; init; } = new();

    /// <summary>How the field is computed.</summary>
    public WindFieldOptions Field { get; init; } = new();
}
