namespace SecondShore.Engine.Core.Numerics;

/// <summary>A distribution known by weighted samples: an ensemble's answer for one quantity. Immutable.</summary>
/// <remarks>
/// The cumulative curve is piecewise linear through (sample, middle of its step), the usual plotting position, so that
/// quantiles of few members move smoothly. Samples of equal value are allowed.
/// </remarks>
public sealed class SampleDistribution
{
    private readonly double[] _values;
    private readonly double[] _middles;

    private SampleDistribution(double[] values, double[] weights)
    {
        Array.Sort(values, weights);
        _values = values;
        Weights = weights;
        _middles = new double[values.Length];
        double sum = 0;
        foreach (double weight in weights) sum += weight;
        double below = 0, mean = 0;
        for (int i = 0; i < values.Length; i++)
        {
            weights[i] /= sum;
            _middles[i] = below + (0.5 * weights[i]);
            below += weights[i];
            mean += weights[i] * values[i];
        }

        Mean = mean;
        double variance = 0;
        for (int i = 0; i < values.Length; i++) variance += weights[i] * (values[i] - mean) * (values[i] - mean);
        Sd = Math.Sqrt(variance);
    }

    /// <summary>Samples, ascending.</summary>
    public ReadOnlySpan<double> Values => _values;

    /// <summary>Weights in the order of <see cref="Values"/>, sum 1.</summary>
    public IReadOnlyList<double> Weights { get; }

    /// <summary>Weighted mean.</summary>
    public double Mean { get; }

    /// <summary>Weighted standard deviation about the mean (not corrected for few samples).</summary>
    public double Sd { get; }

    /// <summary>Number of samples.</summary>
    public int Count => _values.Length;

    /// <summary>The 10th, 50th and 90th percentile.</summary>
    public Spread Spread => new(Quantile(0.1), Quantile(0.5), Quantile(0.9));

    /// <summary>A distribution of equally weighted samples.</summary>
    /// <exception cref="ArgumentException">There is no sample, or one is not finite.</exception>
    public static SampleDistribution Of(ReadOnlySpan<double> samples)
    {
        double[] weights = new double[samples.Length];
        Array.Fill(weights, 1.0);
        return Of(samples, weights);
    }

    /// <summary>A distribution of weighted samples; weights need not sum to 1.</summary>
    /// <exception cref="ArgumentException">No sample, a sample not finite, a weight negative, or all weights 0.</exception>
    public static SampleDistribution Of(ReadOnlySpan<double> samples, ReadOnlySpan<double> weights)
    {
        Require.SameLength(weights.Length, samples.Length, nameof(weights));
        double sum = 0;
        int kept = 0;
        for (int i = 0; i < samples.Length; i++)
        {
            Require.Finite(samples[i], nameof(samples));
            sum += Require.NotNegative(weights[i], nameof(weights));
            if (weights[i] > 0) kept++;
        }

        if (!(sum > 0)) throw new ArgumentException("A distribution needs at least one sample with weight above 0.", nameof(samples));
        double[] values = new double[kept], shares = new double[kept];
        for (int i = 0, k = 0; i < samples.Length; i++)
        {
            if (weights[i] > 0) { values[k] = samples[i]; shares[k++] = weights[i]; }
        }

        return new SampleDistribution(values, shares);
    }

    /// <summary>A distribution of <paramref name="count"/> equally likely points of a normal law.</summary>
    /// <param name="mean">Mean.</param>
    /// <param name="sd">Standard deviation, 0 or more.</param>
    /// <param name="count">Points, at least 1.</param>
    public static SampleDistribution Normal(double mean, double sd, int count = 99)
    {
        Require.Finite(mean);
        Require.NotNegative(sd);
        double[] samples = new double[Require.InRange(count, 1, 1_000_000)];
        for (int i = 0; i < samples.Length; i++)
            samples[i] = mean + (sd * NormalLaw.Quantile((i + 0.5) / samples.Length));
        return Of(samples);
    }

    /// <summary>The value below which a share of the distribution lies; beyond the outer samples, the outer sample.</summary>
    /// <param name="share">0 to 1.</param>
    public double Quantile(double share)
    {
        Require.InRange(share, 0.0, 1.0);
        int upper = Array.BinarySearch(_middles, share);
        if (upper >= 0) return _values[upper];
        upper = ~upper;
        if (upper == 0) return _values[0];
        if (upper == _values.Length) return _values[^1];
        double t = (share - _middles[upper - 1]) / (_middles[upper] - _middles[upper - 1]);
        return _values[upper - 1] + (t * (_values[upper] - _values[upper - 1]));
    }

    /// <summary>Share of the distribution at or below a value, 0 to 1.</summary>
    public double ShareBelow(double value)
    {
        if (value < _values[0]) return 0;
        if (value >= _values[^1]) return 1;
        int low = 0, high = _values.Length - 1;
        while (high - low > 1)
        {
            int middle = (low + high) / 2;
            if (_values[middle] <= value) low = middle; else high = middle;
        }

        double t = (value - _values[low]) / (_values[high] - _values[low]);
        return _middles[low] + (t * (_middles[high] - _middles[low]));
    }
}
