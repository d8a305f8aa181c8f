using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Season;

namespace SecondShore.Engine.Motion;

/// <summary>What two layers under a wind known at a few places cannot tell of the thermocline's displacement.</summary>
public static class MotionError
{
    /// <summary>Standard deviation of the error over the root mean square of the displacement at the place (science page: from measured chains).</summary>
    public static readonly double ShareOfRms = 0.8;

    /// <summary>The same where one wind stands for several arms (science page).</summary>
    public static readonly double ShareOfRmsOneWind = 3.0;

    // Fewer samples than this are each taken five times; more are moved each by its own part of the error.
    private const int FewSamples = 40;
    private const double GoldenShare = 0.6180339887498949;

    /// <summary>Samples of a depth widened by an error; the mean stays.</summary>
    /// <param name="depthsM">Depths, m.</param>
    /// <param name="weights">Their weights.</param>
    /// <param name="sdM">Standard deviation of the error, m.</param>
    /// <param name="leastM">Least depth that can be, m.</param>
    public static SampleDistribution Widened(double[] depthsM, double[] weights, double sdM, double leastM)
    {
        ArgumentNullException.ThrowIfNull(depthsM);
        ArgumentNullException.ThrowIfNull(weights);
        if (depthsM.Length < FewSamples)
        {
            (double[] wide, double[] shares) = ModelError.Widen(depthsM, weights, _ => sdM, leastM, double.MaxValue);
            return SampleDistribution.Of(wide, shares);
        }

        // Parts in golden steps are as good as drawn and the same each time.
        double[] moved = new double[depthsM.Length];
        for (int i = 0; i < moved.Length; i++)
        {
            double share = ((i + 0.5) * GoldenShare) % 1.0;
            moved[i] = Math.Max(leastM, depthsM[i] + (sdM * NormalLaw.Quantile(Math.Clamp(share, 0.005, 0.995))));
        }

        return SampleDistribution.Of(moved, weights);
    }
}
