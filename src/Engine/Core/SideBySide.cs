namespace SecondShore.Engine.Core;

/// <summary>Runs work side by side where the platform has threads, one piece after the other where it has none.</summary>
/// <remarks>What is run must not depend on the order, and bands have a fixed height: the result is the same on one thread as on many.</remarks>
public static class SideBySide
{
    /// <summary>Rows of a band.</summary>
    public static readonly int BandRows = 32;

    private static bool IsAlone => OperatingSystem.IsBrowser() || Environment.ProcessorCount < 2;

    /// <summary>Runs <paramref name="band"/> for every band of the rows of a grid.</summary>
    /// <param name="rows">Rows in all.</param>
    /// <param name="scratch">Makes the work space of a thread.</param>
    /// <param name="band">Works on the rows from a first one to before an end; it must write to no other rows.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static void Bands<T>(int rows, Func<T> scratch, Action<T, int, int> band, CancellationToken cancel)
    {
        Require.NotNull(scratch);
        Require.NotNull(band);
        int bands = (rows + BandRows - 1) / BandRows;
        if (IsAlone || bands < 4)
        {
            T own = scratch();
            for (int b = 0; b < bands; b++)
            {
                cancel.ThrowIfCancellationRequested();
                band(own, b * BandRows, Math.Min(rows, (b + 1) * BandRows));
            }

            return;
        }

        ParallelOptions options = new() { CancellationToken = cancel, MaxDegreeOfParallelism = Environment.ProcessorCount };
        Parallel.For(0, bands, options, scratch, (b, _, own) =>
        {
            band(own, b * BandRows, Math.Min(rows, (b + 1) * BandRows));
            return own;
        }, _ => { });
    }

    /// <summary>Runs two pieces of work that do not touch each other.</summary>
    /// <param name="first">One.</param>
    /// <param name="second">The other.</param>
    /// <param name="cancel">Stops the work between the two, and is what both should ask.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static void Both(Action first, Action second, CancellationToken cancel)
    {
        Require.NotNull(first);
        Require.NotNull(second);
        if (IsAlone)
        {
            first();
            cancel.ThrowIfCancellationRequested();
            second();
            return;
        }

        Parallel.Invoke(new ParallelOptions { CancellationToken = cancel, MaxDegreeOfParallelism = 2 }, first, second);
    }
}
