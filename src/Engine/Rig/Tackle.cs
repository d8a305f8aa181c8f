namespace SecondShore.Engine.Rig;

/// <summary>What the user owns. Any list may be empty: the trade's standard sizes then stand in.</summary>
/// <param name="Jigs">Jigs.</param>
/// <param name="Lines">Lines.</param>
/// <param name="Trailers">Trailers.</param>
/// <param name="Rods">Rods.</param>
public sealed record Tackle(IReadOnlyList<Jig> Jigs, IReadOnlyList<FishingLine> Lines, IReadOnlyList<Trailer> Trailers, IReadOnlyList<Rod> Rods)
{
    /// <summary>Nothing owned.</summary>
    public static Tackle None { get; } = new([], [], [], []);
}
