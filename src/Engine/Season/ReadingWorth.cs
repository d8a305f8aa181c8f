namespace SecondShore.Engine.Season;

/// <summary>What a reading taken now would tell, as the members foretell it.</summary>
/// <param name="Kind">The reading.</param>
/// <param name="DepthM">Its depth, m; NaN where it has none.</param>
/// <param name="Narrows">What it narrows.</param>
/// <param name="NowSd">Standard deviation of that now: m, or days of turnover.</param>
/// <param name="AfterSd">Standard deviation to be expected after it.</param>
public sealed record ReadingWorth(ReadingKind Kind, double DepthM, WorthOf Narrows, double NowSd, double AfterSd)
{
    /// <summary>Share of the doubt that it takes away, 0 to 1.</summary>
    public double Share => NowSd > 0 ? 1 - (AfterSd / NowSd) : 0;
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
