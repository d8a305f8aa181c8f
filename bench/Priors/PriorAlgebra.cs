namespace SecondShore.Bench.Priors;

/// <summary>Small dense systems, as large as there are numbers to learn.</summary>
internal static class PriorAlgebra
{
    public static double Dot(double[] a, double[] b)
    {
        double sum = 0;
        for (int i = 0; i < a.Length; i++) sum += a[i] * b[i];
        return sum;
    }

    /// <summary>Lower root of a positive definite matrix (Cholesky).</summary>
    public static double[,] Root(double[,] m)
    {
        int n = m.GetLength(0);
        double[,] root = new double[n, n];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double sum = m[i, j];
                for (int k = 0; k < j; k++) sum -= root[i, k] * root[j, k];
                root[i, j] = i == j ? Math.Sqrt(Math.Max(1e-9, sum)) : sum / root[j, j];
            }
        }

        return root;
    }

    /// <summary>Solves m x = right by its root.</summary>
    public static double[] Solve(double[,] m, double[] right)
    {
        double[,] root = Root(m);
        double[] x = (double[])right.Clone();
        for (int i = 0; i < x.Length; i++)
        {
            for (int k = 0; k < i; k++) x[i] -= root[i, k] * x[k];
            x[i] /= root[i, i];
        }

        return SolveUpper(root, x);
    }

    /// <summary>Solves root' x = right: of standard normal draws it makes draws whose covariance is the inverse of the matrix.</summary>
    public static double[] SolveUpper(double[,] root, double[] right)
    {
        double[] x = (double[])right.Clone();
        for (int i = x.Length - 1; i >= 0; i--)
        {
            for (int k = i + 1; k < x.Length; k++) x[i] -= root[k, i] * x[k];
            x[i] /= root[i, i];
        }

        return x;
    }
}
