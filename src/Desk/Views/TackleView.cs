using SecondShore.Formats.Lake;

namespace SecondShore.Desk.Views;

/// <summary>The tackle box, as far as it is chosen from with one tap.</summary>
/// <param name="Jigs">Jigs.</param>
/// <param name="Trailers">Trailers.</param>
public sealed record TackleView(IReadOnlyList<TackleJig> Jigs, IReadOnlyList<TackleTrailer> Trailers)
{
    /// <summary>A box with nothing in it.</summary>
    public static TackleView Empty { get; } = new([], []);

    /// <summary>The box of a lake's tackle.json.</summary>
    public static TackleView Of(TackleDocument? filed) => filed is null ? Empty : new TackleView(
        [.. filed.Jigs.Select(j => new TackleJig(j.Name, j.WeightG, j.Colour, j.Trailer))], [.. filed.Trailers.Select(t => new TackleTrailer(t.Name, t.Colour))]);
}

/// <summary>A jig.</summary>
/// <param name="Name">The user's name for it.</param>
/// <param name="WeightG">Its weight, g.</param>
/// <param name="Colour">Colour family; empty when not said.</param>
/// <param name="Trailer">The trailer it wears; empty when not said.</param>
public sealed record TackleJig(string Name, double WeightG, string Colour, string Trailer);

/// <summary>A trailer.</summary>
/// <param name="Name">The user's name for it.</param>
/// <param name="Colour">Colour family; empty when not said.</param>
public sealed record TackleTrailer(string Name, string Colour);
