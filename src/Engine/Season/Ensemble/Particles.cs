using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Season;

/// <summary>Weighted draws of a lake's numbers in standard normal coordinates.</summary>
internal sealed class Particles
{
    public Particles(int count, SeededRandom random)
    {
        Z = new double[count][];
        StartK = new double[count];
        Weight = new double[count];
        LogLikelihood = new double[count];
        for (int i = 0; i < count; i++)
        {
            Z[i] = LakePriors.Draw(random);
            StartK[i] = 0.7 * random.NextNormal();
            Weight[i] = 1.0 / count;
        }
    }

    public double[][] Z { get; }

    public double[] StartK { get; }

    public double[] Weight { get; }

    public double[] LogLikelihood { get; }

    public int Count => Z.Length;

    /// <summary>Effective sample size of the weights (Kong1994).</summary>
    public static double EffectiveCount(ReadOnlySpan<double> weight)
    {
        double sum = 0, squares = 0;
        foreach (double w in weight)
        {
            sum += w;
            squares += w * w;
        }

        return squares > 0 ? sum * sum / squares : 0;
    }

    /// <summary>Weights for a power of the likelihood on top of equal ones.</summary>
    public void Reweight(double power)
    {
        double best = double.MinValue, sum = 0;
        foreach (double l in LogLikelihood) best = Math.Max(best, l);
        for (int i = 0; i < Count; i++) sum += Weight[i] = Math.Exp(power * (LogLikelihood[i] - best));
        for (int i = 0; i < Count; i++) Weight[i] /= sum;
    }

    /// <summary>The largest step of power, up to <paramref name="most"/>, that leaves half the particles effective.</summary>
    public double SafePower(double most)
    {
        Reweight(most);
        if (EffectiveCount(Weight) >= 0.5 * Count) return most;
        double low = 0, high = most;
        for (int pass = 0; pass < 40; pass++)
        {
            double middle = 0.5 * (low + high);
            Reweight(middle);
            if (EffectiveCount(Weight) >= 0.5 * Count) low = middle; else high = middle;
        }

        Reweight(low);
        return low;
    }

    /// <summary>Systematic resampling, then a jitter that keeps mean and spread (LiuWest2001).</summary>
    public void ResampleAndJitter(SeededRandom random, double keep)
    {
        int n = Count, dimensions = Z[0].Length;
        double[] mean = new double[dimensions + 1], sd = new double[dimensions + 1];
        for (int d = 0; d <= dimensions; d++)
        {
            double m = 0, v = 0;
            for (int i = 0; i < n; i++) m += Weight[i] * At(i, d);
            for (int i = 0; i < n; i++) v += Weight[i] * (At(i, d) - m) * (At(i, d) - m);
            (mean[d], sd[d]) = (m, Math.Sqrt(v));
        }

        double[][] oldZ = [.. Z];
        double[] oldStart = [.. StartK];
        double width = Math.Sqrt(1 - (keep * keep)), cursor = random.NextDouble() / n, sum = 0;
        for (int i = 0, from = 0; i < n; i++)
        {
            double target = cursor + ((double)i / n);
            while (from < n - 1 && sum + Weight[from] < target) sum += Weight[from++];
            double[] z = new double[dimensions];
            for (int d = 0; d < dimensions; d++) z[d] = (keep * oldZ[from][d]) + ((1 - keep) * mean[d]) + (width * sd[d] * random.NextNormal());
            Z[i] = z;
            StartK[i] = (keep * oldStart[from]) + ((1 - keep) * mean[dimensions]) + (width * sd[dimensions] * random.NextNormal());
        }

        Array.Fill(Weight, 1.0 / n);

        double At(int i, int d) => d < dimensions ? Z[i][d] : StartK[i];
    }
}
