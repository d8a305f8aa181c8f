namespace SecondShore.Engine.Basin.Gridding;

/// <summary>Variance of a drawn depth by distance to the nearest datum: a + b h + c h2, one of b and c 0. Default: 0.</summary>
/// <remarks>A bed that wanders adds b h; one that may fall away beyond the last track adds c h2, c being the variance of its slope.</remarks>
/// <param name="AtDatumM2">Variance at a datum, m2.</param>
/// <param name="PerM">Growth of the variance with distance, m2 per m.</param>
/// <param name="PerSquareM">Growth of the variance with the square of distance, m2 per m2.</param>
internal readonly record struct ErrorModel(double AtDatumM2, double PerM, double PerSquareM = 0)
{
    /// <summary>Smallest standard error of a sounding that is believed, m.</summary>
    private const double LeastSdM = 0.1;

    /// <summary>Errors from which their share within two standard errors can be counted.</summary>
    private const int FewestToScale = 40;

    /// <summary>Used where no sounding could be left out: 0.3 m at a datum, growing as over a bed that wanders 1 m in 30 m.</summary>
    public static ErrorModel Usual { get; } = new(0.09, 1.0 / 30);

    /// <summary>Standard error at a distance, m.</summary>
    public float SdM(double distanceM) => (float)Math.Sqrt(AtDatumM2 + ((PerM + (PerSquareM * distanceM)) * distanceM));

    /// <summary>Fits the model to left-out errors, so that two standard errors hold 95 % of them.</summary>
    /// <remarks>The growth that fits better is taken, from classes of distance in which a few wild errors do not rule.</remarks>
    public static ErrorModel Fit(ReadOnlySpan<double> distanceM, ReadOnlySpan<double> errorM)
    {
        Span<(double H, double Variance)> classes = stackalloc (double, double)[Math.Clamp(distanceM.Length / 25, 1, 10)];
        Classes(distanceM, errorM, classes);
        (double start, double growth, double off) = Line(classes, 1);
        (double startSquare, double growthSquare, double offSquare) = Line(classes, 2);
        ErrorModel model = offSquare < off ? new ErrorModel(startSquare, 0, growthSquare) : new ErrorModel(start, growth);
        return model.Scaled(distanceM, errorM);
    }

    // Mean distance of each class, and variance of its errors.
    private static void Classes(ReadOnlySpan<double> distanceM, ReadOnlySpan<double> errorM, Span<(double H, double Variance)> classes)
    {
        int n = distanceM.Length;
        double[] distance = distanceM.ToArray(), square = new double[n];
        for (int i = 0; i < n; i++) square[i] = errorM[i] * errorM[i];
        Array.Sort(distance, square);
        for (int c = 0; c < classes.Length; c++)
        {
            int from = n * c / classes.Length, to = n * (c + 1) / classes.Length;
            double[] own = square[from..to];
            Array.Sort(own);
            double meanM = 0, mean2 = 0;
            for (int i = from; i < to; i++) (meanM, mean2) = (meanM + distance[i], mean2 + square[i]);
            // The median of a squared normal is 0.455 of its mean; heavy tails are met half way.
            classes[c] = (meanM / (to - from), 0.5 * ((own[own.Length / 2] / 0.455) + (mean2 / (to - from))));
        }
    }

    // Variance at distance 0, its growth with a power of distance, and what the classes are off by.
    private static (double Start, double Growth, double Off) Line(ReadOnlySpan<(double H, double Variance)> classes, int power)
    {
        double s0 = 0, s1 = 0, s2 = 0, t0 = 0, t1 = 0;
        foreach ((double h, double variance) in classes)
        {
            // Each class counts by its own size, or the far ones alone would say what the error beside a datum is.
            double x = Math.Pow(h, power), weight = Weight(variance);
            (s0, s1, s2) = (s0 + weight, s1 + (weight * x), s2 + (weight * x * x));
            (t0, t1) = (t0 + (weight * variance), t1 + (weight * x * variance));
        }

        double determinant = (s0 * s2) - (s1 * s1);
        double growth = determinant > 1e-9 * s0 * s2 ? Math.Max(0, ((s0 * t1) - (s1 * t0)) / determinant) : 0, start = (t0 - (growth * s1)) / s0;
        if (start < LeastSdM * LeastSdM)
        {
            start = LeastSdM * LeastSdM;
            growth = s2 > 0 ? Math.Max(0, (t1 - (start * s1)) / s2) : 0;
        }

        double off = 0;
        foreach ((double h, double variance) in classes)
        {
            double miss = start + (growth * Math.Pow(h, power)) - variance;
            off += Weight(variance) * miss * miss;
        }

        return (start, growth, off);
    }

    private static double Weight(double variance) => 1 / Math.Max(variance, LeastSdM * LeastSdM);

    private ErrorModel Scaled(ReadOnlySpan<double> distanceM, ReadOnlySpan<double> errorM)
    {
        if (distanceM.Length < FewestToScale) return this;
        double[] inSd = new double[distanceM.Length];
        for (int i = 0; i < inSd.Length; i++) inSd[i] = Math.Abs(errorM[i]) / SdM(distanceM[i]);
        Array.Sort(inSd);
        double scale = inSd[(int)(0.95 * (inSd.Length - 1))] / 2, variance = scale * scale;
        return new ErrorModel(Math.Max(AtDatumM2 * variance, LeastSdM * LeastSdM), PerM * variance, PerSquareM * variance);
    }
}
