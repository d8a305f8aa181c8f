using System.Globalization;

namespace SecondShore.Cli.Console;

/// <summary>Progress on standard error: one redrawn line on a terminal, a line per task elsewhere.</summary>
internal sealed class ProgressLine : IProgress<double>, IDisposable
{
    private readonly Surroundings _surroundings;
    private readonly string _task;
    private readonly Lock _lock = new();
    private int _shownPercent = -1;

    public ProgressLine(Surroundings surroundings, string task)
    {
        _surroundings = surroundings;
        _task = task;
        if (!surroundings.ShowsProgress) surroundings.Err.WriteLine($"{task} ...");
    }

    public void Report(double value)
    {
        if (!_surroundings.ShowsProgress) return;
        int percent = (int)Math.Clamp(value * 100.0, 0.0, 100.0);
        lock (_lock)
        {
            if (percent <= _shownPercent) return;
            _shownPercent = percent;
            _surroundings.Err.Write(string.Create(CultureInfo.InvariantCulture, $"\r{_task} {percent,3} %"));
        }
    }

    public void Dispose()
    {
        if (_surroundings.ShowsProgress && _shownPercent >= 0)
            _surroundings.Err.Write("\r" + new string(' ', _task.Length + 8) + "\r");
    }
}
