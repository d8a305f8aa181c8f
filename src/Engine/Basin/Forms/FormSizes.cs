namespace SecondShore.Engine.Basin.Forms;

/// <summary>Sizes by which found lines and rises become forms. All are choices, made on made lakes other than those scored (`forms-f1`).</summary>
/// <remarks>Those that end in S are in units of the bed's own scale, <see cref="Bed.ScaleM"/>.</remarks>
internal static class FormSizes
{
    /// <summary>How far a channel's corridor and its banks reach beyond its half width.</summary>
    public const double CorridorS = 0.3, BanksS = 0.7;

    /// <summary>Half widths painted for a point, a bluff, a ledge and a saddle.</summary>
    public const double PointS = 0.8, BluffS = 0.5, LedgeS = 0.4, SaddleS = 0.7;

    /// <summary>Half widths that a point and a bluff keep free of weaker forms.</summary>
    public const double PointTakenS = 1.0, BluffTakenS = 0.8;

    /// <summary>What a hump and a hole keep free beyond their own radius.</summary>
    public const double HumpTakenS = 0.5, HoleTakenS = 1.1;

    /// <summary>Smallest rise that is a form, largest hump, and largest rise that is painted cell by cell.</summary>
    public const double LeastRiseS = 0.5, MostHumpS = 12, MostPaintedS = 8;

    /// <summary>A hollow is a basin with a sill when it is that much deeper than a hole must be, and of that area in squares of the scale.</summary>
    public const double BasinFactor = 1.5, BasinAreaS2 = 12;

    /// <summary>How far from a pass its sides are looked at, between rises and between hollows.</summary>
    public const double SaddleReachS = 2, SillReachS = 8;

    /// <summary>Share of the lower rise that the sides of a pass must fall (between rises) or climb (between hollows), and of the least rise.</summary>
    public const double SaddleFallShare = 0.3, SillRiseShare = 0.15, SaddleLeastShare = 0.6;

    /// <summary>Share of a reported bend's turn from which bends are looked for: rounding must not lose one.</summary>
    public const double BendSearchShare = 0.92;

    /// <summary>Share of the lake's deep water that a bluff drops when it is even odds.</summary>
    public const double BluffDropShare = 0.14;

    /// <summary>Least bank, ledge and rise in any lake, m: a sounder's noise.</summary>
    public const double LeastBankM = 0.25, LeastLedgeM = 0.25, LeastRiseM = 0.2;

    /// <summary>A flat further off than this is not a bend's flat.</summary>
    public const double NearFlatS = 3;
}
