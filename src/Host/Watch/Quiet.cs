using System.Globalization;

namespace SecondShore.Host.Watch;

/// <summary>Keeps a log from growing without end by what callers do: so many lines of a kind a minute, and then how many were left out.</summary>
internal sealed class Quiet(TimeProvider clock)
{
    private static readonly int LinesPerMinute = 30;

    private readonly Lock _lock = new();
    private DateTimeOffset _minute;
    private int _lines;

    /// <summary>Writes a line, unless too many were written in this minute.</summary>
    public void Write(ILogger log, Action line)
    {
        int left = 0;
        lock (_lock)
        {
            DateTimeOffset now = clock.GetUtcNow();
            if (now - _minute >= TimeSpan.FromMinutes(1) || now < _minute)
            {
                left = Math.Max(0, _lines - LinesPerMinute);
                (_minute, _lines) = (now, 0);
            }

            if (++_lines > LinesPerMinute) return;
        }

        if (left > 0) log.LogWarning("{Left} more lines like the next one were left out.", left.ToString(CultureInfo.InvariantCulture));
        line();
    }
}
