using SecondShore.Engine.Core;

namespace SecondShore.Engine.Basin.Shore;

/// <summary>Depth contours for the map.</summary>
public static class Contours
{
    /// <summary>Traces lines of equal depth. Lines run into the shore's cells, where a wall gathers them; they are closed
    /// unless the soundings end before the water does.</summary>
    /// <param name="grid">Depths.</param>
    /// <param name="levelsM">Depths to trace, m, 0 or more; 0 is the shoreline.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns>Lines, level by level.</returns>
    public static IReadOnlyList<DepthContour> Trace(DepthGrid grid, IReadOnlyList<double> levelsM, CancellationToken cancel = default)
    {
        Require.NotNull(grid);
        Require.NotNull(levelsM);
        ContourTracer tracer = new(ContourField.Of(grid));
        List<DepthContour> lines = [];
        foreach (double levelM in levelsM)
        {
            cancel.ThrowIfCancellationRequested();
            tracer.Trace(Require.NotNegative(levelM, nameof(levelsM)), lines);
        }

        return lines;
    }

    /// <summary>Evenly spaced levels from one step down to the deepest water.</summary>
    /// <param name="grid">Depths.</param>
    /// <param name="stepM">Step, m.</param>
    public static IReadOnlyList<double> LevelsM(DepthGrid grid, double stepM)
    {
        Require.NotNull(grid);
        Require.Positive(stepM);
        float deepestM = 0;
        foreach (float depthM in grid.DepthM) if (depthM > deepestM) deepestM = depthM;
        List<double> levelsM = [];
        for (int k = 1; k * stepM < deepestM && k <= 10_000; k++) levelsM.Add(k * stepM);
        return levelsM;
    }
}
