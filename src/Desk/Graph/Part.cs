namespace SecondShore.Desk.Graph;

/// <summary>A piece of work's share of the whole, told to the page.</summary>
/// <param name="tray">Who is told.</param>
/// <param name="step">The step, one of <see cref="Steps"/>.</param>
/// <param name="from">Share done when it begins.</param>
/// <param name="to">Share done when it ends.</param>
internal sealed class Part(ITray tray, string step, double from, double to) : IProgress<double>
{
    private double _told = -1;

    /// <inheritdoc/>
    public void Report(double value)
    {
        if (value - _told < 0.01 && value < 1) return;
        _told = value;
        tray.Progress(from + ((to - from) * value), step);
    }
}
