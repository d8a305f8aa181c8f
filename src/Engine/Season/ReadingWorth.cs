namespace SecondShore.Engine.Season;

/// <summary>What a reading taken now would tell, as the members foretell it.</summary>
/// <param name="Kind">The reading.</param>
/// <param name="DepthM">Its depth, m; NaN where it has none.</param>
/// <param name="Narrows">What it narrows.</param>
/// <param name="SdBefore">Standard deviation of that now: m, or days of turnover.</param>
/// <param name="SdAfter">Standard deviation to be expected after it.</param>
public sealed record ReadingWorth(ReadingKind Kind, double DepthM, WorthOf Narrows, double SdBefore, double SdAfter)
{
    /// <summary>Share of the doubt that it takes away, 0 to 1.</summary>
    public double Share => SdBefore > 0 ? 1 - (SdAfter / SdBefore) : 0;
}

/// <summary>What a reading narrows.</summary>
public enum WorthOf
{
    /// <summary>Depth of the thermocline, m.</summary>
    Thermocline,

    /// <summary>Date of turnover, days.</summary>
    Turnover,

    /// <summary>Depth under which oxygen is short, m.</summary>
    OxygenFloor,
}
