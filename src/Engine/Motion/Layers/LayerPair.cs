using SecondShore.Engine.Core;

namespace SecondShore.Engine.Motion.Layers;

/// <summary>The two layers at rest that one run of the interface model stands on.</summary>
public sealed record LayerPair
{
    /// <summary>Makes a pair.</summary>
    /// <param name="upperM">Thickness of the upper layer at rest, m, above 0.</param>
    /// <param name="reducedGravityMps2">g (rho2 - rho1)/rho2, m s-2, above 0.</param>
    /// <param name="weight">Weight among its fellows, 0 or more.</param>
    public LayerPair(double upperM, double reducedGravityMps2, double weight = 1.0)
    {
        UpperM = Require.Positive(upperM);
        ReducedGravityMps2 = Require.Positive(reducedGravityMps2);
        Weight = Require.NotNegative(weight);
    }

    /// <summary>Thickness of the upper layer at rest, m.</summary>
    public double UpperM { get; }

    /// <summary>Reduced gravity, m s-2.</summary>
    public double ReducedGravityMps2 { get; }

    /// <summary>Weight among its fellows.</summary>
    public double Weight { get; }

    /// <summary>Speed of long internal waves over a depth, m s-1: sqrt(g' h1 h2/(h1 + h2)); 0 where the water is no deeper than the upper layer.</summary>
    public double WaveSpeedMps(double depthM)
    {
        double lowerM = depthM - UpperM;
        return lowerM <= 0 ? 0.0 : Math.Sqrt(ReducedGravityMps2 * UpperM * lowerM / depthM);
    }
}
