using SecondShore.Engine.Core;

namespace SecondShore.Engine.Rig;

/// <summary>What counts as keeping the bottom.</summary>
public readonly record struct HoldRule
{
    /// <summary>Makes a rule.</summary>
    /// <param name="confidence">Share of the doubt within which the jig must stay down, 0.5 to 0.99.</param>
    /// <param name="leastShare">Share of its weight that it must then still leave on the bottom, 0 to 0.5.</param>
    /// <param name="feelShare">Share of its weight that it must leave there in the middle case, so that the bottom is felt, 0 to 0.8.</param>
    public HoldRule(double confidence, double leastShare, double feelShare)
    {
        Confidence = Require.InRange(confidence, 0.5, 0.99);
        LeastShare = Require.InRange(leastShare, 0.0, 0.5);
        FeelShare = Require.InRange(feelShare, 0.0, 0.8);
    }

    /// <summary>Nine times in ten no skipping (0.1 of its weight), and a clear feel in the middle case (0.3).</summary>
    public static HoldRule Usual { get; } = new(0.9, 0.1, 0.3);

    /// <summary>Share of the doubt within which the jig must stay down.</summary>
    public double Confidence { get; }

    /// <summary>Share of its weight that the jig must then still leave on the bottom.</summary>
    public double LeastShare { get; }

    /// <summary>Share of its weight that the jig must leave on the bottom in the middle case.</summary>
    public double FeelShare { get; }
}
