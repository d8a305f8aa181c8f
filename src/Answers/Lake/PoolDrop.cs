using SecondShore.Engine.Season;

namespace SecondShore.Answers.Lake;

/// <summary>How far the surface lies below full pool at an instant.</summary>
public static class PoolDrop
{
    /// <summary>Linear between the levels on file, held before the first and after the last; 0 without any.</summary>
    /// <param name="levels">Levels in order of time.</param>
    /// <param name="at">The instant.</param>
    /// <returns>Metres below full pool, negative above it.</returns>
    public static double AtM(IReadOnlyList<PoolLevel> levels, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(levels);
        if (levels.Count == 0) return 0;
        int after = 0;
        while (after < levels.Count && levels[after].At <= at) after++;
        if (after == 0) return levels[0].BelowFullPoolM;
        if (after == levels.Count) return levels[^1].BelowFullPoolM;
        PoolLevel before = levels[after - 1], next = levels[after];
        double share = (at - before.At) / (next.At - before.At);
        return before.BelowFullPoolM + (share * (next.BelowFullPoolM - before.BelowFullPoolM));
    }
}
