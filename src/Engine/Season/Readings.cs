using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Season;

/// <summary>Something the user measured once.</summary>
/// <param name="At">When.</param>
/// <param name="Place">Where, if known.</param>
/// <param name="Kind">What the value is; its unit follows from it.</param>
/// <param name="Value">The value: m for depths, degC for temperatures, mg/L for oxygen.</param>
/// <param name="DepthM">Depth of a temperature or oxygen reading, m; null for the rest.</param>
/// <param name="Source">File and line, or the entry's id, for messages.</param>
public sealed record Reading(DateTimeOffset At, GeoPoint? Place, ReadingKind Kind, double Value, double? DepthM, string Source)
{
    /// <summary>Of a haze depth: how much deeper than at rest the wind held the thermocline at that place and hour, m; negative where it
    /// lifted it. The value itself stays what was seen.</summary>
    public double TiltM { get; init; }
}

/// <summary>Kinds of reading.</summary>
public enum ReadingKind
{
    /// <summary>Depth of the haze or step seen on the sounder, m.</summary>
    HazeDepth,

    /// <summary>Temperature of the surface water, degC.</summary>
    SurfaceTemperature,

    /// <summary>Temperature at <see cref="Reading.DepthM"/>, degC.</summary>
    Temperature,

    /// <summary>Secchi depth, m.</summary>
    Secchi,

    /// <summary>Dissolved oxygen at <see cref="Reading.DepthM"/>, mg/L.</summary>
    Oxygen,
}

/// <summary>A cast or a logger chain at one time. Arrays are parallel, depths increase.</summary>
/// <param name="At">When.</param>
/// <param name="DepthM">Depths below the surface of the day, m.</param>
/// <param name="TempC">Temperatures, degC; NaN where only oxygen was measured.</param>
/// <param name="OxygenMgPerL">Oxygen, mg/L; NaN where not measured; null when the whole cast has none.</param>
/// <param name="Source">File and line, for messages.</param>
public sealed record WaterProfile(DateTimeOffset At, double[] DepthM, double[] TempC, double[]? OxygenMgPerL, string Source);

/// <summary>Pool level by date.</summary>
/// <param name="At">When.</param>
/// <param name="BelowFullPoolM">How far the surface lies below full pool, m; negative above it.</param>
public sealed record PoolLevel(DateTimeOffset At, double BelowFullPoolM);

/// <summary>Flows of one day.</summary>
/// <param name="At">Start of the day.</param>
/// <param name="InflowM3PerS">Inflow, m3 s-1.</param>
/// <param name="InflowTempC">Its temperature, degC; NaN when not known.</param>
/// <param name="OutflowM3PerS">Outflow, m3 s-1.</param>
public sealed record DailyFlow(DateTimeOffset At, double InflowM3PerS, double InflowTempC, double OutflowM3PerS);
