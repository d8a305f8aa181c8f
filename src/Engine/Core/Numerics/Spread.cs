namespace SecondShore.Engine.Core.Numerics;

/// <summary>
/// An answer with its doubt: the 10th, 50th and 90th percentile, low to high. The unit is in the name of what holds it.
/// Default: all 0.
/// </summary>
public readonly record struct Spread(double P10, double P50, double P90)
{
    /// <summary>Whether the three stand in order and none is NaN.</summary>
    public bool IsOrdered => P10 <= P50 && P50 <= P90;
}
