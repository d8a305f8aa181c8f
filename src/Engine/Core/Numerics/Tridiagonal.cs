namespace SecondShore.Engine.Core.Numerics;

/// <summary>Solves tridiagonal systems in place by elimination without pivoting (Thomas).</summary>
/// <remarks>Safe for the diagonally dominant systems of implicit diffusion; not a general solver.</remarks>
public static class Tridiagonal
{
    /// <summary>
    /// Solves <c>lower[i] x[i-1] + diagonal[i] x[i] + upper[i] x[i+1] = right[i]</c> and leaves x in <paramref name="right"/>.
    /// </summary>
    /// <param name="lower">[n], the first value is not used.</param>
    /// <param name="diagonal">[n], overwritten.</param>
    /// <param name="upper">[n], the last value is not used.</param>
    /// <param name="right">[n], the right-hand side on entry, the solution on return.</param>
    public static void Solve(ReadOnlySpan<double> lower, Span<double> diagonal, ReadOnlySpan<double> upper, Span<double> right)
    {
        int n = right.Length;
        for (int i = 1; i < n; i++)
        {
            double factor = lower[i] / diagonal[i - 1];
            diagonal[i] -= factor * upper[i - 1];
            right[i] -= factor * right[i - 1];
        }

        right[n - 1] /= diagonal[n - 1];
        for (int i = n - 2; i >= 0; i--)
            right[i] = (right[i] - (upper[i] * right[i + 1])) / diagonal[i];
    }
}
