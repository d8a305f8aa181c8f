using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Motion;

/// <summary>Water without wind: a level thermocline, no current, no waves.</summary>
public sealed class StillWater : IWaterMotion
{
    /// <summary>The one instance.</summary>
    public static StillWater Instance { get; } = new();

    /// <inheritdoc/>
    public double ThermoclineOffsetM(PlanePoint place, DateTimeOffset at) => 0.0;

    /// <inheritdoc/>
    public Current CurrentAt(PlanePoint place, double depthM, DateTimeOffset at) => default;

    /// <inheritdoc/>
    public WaveState WavesAt(PlanePoint place, DateTimeOffset at) => default;
}
