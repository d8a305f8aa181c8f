namespace SecondShore.Engine.Basin.Forms;

/// <summary>What counts as a form: all in metres or plain shares, so that a person can set them. Immutable.</summary>
public sealed record FormOptions
{
    /// <summary>The usual options: the yardstick follows from the lake's area.</summary>
    public static readonly FormOptions Default = new();

    /// <summary>
    /// The yardstick: radius of the smallest rise that counts, and the unit of the other lengths, m.
    /// Null takes 25 m x (area in km2)^0.3, at least two cells and at most 80 m: 10 m on a pond, 34 m on 3 km2, 56 m on 15 km2.
    /// </summary>
    public double? YardstickM { get; init; }

    /// <summary>Least height of a hump over its key saddle, as a share of the lake's depth.</summary>
    public double HumpShare { get; init; } = 0.03;

    /// <summary>Least depth of a hole below its rim, as a share of the lake's depth.</summary>
    public double HoleShare { get; init; } = 0.05;

    /// <summary>Least height of a channel's banks, as a share of the lake's depth.</summary>
    public double BankShare { get; init; } = 0.022;

    /// <summary>Fall to both sides of a point's crest, as rise per run over twice the yardstick.</summary>
    public double PointTan { get; init; } = 0.08;

    /// <summary>Enough fall to both sides of a point's crest in a shallow lake, as a share of the lake's depth.</summary>
    public double PointShare { get; init; } = 0.075;

    /// <summary>Rise per run from which a bank is a bluff.</summary>
    public double BluffTan { get; init; } = 0.62;

    /// <summary>Rise per run up to which bottom is a flat.</summary>
    public double FlatTan { get; init; } = 0.075;

    /// <summary>Rise per run from which bottom is a slope.</summary>
    public double SlopeTan { get; init; } = 0.085;

    /// <summary>Least drop of a ledge within the yardstick, as a share of the lake's depth.</summary>
    public double LedgeShare { get; init; } = 0.035;

    /// <summary>Turn of a channel from which it is a bend, degrees; the smoothed line is asked for 8 % less.</summary>
    public double BendTurnDeg { get; init; } = 50;
}
