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
        if (n == 0) return;
        // One division a row: the pivot's inverse is kept in the pivot's place.
        double inverse = 1.0 / diagonal[0], above = right[0];
        diagonal[0] = inverse;
        for (int i = 1; i < n; i++)
        {
            double factor = lower[i] * inverse;
            inverse = 1.0 / (diagonal[i] - (factor * upper[i - 1]));
            above = right[i] - (factor * above);
            diagonal[i] = inverse;
            right[i] = above;
        }

        double below = above * inverse;
        right[n - 1] = below;
        for (int i = n - 2; i >= 0; i--)
        {
            below = (right[i] - (upper[i] * below)) * diagonal[i];
            right[i] = below;
        }
    }
}
