using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Motion;

namespace SecondShore.Engine.Day;

/// <summary>The waves of a water motion, as routes ask for them.</summary>
public sealed class MotionSea : ISeaState
{
    private readonly IWaterMotion _motion;

    /// <summary>Wraps a motion of the water.</summary>
    public MotionSea(IWaterMotion motion) => _motion = Require.NotNull(motion);

    /// <inheritdoc/>
    public double WaveM(PlanePoint place, DateTimeOffset at) => _motion.WavesAt(place, at).HeightM;
}
