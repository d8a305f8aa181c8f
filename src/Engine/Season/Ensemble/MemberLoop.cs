namespace SecondShore.Engine.Season;

/// <summary>Runs members side by side where the machine can, one after the other in a browser.</summary>
internal static class MemberLoop
{
    /// <summary>Runs <paramref name="body"/> for 0 to <paramref name="count"/> - 1; reports shares from <paramref name="from"/> to <paramref name="to"/>.</summary>
    public static void Run(int count, Action<int> body, IProgress<double>? progress, double from, double to, CancellationToken cancel)
    {
        int done = 0;
        if (OperatingSystem.IsBrowser() || Environment.ProcessorCount < 2)
        {
            for (int i = 0; i < count; i++)
            {
                cancel.ThrowIfCancellationRequested();
                body(i);
                progress?.Report(from + ((to - from) * (i + 1) / count));
            }

            return;
        }

        Parallel.For(0, count, new ParallelOptions { CancellationToken = cancel, MaxDegreeOfParallelism = Environment.ProcessorCount }, i =>
        {
            body(i);
            int now = Interlocked.Increment(ref done);
            if (progress is not null && now % 8 == 0) progress.Report(from + ((to - from) * now / count));
        });
    }
}
