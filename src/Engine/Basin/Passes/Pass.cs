using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Basin.Passes;

/// <summary>A line to drag along. Immutable.</summary>
/// <param name="Line">Points in the plane, evenly spaced.</param>
/// <param name="LengthM">Length, m.</param>
/// <param name="ShallowM">Shallowest depth under it, m.</param>
/// <param name="DeepM">Deepest depth under it, m.</param>
/// <param name="HeadingDeg">Compass bearing from start to end, degrees.</param>
/// <param name="MeanChanceShare">Mean chance in reach along it, 0 to 1; 0 without a thermocline.</param>
public sealed record Pass(IReadOnlyList<PlanePoint> Line, double LengthM, double ShallowM, double DeepM, double HeadingDeg, double MeanChanceShare);

/// <summary>How passes are drawn. Immutable.</summary>
public sealed record PassOptions
{
    /// <summary>The usual options.</summary>
    public static readonly PassOptions Default = new();

    /// <summary>Least radius a dragging boat turns with, m.</summary>
    public double TurnRadiusM { get; init; } = 20;

    /// <summary>Length wished for, m.</summary>
    public double LengthM { get; init; } = 240;

    /// <summary>Least length worth a pass, m.</summary>
    public double LeastLengthM { get; init; } = 40;

    /// <summary>Least depth to stay over, m.</summary>
    public double LeastDepthM { get; init; } = 1.5;
}
