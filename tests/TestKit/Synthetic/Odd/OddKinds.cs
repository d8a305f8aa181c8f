using SecondShore.Engine.Core.Numerics;

namespace SecondShore.TestKit.Synthetic.Odd;

/// <summary>All awkward kinds of files by name.</summary>
public static class OddKinds
{
    /// <summary>The kinds.</summary>
    public static IReadOnlyList<(string Name, Func<SeededRandom, OddSurvey> Make)> All { get; } = [.. OddPositions.All, .. OddValues.All, .. OddLayouts.All, .. OddShapes.All, .. OddRasters.All, .. OddAgencies.All, .. OddMaps.All];

    /// <summary>A file of a kind.</summary>
    public static OddSurvey Make(int kind, ulong seed) => All[kind].Make(new SeededRandom(seed, (ulong)kind + 77));
}
