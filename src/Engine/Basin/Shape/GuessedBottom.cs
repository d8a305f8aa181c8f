using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Basin.Shape;

/// <summary>A bottom guessed from an outline, or why there is none. Immutable.</summary>
public sealed record GuessedBottom
{
    /// <summary>Likeliest depth with its standard error by cell; null where the outline holds no water.</summary>
    public DepthGrid? Grid { get; init; }

    /// <summary>Why there is no bottom; null where there is one.</summary>
    public Finding? Refusal { get; init; }

    /// <summary>What had to be assumed, each weighed into the standard error.</summary>
    public IReadOnlyList<Finding> Assumed { get; init; } = [];

    /// <summary>Greatest depth taken, m.</summary>
    public double DeepestM { get; init; }

    /// <summary>Spread of the logarithm of the greatest depth; 0 where it was told.</summary>
    public double DeepestLogSd { get; init; }

    /// <summary>Where the dam was taken to stand; null for a natural basin.</summary>
    public PlanePoint? Dam { get; init; }

    internal GuessModel? Model { get; init; }

    /// <summary>Begins to draw the guess toward soundings.</summary>
    /// <exception cref="InvalidOperationException">There is no bottom.</exception>
    public SoundedBottom Sound() => new(this);
}
