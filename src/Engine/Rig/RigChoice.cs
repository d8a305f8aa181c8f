using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Rig;

/// <summary>Why a weight was asked for.</summary>
public enum WeightReason
{
    /// <summary>So that it stays down at the wanted confidence.</summary>
    Hold,

    /// <summary>So that the bottom is felt in the middle case; it would stay down with less.</summary>
    Feel,

    /// <summary>It is the lightest there is; less would do.</summary>
    LightestOwned,

    /// <summary>Nothing that there is holds; the heaviest is shown.</summary>
    NothingHolds,
}

/// <summary>What to tie on, and what its neighbours would do.</summary>
public sealed record RigChoice
{
    /// <summary>The lightest jig that meets the rule, or the heaviest when none does.</summary>
    public required WeightOutlook Chosen { get; init; }

    /// <summary>The next lighter, or null.</summary>
    public required WeightOutlook? Lighter { get; init; }

    /// <summary>The next heavier, or null.</summary>
    public required WeightOutlook? Heavier { get; init; }

    /// <summary>Whether any meets the rule.</summary>
    public bool Holds => Reason != WeightReason.NothingHolds;

    /// <summary>What decided.</summary>
    public required WeightReason Reason { get; init; }

    /// <summary>Mass that the rule asks for, kg, for the chosen jig's shape; 2 stands for more than can be.</summary>
    public required double NeededKg { get; init; }

    /// <summary>Least mass over the doubt, kg, for the chosen jig's shape.</summary>
    public required SampleDistribution Least { get; init; }

    /// <summary>The same in three numbers.</summary>
    public Spread LeastKg => Least.Spread;

    /// <summary>What the samples make of the quick law at these conditions, 1 where they agree: tables take it along, so that
    /// table and choice are one answer.</summary>
    public required double SureShare { get; init; }

    /// <summary>Chance that a mass of the chosen jig's shape keeps the bottom.</summary>
    /// <param name="massKg">Mass of head, kg.</param>
    public double HoldsChance(double massKg) => Least.ShareBelow(massKg);

    /// <summary>Mass at which the bottom is felt in the middle case, kg; 2 stands for more than can be.</summary>
    public required double FeltKg { get; init; }
}
