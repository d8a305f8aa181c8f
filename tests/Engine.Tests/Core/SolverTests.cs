using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Tests.Core;

public class SolverTests
{
    [Fact]
    public void Tridiagonal_solution_satisfies_its_equations()
    {
        double[] lower = [0, -1, -2, -1], diagonal = [4, 5, 6, 5], upper = [-1, -1, -3, 0], x = [1, -2, 3, 0.5];
        double[] right = new double[4];
        for (int i = 0; i < 4; i++)
            right[i] = (i > 0 ? lower[i] * x[i - 1] : 0) + (diagonal[i] * x[i]) + (i < 3 ? upper[i] * x[i + 1] : 0);
        Tridiagonal.Solve(lower, diagonal, upper, right);
        for (int i = 0; i < 4; i++) Assert.Equal(x[i], right[i], 1e-12);
    }

    [Fact]
    public void Brent_finds_the_known_root_of_sinh_y_over_y()
    {
        // sinh(y)/y = 1.5 at y = 1.62213 (scope 1.5 of a dragless jig).
        double y = Brent.FindRoot(v => (Math.Sinh(v) / v) - 1.5, 0.1, 5, 1e-12);
        Assert.Equal(1.62213, y, 1e-5);
    }

    [Fact]
    public void Brent_says_no_without_a_bracket()
    {
        Assert.False(Brent.TryFindRoot(v => (v * v) + 1, -1, 1, 1e-9, out _));
        InvalidOperationException e = Assert.Throws<InvalidOperationException>(() => Brent.FindRoot(v => (v * v) + 1, -1, 1, 1e-9));
        Assert.Contains("between -1", e.Message, StringComparison.Ordinal);
    }
}
