namespace SecondShore.App.Trip;

/// <summary>What is tied on. Null means not said.</summary>
/// <param name="Jig">The jig's name in the tackle box.</param>
/// <param name="WeightG">Its weight, g.</param>
/// <param name="Trailer">The trailer's name.</param>
/// <param name="Colour">Colour family.</param>
/// <param name="FishingLine">The line's name.</param>
public sealed record RigOn(string? Jig = null, double? WeightG = null, string? Trailer = null, string? Colour = null, string? FishingLine = null)
{
    /// <summary>Nothing is said.</summary>
    public static RigOn Nothing { get; } = new();

    /// <summary>Whether anything is said.</summary>
    public bool IsKnown => this != Nothing;
}
