namespace SecondShore.Engine.Basin.Gridding;

/// <summary>Variance of a drawn depth by distance to the nearest datum: a + b h. Default: 0.</summary>
/// <param name="AtDatumM2">Variance at a datum, m2.</param>
/// <param name="PerM">Growth of the variance with distance, m2 per m.</param>
internal readonly record struct ErrorModel(double AtDatumM2, double PerM)
{
    /// <summary>Smallest standard error of a sounding that is believed, m.</summary>
    private const double LeastSdM = 0.1;

    /// <summary>Used where no sounding could be left out: 0.3 m at a datum, growing as over a bed that wanders 1 m in 30 m.</summary>
    public static ErrorModel Usual { get; } = new(0.09, 1.0 / 30);

    /// <summary>Standard error at a distance, m.</summary>
    public float SdM(double distanceM) => (float)Math.Sqrt(AtDatumM2 + (PerM * distanceM));

    /// <summary>Fits the model to left-out errors: medians of their squares in classes of distance, so that a few wild ones do not rule.</summary>
    public static ErrorModel Fit(ReadOnlySpan<double> distanceM, ReadOnlySpan<double> errorM)
    {
        int n = distanceM.Length, classes = Math.Clamp(n / 25, 1, 10);
        double[] distance = distanceM.ToArray(), square = new double[n];
        for (int i = 0; i < n; i++) square[i] = errorM[i] * errorM[i];
        Array.Sort(distance, square);
        double s0 = 0, s1 = 0, s2 = 0, t0 = 0, t1 = 0;
        for (int c = 0; c < classes; c++)
        {
            int from = n * c / classes, to = n * (c + 1) / classes;
            double[] own = square[from..to];
            Array.Sort(own);
            double meanM = 0, mean2 = 0;
            for (int i = from; i < to; i++) (meanM, mean2) = (meanM + distance[i], mean2 + square[i]);
            meanM /= to - from;
            mean2 /= to - from;
            // The median of a squared normal is 0.455 of its mean; heavy tails are met half way.
            double variance = 0.5 * ((own[own.Length / 2] / 0.455) + mean2);
            // Each class counts by its own size, or the far ones alone would say what the error beside a datum is.
            double weight = 1 / Math.Max(variance, LeastSdM * LeastSdM);
            s0 += weight;
            s1 += weight * meanM;
            s2 += weight * meanM * meanM;
            t0 += weight * variance;
            t1 += weight * variance * meanM;
        }

        double determinant = (s0 * s2) - (s1 * s1);
        double slope = determinant > 1e-9 * s0 * s2 ? ((s0 * t1) - (s1 * t0)) / determinant : 0;
        slope = Math.Max(0, slope);
        double start = (t0 - (slope * s1)) / s0;
        if (start < LeastSdM * LeastSdM)
        {
            start = LeastSdM * LeastSdM;
            slope = s2 > 0 ? Math.Max(0, (t1 - (start * s1)) / s2) : 0;
        }

        return new ErrorModel(start, slope);
    }
}
