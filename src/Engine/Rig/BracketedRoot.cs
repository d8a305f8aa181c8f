namespace SecondShore.Engine.Rig;

/// <summary>A function of one number.</summary>
internal interface IResidual
{
    double At(double x);
}

/// <summary>Root inside a bracket without allocation: Chandrupatla1997, inverse quadratic steps held by bisection.</summary>
internal static class BracketedRoot
{
    /// <summary>Finds the root.</summary>
    /// <param name="function">Continuous; its values at the two ends differ in sign.</param>
    /// <param name="a">One end.</param>
    /// <param name="fa">Value there.</param>
    /// <param name="b">The other end.</param>
    /// <param name="fb">Value there.</param>
    /// <param name="guess">A first point inside, or NaN for the secant's.</param>
    /// <param name="toleranceX">Allowed error of the root.</param>
    /// <param name="toleranceF">A value this small counts as zero.</param>
    public static double Find<T>(ref T function, double a, double fa, double b, double fb, double guess, double toleranceX, double toleranceF)
        where T : struct, IResidual
    {
        double t = double.IsNaN(guess) ? fa / (fa - fb) : (guess - a) / (b - a);
        if (!(t > 0.02 && t < 0.98)) t = double.IsNaN(guess) ? 0.5 : Math.Clamp(t, 0.02, 0.98);
        double x = a;
        for (int i = 0; i < 80; i++)
        {
            x = a + (t * (b - a));
            double fx = function.At(x);
            double c, fc;
            if (fx > 0 == fa > 0)
            {
                c = a; fc = fa;
            }
            else
            {
                c = b; fc = fb;
                b = a; fb = fa;
            }

            a = x; fa = fx;
            double best = Math.Abs(fa) < Math.Abs(fb) ? a : b;
            if (Math.Abs(fx) <= toleranceF) return x;
            double limit = 0.5 * toleranceX / Math.Abs(b - a);
            if (limit > 0.5) return best;

            double xi = (a - b) / (c - b), phi = (fa - fb) / (fc - fb);
            if (phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi)
                t = (fa / (fb - fa) * fc / (fb - fc)) + ((c - a) / (b - a) * fa / (fc - fa) * fb / (fc - fb));
            else
                t = 0.5;
            t = Math.Clamp(t, limit, 1 - limit);
        }

        return x;
    }
}
