using SecondShore.Engine.Motion.Layers;

namespace SecondShore.Engine.Motion;

/// <summary>One member's computed hours.</summary>
/// <param name="Course">[hour] its layers at rest.</param>
/// <param name="OffsetM">[hour][water cell] displacement, m positive down, carried to the shore from the nearest cell that computes.</param>
/// <param name="EastMps">[hour][water cell] eastward velocity of the upper layer less the lower, m s-1; null where only the displacement is kept.</param>
/// <param name="NorthMps">The same northward.</param>
/// <param name="RmsM">[water cell] root mean square of the displacement since the water was at rest, m.</param>
internal sealed record MemberMotion(LayerPair[] Course, float[][] OffsetM, float[][]? EastMps, float[][]? NorthMps, float[] RmsM)
{
    /// <summary>Its layers at rest in the first hour.</summary>
    public LayerPair Layers => Course[0];

    /// <summary>Thickness of the upper layer at rest between two hours, m.</summary>
    public double UpperM(int low, int high, double t) => ((1.0 - t) * Course[low].UpperM) + (t * Course[high].UpperM);
}
