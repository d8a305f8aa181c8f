using SecondShore.Engine.Core;

namespace SecondShore.Engine.Season;

/// <summary>
/// Fits a lake's numbers to years of measurements: the most likely point of prior and residuals by damped Gauss-Newton steps,
/// and the spread that is left there (Laplace's approximation). Source: season.md, "Fit".
/// </summary>
public static class LakeFit
{
    private const double Difference = 0.3, SmallestSpread = 0.15;

    /// <summary>Fits.</summary>
    /// <param name="priors">Beliefs before; the fit may not go further from them than the residuals ask.</param>
    /// <param name="residuals">Residuals of a set of parameters, each in standard errors and weighted for its independence; always the same length.</param>
    /// <param name="iterations">Steps at most.</param>
    /// <param name="priorWeight">How much heavier than its own spread the prior weighs, 1 or more: what left-out seasons ask for.</param>
    /// <param name="progress">Share done, 0 to 1.</param>
    /// <param name="cancel">Stops between steps.</param>
    /// <returns>Where the numbers lie in the prior's own measure, and how far that is known.</returns>
    public static FitEstimate Fit(LakePriors priors, Func<ColumnParameters, double[]> residuals, int iterations = 6,
        double priorWeight = 1, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        Require.NotNull(priors);
        Require.NotNull(residuals);
        int n = LakePriors.Dimensions - 1; // oxygen demand does not touch temperature
        double[] z = new double[LakePriors.Dimensions], best = residuals(priors.At(z));
        double cost = Cost(best, z, priorWeight), damping = 0.5;
        double[,] normal = new double[n, n];
        for (int k = 0; k < iterations; k++)
        {
            double[][] jacobian = Jacobian(priors, residuals, z, best, n, cancel);
            double[] gradient = Normal(jacobian, best, z, normal, n, priorWeight);
            bool moved = false;
            for (int tries = 0; tries < 4 && !moved; tries++)
            {
                double[] step = SolveDamped(normal, gradient, damping, n), trial = (double[])z.Clone();
                for (int d = 0; d < n; d++) trial[d] = Math.Clamp(z[d] - Math.Clamp(step[d], -1.5, 1.5), -4, 4);
                double[] seen = residuals(priors.At(trial));
                double tried = Cost(seen, trial, priorWeight);
                if (tried < cost)
                {
                    moved = cost - tried > 1e-3 * cost;
                    (z, best, cost, damping) = (trial, seen, tried, damping * 0.4);
                    break;
                }

                damping *= 4;
            }

            progress?.Report((k + 1.0) / iterations);
            if (!moved && damping > 20) break;
        }

        return Laplace(z, normal, n, priorWeight);
    }

    private static double Cost(double[] residuals, double[] z, double priorWeight)
    {
        double sum = 0;
        foreach (double r in residuals) sum += r * r;
        foreach (double v in z) sum += priorWeight * v * v;
        return sum;
    }

    private static double[][] Jacobian(LakePriors priors, Func<ColumnParameters, double[]> residuals, double[] z, double[] at, int n, CancellationToken cancel)
    {
        double[][] columns = new double[n][];
        MemberLoop.Run(n, d =>
        {
            double[] trial = (double[])z.Clone();
            double step = trial[d] > 2 ? -Difference : Difference;
            trial[d] += step;
            double[] seen = residuals(priors.At(trial));
            for (int i = 0; i < seen.Length; i++) seen[i] = (seen[i] - at[i]) / step;
            columns[d] = seen;
        }, null, 0, 1, cancel);
        return columns;
    }

    private static double[] Normal(double[][] jacobian, double[] residuals, double[] z, double[,] normal, int n, double priorWeight)
    {
        double[] gradient = new double[n];
        for (int a = 0; a < n; a++)
        {
            for (int b = 0; b <= a; b++)
            {
                double sum = a == b ? priorWeight : 0.0;
                for (int i = 0; i < residuals.Length; i++) sum += jacobian[a][i] * jacobian[b][i];
                normal[a, b] = normal[b, a] = sum;
            }

            gradient[a] = priorWeight * z[a];
            for (int i = 0; i < residuals.Length; i++) gradient[a] += jacobian[a][i] * residuals[i];
        }

        return gradient;
    }

    // Gauss elimination of a small positive definite system with its diagonal raised.
    private static double[] SolveDamped(double[,] normal, double[] right, double damping, int n)
    {
        double[,] m = (double[,])normal.Clone();
        double[] x = (double[])right.Clone();
        for (int i = 0; i < n; i++) m[i, i] *= 1 + damping;
        for (int k = 0; k < n; k++)
        {
            for (int i = k + 1; i < n; i++)
            {
                double factor = m[i, k] / m[k, k];
                for (int j = k; j < n; j++) m[i, j] -= factor * m[k, j];
                x[i] -= factor * x[k];
            }
        }

        for (int i = n - 1; i >= 0; i--)
        {
            for (int j = i + 1; j < n; j++) x[i] -= m[i, j] * x[j];
            x[i] /= m[i, i];
        }

        return x;
    }

    // The prior counts once in the spread: how heavily it had to weigh to hold the centre says nothing of what was measured.
    private static FitEstimate Laplace(double[] z, double[,] normal, int n, double priorWeight)
    {
        double[,] once = (double[,])normal.Clone();
        for (int d = 0; d < n; d++) once[d, d] += 1 - priorWeight;
        double[] sd = new double[z.Length];
        Array.Fill(sd, 1.0);
        for (int d = 0; d < n; d++)
        {
            double[] unit = new double[n];
            unit[d] = 1;
            double variance = SolveDamped(once, unit, 0, n)[d];
            sd[d] = Math.Clamp(Math.Sqrt(Math.Max(0, variance)), SmallestSpread, 1);
        }

        return new FitEstimate(z, sd);
    }
}
