namespace SecondShore.Engine.Core;

/// <summary>What a check at the public door finds.</summary>
public static class CoreFindings
{
    /// <summary>A number that is none.</summary>
    public static readonly FindingKind NotFinite = new("core.not-finite", "name", "value");

    /// <summary>A number of 0 or less, or none.</summary>
    public static readonly FindingKind NotPositive = new("core.not-positive", "name", "value");

    /// <summary>A number below 0, or none.</summary>
    public static readonly FindingKind Negative = new("core.negative", "name", "value");

    /// <summary>A number outside its range.</summary>
    public static readonly FindingKind OutOfRange = new("core.out-of-range", "name", "value", "low", "high");

    /// <summary>A whole number outside its range.</summary>
    public static readonly FindingKind NotWhole = new("core.not-whole", "name", "value", "low", "high");
}
