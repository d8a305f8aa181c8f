namespace SecondShore.Engine.Core.Grid;

/// <summary>Runs work on the rows of a grid in bands of fixed height, side by side where the platform has threads.</summary>
/// <remarks>Bands do not depend on the number of threads, so work that starts anew in each band gives the same result on one as on many.</remarks>
public static class RowBands
{
    /// <summary>Rows of a band.</summary>
    public static readonly int Height = 32;

    /// <summary>Runs <paramref name="band"/> for every band.</summary>
    /// <param name="rows">Rows in all.</param>
    /// <param name="scratch">Makes the work space of a thread.</param>
    /// <param name="band">Works on the rows from a first one to before an end; it must write to no other rows.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static void Run<T>(int rows, Func<T> scratch, Action<T, int, int> band, CancellationToken cancel)
    {
        Require.NotNull(scratch);
        Require.NotNull(band);
        int bands = (rows + Height - 1) / Height;
        if (OperatingSystem.IsBrowser() || Environment.ProcessorCount < 2 || bands < 4)
        {
            T own = scratch();
            for (int b = 0; b < bands; b++)
            {
                cancel.ThrowIfCancellationRequested();
                band(own, b * Height, Math.Min(rows, (b + 1) * Height));
            }

            return;
        }

        ParallelOptions options = new() { CancellationToken = cancel, MaxDegreeOfParallelism = Environment.ProcessorCount };
        Parallel.For(0, bands, options, scratch, (b, _, own) =>
        {
            band(own, b * Height, Math.Min(rows, (b + 1) * Height));
            return own;
        }, _ => { });
    }
}
