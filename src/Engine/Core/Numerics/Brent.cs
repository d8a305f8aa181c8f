using System.Globalization;

namespace SecondShore.Engine.Core.Numerics;

/// <summary>Root of a continuous function inside a bracket (Brent 1973).</summary>
public static class Brent
{
    /// <summary>Finds x in [low, high] with f(x) = 0.</summary>
    /// <param name="function">The function; its values at the ends must differ in sign.</param>
    /// <param name="low">Lower end of the bracket.</param>
    /// <param name="high">Upper end of the bracket.</param>
    /// <param name="tolerance">Absolute tolerance on x.</param>
    /// <param name="root">The root, or the last estimate when none was found.</param>
    /// <param name="maxIterations">Function calls allowed.</param>
    /// <returns>False when the ends do not bracket a root, a value is NaN, or the calls run out.</returns>
    public static bool TryFindRoot(Func<double, double> function, double low, double high, double tolerance,
        out double root, int maxIterations = 100)
    {
        Require.NotNull(function);
        double a = low, b = high, fa = function(a), fb = function(b);
        root = b;
        if (double.IsNaN(fa) || double.IsNaN(fb)) return false;
        if (fa == 0) { root = a; return true; }
        if (fb == 0) return true;
        if (Math.Sign(fa) == Math.Sign(fb)) return false;

        double c = a, fc = fa, step = b - a, previousStep = step;
        for (int i = 0; i < maxIterations; i++)
        {
            if (Math.Sign(fb) == Math.Sign(fc)) { c = a; fc = fa; step = previousStep = b - a; }
            if (Math.Abs(fc) < Math.Abs(fb)) { a = b; b = c; c = a; fa = fb; fb = fc; fc = fa; }

            root = b;
            double allowed = (2.0 * double.Epsilon * Math.Abs(b)) + (0.5 * tolerance);
            double half = 0.5 * (c - b);
            if (Math.Abs(half) <= allowed || fb == 0) return true;

            if (Math.Abs(previousStep) >= allowed && Math.Abs(fa) > Math.Abs(fb))
            {
                (double p, double q) = Interpolate(a, b, c, fa, fb, fc, half);
                if (p > 0) q = -q; else p = -p;
                if (2.0 * p < Math.Min((3.0 * half * q) - Math.Abs(allowed * q), Math.Abs(previousStep * q)))
                {
                    previousStep = step;
                    step = p / q;
                }
                else
                {
                    step = previousStep = half;
                }
            }
            else
            {
                step = previousStep = half;
            }

            a = b;
            fa = fb;
            b += Math.Abs(step) > allowed ? step : Math.CopySign(allowed, half);
            fb = function(b);
            if (double.IsNaN(fb)) return false;
        }

        return false;
    }

    /// <summary>As <see cref="TryFindRoot"/>, but throws with the numbers that would explain the failure.</summary>
    /// <exception cref="InvalidOperationException">No root was found.</exception>
    public static double FindRoot(Func<double, double> function, double low, double high, double tolerance, int maxIterations = 100)
    {
        if (TryFindRoot(function, low, high, tolerance, out double root, maxIterations)) return root;
        throw new InvalidOperationException(string.Create(CultureInfo.InvariantCulture,
            $"No root between {low} (value {function(low)}) and {high} (value {function(high)}) within {maxIterations} steps to {tolerance}; last estimate {root}, residual {function(root)}."));
    }

    private static (double P, double Q) Interpolate(double a, double b, double c, double fa, double fb, double fc, double half)
    {
        double s = fb / fa;
        if (a == c) return (2.0 * half * s, 1.0 - s);
        double q = fa / fc, r = fb / fc;
        return (s * ((2.0 * half * q * (q - r)) - ((b - a) * (r - 1.0))), (q - 1.0) * (r - 1.0) * (s - 1.0));
    }
}
