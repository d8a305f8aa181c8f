namespace SecondShore.Engine.Core.Numerics;

/// <summary>The standard normal law.</summary>
public static class NormalLaw
{
    /// <summary>Density at z.</summary>
    public static double Density(double z) => Math.Exp(-0.5 * z * z) / Math.Sqrt(2.0 * Math.PI);

    /// <summary>Share of the law below z, absolute error under 1e-15 in the body (Hart1968 as given by West2005).</summary>
    public static double ShareBelow(double z)
    {
        double x = Math.Abs(z);
        double share;
        if (x > 37)
        {
            share = 0;
        }
        else if (x < 7.07106781186547)
        {
            share = Math.Exp(-0.5 * x * x)
                * Polynomial(x, 3.52624965998911e-02, 0.700383064443688, 6.37396220353165, 33.912866078383,
                    112.079291497871, 221.213596169931, 220.206867912376)
                / Polynomial(x, 8.83883476483184e-02, 1.75566716318264, 16.064177579207, 86.7807322029461,
                    296.564248779674, 637.333633378831, 793.826512519948, 440.413735824752);
        }
        else
        {
            double fraction = x + (1.0 / (x + (2.0 / (x + (3.0 / (x + (4.0 / (x + 0.65))))))));
            share = Math.Exp(-0.5 * x * x) / fraction / Math.Sqrt(2.0 * Math.PI);
        }

        return z > 0 ? 1.0 - share : share;
    }

    /// <summary>The z below which a share of the law lies (Acklam's rational start, one Halley step on <see cref="ShareBelow"/>).</summary>
    /// <param name="share">Above 0, below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The share is 0, 1, outside, or NaN.</exception>
    public static double Quantile(double share)
    {
        Require.InRange(share, double.Epsilon, 1.0 - 1e-16);
        double z = RationalStart(share);
        double step = (ShareBelow(z) - share) / Density(z);
        return z - (step / (1.0 + (0.5 * z * step)));
    }

    private static double RationalStart(double p)
    {
        if (p < 0.02425) return Tail(Math.Sqrt(-2.0 * Math.Log(p)));
        if (p > 1.0 - 0.02425) return -Tail(Math.Sqrt(-2.0 * Math.Log(1.0 - p)));
        double q = p - 0.5, r = q * q;
        return q
            * Polynomial(r, -39.69683028665376, 220.9460984245205, -275.9285104469687, 138.3577518672690, -30.66479806614716, 2.506628277459239)
            / Polynomial(r, -54.47609879822406, 161.5858368580409, -155.6989798598866, 66.80131188771972, -13.28068155288572, 1.0);
    }

    private static double Tail(double q) =>
        Polynomial(q, -0.007784894002430293, -0.3223964580411365, -2.400758277161838, -2.549732539343734, 4.374664141464968, 2.938163982698783)
        / Polynomial(q, 0.007784695709041462, 0.3224671290700398, 2.445134137142996, 3.754408661907416, 1.0);

    // Horner's rule, highest power first.
    private static double Polynomial(double x, params ReadOnlySpan<double> coefficients)
    {
        double sum = 0;
        foreach (double coefficient in coefficients) sum = (sum * x) + coefficient;
        return sum;
    }
}
