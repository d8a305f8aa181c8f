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
}
