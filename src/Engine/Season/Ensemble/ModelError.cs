namespace SecondShore.Engine.Season;

/// <summary>
/// What the members cannot know of each other: the error all of them share because a column is not a lake. Estimated over the
/// measured lakes as a group (season.md, "Doubt"), and laid over every outlook.
/// </summary>
public static class ModelError
{
    // Five equally likely points of a standard normal law, scaled to variance 1.
    private static readonly double[] Points = [-1.483, -0.553, 0, 0.553, 1.483];

    /// <summary>Standard deviation of the error of a thermocline depth: tilt of the layers, grain of the column and its slow drift, m.</summary>
    /// <param name="depthM">The depth, m.</param>
    /// <param name="leadDays">Days since the last reading or, ahead of it, since the weather ended; 0 or more.</param>
    public static double ThermoclineSdM(double depthM, double leadDays) =>
        (0.15 + (0.04 * depthM)) * Math.Sqrt(1.0 + (Math.Max(0, leadDays) / DoublingDays));

    /// <summary>Standard deviation of the error of a date of turnover, days.</summary>
    public static readonly double OverturnSdDays = 3;

    private const double DoublingDays = 20;

    /// <summary>
    /// Standard deviation of the error of the depth where oxygen runs out, m: the thermocline's own, and what is missed of oxygen over
    /// how fast it falls there.
    /// </summary>
    /// <param name="depthM">The depth, m.</param>
    /// <param name="slopeMgPerLPerM">How fast oxygen falls with depth there, mg/L per m.</param>
    public static double OxygenFloorSdM(double depthM, double slopeMgPerLPerM) =>
        double.Hypot(ThermoclineSdM(depthM, 0), OxygenMissedMgPerL / Math.Max(LeastSlope, slopeMgPerLPerM));

    // Choice: about what a column misses of oxygen under the thermocline after a reading.
    private const double OxygenMissedMgPerL = 1.2, LeastSlope = 0.1;

    /// <summary>Samples widened by an error of their own standard deviation; the mean stays.</summary>
    /// <param name="samples">Samples; NaN ones stay NaN.</param>
    /// <param name="weights">Their weights.</param>
    /// <param name="sd">Standard deviation of the error at a sample, in its unit.</param>
    /// <param name="low">Least value of a widened sample.</param>
    /// <param name="high">Greatest value of a widened sample.</param>
    public static (double[] Samples, double[] Weights) Widen(double[] samples, double[] weights, Func<double, double> sd, double low, double high)
    {
        ArgumentNullException.ThrowIfNull(samples);
        ArgumentNullException.ThrowIfNull(sd);
        return Widen(samples, weights, [.. samples.Select(sd)], low, high);
    }

    /// <summary>Samples widened by errors of their own standard deviations; the mean stays.</summary>
    /// <param name="samples">Samples; NaN ones stay NaN.</param>
    /// <param name="weights">Their weights.</param>
    /// <param name="sd">Standard deviation of the error of each sample, in its unit.</param>
    /// <param name="low">Least value of a widened sample.</param>
    /// <param name="high">Greatest value of a widened sample.</param>
    public static (double[] Samples, double[] Weights) Widen(double[] samples, double[] weights, double[] sd, double low, double high)
    {
        ArgumentNullException.ThrowIfNull(samples);
        ArgumentNullException.ThrowIfNull(weights);
        ArgumentNullException.ThrowIfNull(sd);
        double[] wide = new double[samples.Length * Points.Length], shares = new double[wide.Length];
        for (int i = 0, k = 0; i < samples.Length; i++)
        {
            double error = sd[i];
            foreach (double point in Points)
            {
                wide[k] = Math.Clamp(samples[i] + (error * point), low, high);
                shares[k++] = weights[i] / Points.Length;
            }
        }

        return (wide, shares);
    }
}
