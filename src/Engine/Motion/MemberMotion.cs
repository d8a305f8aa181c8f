using SecondShore.Engine.Motion.Layers;

namespace SecondShore.Engine.Motion;

/// <summary>One member's computed hours.</summary>
/// <param name="Layers">Its layers at rest.</param>
/// <param name="OffsetM">[hour][water cell] displacement, m positive down, carried to the shore from the nearest cell that computes.</param>
/// <param name="EastMps">[hour][water cell] eastward velocity of the upper layer less the lower, m s-1; null where only the displacement is kept.</param>
/// <param name="NorthMps">The same northward.</param>
/// <param name="RmsM">[water cell] root mean square of the displacement since the water was at rest, m.</param>
internal sealed record MemberMotion(LayerPair Layers, float[][] OffsetM, float[][]? EastMps, float[][]? NorthMps, float[] RmsM);
