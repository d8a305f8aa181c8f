namespace SecondShore.Weather.Tests;

/// <summary>A clock that stands at an instant; timers run with the real one.</summary>
internal sealed class FixedClock(DateTimeOffset now) : TimeProvider
{
    public override DateTimeOffset GetUtcNow() => now;
}
