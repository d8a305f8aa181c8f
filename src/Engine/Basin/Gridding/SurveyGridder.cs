using SecondShore.Engine.Core;

namespace SecondShore.Engine.Basin.Gridding;

/// <summary>From everything measured of a lake's bottom to one depth grid at full pool.</summary>
public static class SurveyGridder
{
    /// <summary>Grids a survey. Never throws for what a survey holds: where it gives no lake the result says why.</summary>
    /// <param name="survey">Soundings, contours, rasters and shoreline, in any mixture.</param>
    /// <param name="options">Wishes; null leaves everything to the gridder.</param>
    /// <param name="progress">Share done, 0 to 1.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns>The lake with what was done and assumed, or a refusal in one sentence.</returns>
    /// <exception cref="ArgumentException">The options contradict each other: a frame without its plane.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static GriddedLake Grid(
        Survey survey, GridOptions? options = null, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        Require.NotNull(survey);
        options ??= GridOptions.Default;
        if (options.Frame is not null && options.Projection is null)
            throw new ArgumentException("A frame needs the plane it lies in: give Projection as well.", nameof(options));
        if (options.CellM is double cellM) Require.Positive(cellM, nameof(options));
        Require.InRange(options.MaxCells, 100, Core.Grid.GridFrame.MaxCells, nameof(options));
        GriddedLake lake = new GriddingRun(survey, options, progress, cancel).Run();
        progress?.Report(1);
        return lake;
    }
}
