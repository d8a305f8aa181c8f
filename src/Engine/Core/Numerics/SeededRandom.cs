namespace SecondShore.Engine.Core.Numerics;

/// <summary>
/// A stream of chance that is the same on every runtime for the same seed (PCG-XSH-RR 64/32; ONeill2014).
/// Not for secrets, not for sharing between threads: split a stream per worker.
/// </summary>
public sealed class SeededRandom
{
    private const ulong Multiplier = 6364136223846793005UL;
    private readonly ulong _increment;
    private ulong _state;
    private double _spareNormal = double.NaN;

    /// <summary>Makes the stream of a seed. Streams with different <paramref name="stream"/> are independent.</summary>
    public SeededRandom(ulong seed, ulong stream = 0)
    {
        _increment = (Mix(stream) << 1) | 1UL;
        _state = 0;
        NextUInt();
        _state += Mix(seed);
        NextUInt();
    }

    /// <summary>A new independent stream, a pure function of this stream's seed position and the key.</summary>
    public SeededRandom Split(ulong key) => new(Mix(_state ^ Mix(key + 0x9E3779B97F4A7C15UL)), key + 1);

    /// <summary>32 uniform bits.</summary>
    public uint NextUInt()
    {
        ulong old = _state;
        _state = (old * Multiplier) + _increment;
        uint shifted = (uint)(((old >> 18) ^ old) >> 27);
        return uint.RotateRight(shifted, (int)(old >> 59));
    }

    /// <summary>Uniform in 0 (inclusive) to 1 (exclusive), 53 bits.</summary>
    public double NextDouble()
    {
        ulong bits = ((ulong)NextUInt() << 21) ^ (NextUInt() >> 11);
        return bits * (1.0 / (1UL << 53));
    }

    /// <summary>Uniform in a range.</summary>
    public double NextDouble(double low, double high) => low + ((high - low) * NextDouble());

    /// <summary>Uniform whole number in 0 (inclusive) to <paramref name="limit"/> (exclusive), without bias.</summary>
    /// <param name="limit">1 or more.</param>
    public int NextInt(int limit)
    {
        Require.InRange(limit, 1, int.MaxValue);
        uint bound = (uint)limit, threshold = (0u - bound) % bound;
        while (true)
        {
            uint draw = NextUInt();
            if (draw >= threshold) return (int)(draw % bound);
        }
    }

    /// <summary>Standard normal draw (polar method of Marsaglia).</summary>
    public double NextNormal()
    {
        if (!double.IsNaN(_spareNormal))
        {
            double spare = _spareNormal;
            _spareNormal = double.NaN;
            return spare;
        }

        while (true)
        {
            double u = (2.0 * NextDouble()) - 1.0, v = (2.0 * NextDouble()) - 1.0, s = (u * u) + (v * v);
            if (s >= 1.0 || s == 0.0) continue;
            double factor = Math.Sqrt(-2.0 * Math.Log(s) / s);
            _spareNormal = v * factor;
            return u * factor;
        }
    }

    /// <summary>Gamma draw with the given shape and scale 1 (MarsagliaTsang2000).</summary>
    /// <param name="shape">Above 0.</param>
    public double NextGamma(double shape)
    {
        Require.Positive(shape);
        if (shape < 1.0) return NextGamma(shape + 1.0) * Math.Pow(Math.Max(NextDouble(), double.Epsilon), 1.0 / shape);
        double d = shape - (1.0 / 3.0), c = 1.0 / Math.Sqrt(9.0 * d);
        while (true)
        {
            double x = NextNormal(), v = 1.0 + (c * x);
            if (v <= 0) continue;
            v = v * v * v;
            double u = NextDouble();
            if (u > 0 && Math.Log(u) < (0.5 * x * x) + d - (d * v) + (d * Math.Log(v))) return d * v;
        }
    }

    /// <summary>Poisson draw with the given mean (products of uniforms below 30, gamma reduction above).</summary>
    /// <param name="mean">0 or more.</param>
    public int NextPoisson(double mean)
    {
        Require.NotNegative(mean);
        int count = 0;
        while (mean > 30.0)
        {
            int part = (int)(mean * 7.0 / 8.0);
            double waiting = NextGamma(part);
            if (waiting > mean) return count + Binomial(part - 1, mean / waiting);
            count += part;
            mean -= waiting;
        }

        double limit = Math.Exp(-mean), product = NextDouble();
        while (product > limit) { count++; product *= NextDouble(); }
        return count;
    }

    private int Binomial(int trials, double share)
    {
        int hits = 0;
        for (int i = 0; i < trials; i++)
            if (NextDouble() < share) hits++;
        return hits;
    }

    // SplitMix64 finaliser: spreads small seeds over all bits.
    private static ulong Mix(ulong value)
    {
        value += 0x9E3779B97F4A7C15UL;
        value = (value ^ (value >> 30)) * 0xBF58476D1CE4E5B9UL;
        value = (value ^ (value >> 27)) * 0x94D049BB133111EBUL;
        return value ^ (value >> 31);
    }
}
