using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Motion;

/// <summary>What the wind does to the water, by place and time: all that a day's plan needs of it.</summary>
/// <remarks>
/// Places are in the lake's plane. Times outside the computed range take the nearest computed one; places off the water
/// take the nearest water for the thermocline and give still water and calm for the rest.
/// </remarks>
public interface IWaterMotion
{
    /// <summary>How much deeper than at rest the thermocline lies, m; negative where it is lifted.</summary>
    double ThermoclineOffsetM(PlanePoint place, DateTimeOffset at);

    /// <summary>The current at a depth below the surface of the day, m.</summary>
    Current CurrentAt(PlanePoint place, double depthM, DateTimeOffset at);

    /// <summary>Waves, wind and gusts.</summary>
    WaveState WavesAt(PlanePoint place, DateTimeOffset at);
}
