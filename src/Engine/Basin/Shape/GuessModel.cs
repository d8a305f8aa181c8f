using SecondShore.Engine.Core.Grid;

namespace SecondShore.Engine.Basin.Shape;

/// <summary>A guessed bottom as a law of chance: a mean by water cell, whole-lake errors and local ones. Treated as immutable.</summary>
/// <remarks>
/// Two errors of neighbouring places are alike for two reasons: the lake as a whole may be deeper or more bowl-shaped than guessed
/// (<see cref="ModesM"/>, known as soon as a few depths are), and a hollow is as wide as it is (<see cref="LocalSdM"/> with the
/// range). Their sum is a covariance, as kriging needs it.
/// </remarks>
internal sealed class GuessModel
{
    /// <summary>Frame of the grid.</summary>
    public required GridFrame Frame { get; init; }

    /// <summary>Index in the frame of each water cell.</summary>
    public required int[] Cells { get; init; }

    /// <summary>[Ny*Nx] place of a cell in <see cref="Cells"/>, -1 on land.</summary>
    public required int[] IndexOf { get; init; }

    /// <summary>Likeliest depth by water cell, m.</summary>
    public required float[] MeanM { get; init; }

    /// <summary>Whole-lake errors: each an array by water cell, m, that may be added or taken once, normally distributed.</summary>
    public required float[][] ModesM { get; init; }

    /// <summary>Standard error by water cell that is the place's own, m.</summary>
    public required float[] LocalSdM { get; init; }

    /// <summary>Distance beyond which local errors know nothing of each other, m.</summary>
    public required double RangeM { get; init; }

    /// <summary>Share of a local error's variance that its neighbours do not share.</summary>
    public required double RoughShare { get; init; }

    /// <summary>Variance of the depth of a water cell, m2.</summary>
    public double VarianceM2(int k)
    {
        double sum = (double)LocalSdM[k] * LocalSdM[k];
        foreach (float[] mode in ModesM) sum += (double)mode[k] * mode[k];
        return sum;
    }

    /// <summary>Covariance of the errors of two different water cells, m2.</summary>
    public double CovarianceM2(int a, int b)
    {
        double sum = 0;
        foreach (float[] mode in ModesM) sum += (double)mode[a] * mode[b];
        int i = Cells[a], j = Cells[b], nx = Frame.Nx;
        double dx = (i % nx) - (j % nx), dy = (i / nx) - (j / nx), h = Math.Sqrt((dx * dx) + (dy * dy)) * Frame.CellM / RangeM;
        return h >= 1 ? sum : sum + ((1 - RoughShare) * LocalSdM[a] * LocalSdM[b] * (1 - (h * (1.5 - (0.5 * h * h)))));
    }

    /// <summary>Covariances of one water cell with all of them, m2.</summary>
    public void CovariancesM2(int with, Span<float> into)
    {
        int i = Cells[with], nx = Frame.Nx;
        float x = i % nx, y = i / nx, scale = (float)(Frame.CellM / RangeM), local = (float)(1 - RoughShare) * LocalSdM[with];
        for (int k = 0; k < into.Length; k++)
        {
            int j = Cells[k];
            float dx = (j % nx) - x, dy = (j / nx) - y, h = MathF.Sqrt((dx * dx) + (dy * dy)) * scale;
            into[k] = h >= 1 ? 0 : local * LocalSdM[k] * (1 - (h * (1.5f - (0.5f * h * h))));
        }

        foreach (float[] mode in ModesM)
        {
            float at = mode[with];
            for (int k = 0; k < into.Length; k++) into[k] += at * mode[k];
        }
    }
}
