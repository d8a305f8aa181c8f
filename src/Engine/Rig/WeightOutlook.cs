using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Rig;

/// <summary>What one jig would do under the conditions, with its doubt.</summary>
public sealed record WeightOutlook
{
    /// <summary>The jig.</summary>
    public required Jig Jig { get; init; }

    /// <summary>Chance that it leaves the rule's least share of its weight on the bottom, 0 to 1.</summary>
    public required double HoldsChance { get; init; }

    /// <summary>Share of its weight on the bottom.</summary>
    public required Spread OnBottomShare { get; init; }

    /// <summary>Height over the bottom, m: 0 while it stays down.</summary>
    public required Spread HeightM { get; init; }

    /// <summary>Time to the bottom on slack line, s; infinity where the line stops the fall.</summary>
    public required Spread FallS { get; init; }

    /// <summary>Time to the bottom on tight line from level, s.</summary>
    public required double TightFallS { get; init; }

    /// <summary>Fastest drag speed that still holds, m s-1. P10 is the careful figure.</summary>
    public required Spread FastestMps { get; init; }

    /// <summary>Least line out that still holds, m; 400 stands for more. P90 is the careful figure.</summary>
    public required Spread LeastLineM { get; init; }

    /// <summary>Angle of the line below level at the water, rad.</summary>
    public required Spread LineAngleRad { get; init; }

    /// <summary>The middle case, solved.</summary>
    public required TowResult Middle { get; init; }

    /// <summary>Works one jig out over the doubt.</summary>
    /// <param name="jig">Jig.</param>
    /// <param name="line">Line.</param>
    /// <param name="conditions">Conditions.</param>
    /// <param name="rule">What counts as keeping the bottom.</param>
    /// <param name="samples">Samples.</param>
    /// <param name="seed">Seed: the same for jigs that are compared, so that they meet the same water.</param>
    /// <exception cref="RefusedException">A number lies outside <see cref="TowBounds"/>.</exception>
    public static WeightOutlook Of(Jig jig, FishingLine line, RigConditions conditions, HoldRule rule, int samples = 60, ulong seed = 1)
    {
        TowCase middle = WeightNeed.Checked(jig, line, conditions);
        FallCase drop = FallCase.Of(jig, line, conditions);
        RigDraw[] draws = RigDraw.Hypercube(samples, seed);
        double[] shares = new double[samples], heights = new double[samples], falls = new double[samples], angles = new double[samples];
        int held = 0;
        for (int i = 0; i < samples; i++)
        {
            double factor = draws[i].JigFactor(jig.Belief);
            TowCase tow = draws[i].Tow(middle, jig.Belief, line, conditions) with { JigDragAreaM2 = Math.Min(jig.DragAreaM2() * factor, 0.01) };
            TowResult result = TowSolver.SolveTrusted(tow, WeightNeed.QuickSteps, default, out _);
            shares[i] = result.WeightOnBottomShare;
            heights[i] = result.HeightOverBottomM;
            angles[i] = result.LineAngleRad;
            if (result.WeightOnBottomShare >= rule.LeastShare) held++;
            falls[i] = Math.Min(FallSolver.SolveTrusted(
                drop with { DepthM = tow.DepthM, DragAreaM2 = tow.JigDragAreaM2, LineDiameterM = tow.LineDiameterM },
                tow.Current ?? CurrentProfile.Still, FallSolver.SampledLevels).TimeS, 3600);
        }

        (SampleDistribution fastest, SampleDistribution leastLine) = HoldLimits.UnderDoubt(jig, line, conditions, rule, samples, seed);
        return new WeightOutlook
        {
            Jig = jig,
            HoldsChance = (double)held / samples,
            OnBottomShare = SampleDistribution.Of(shares).Spread,
            HeightM = SampleDistribution.Of(heights).Spread,
            FallS = SampleDistribution.Of(falls).Spread,
            TightFallS = SwingSolver.TimeToBottomS(drop, middle.LineOutM, middle.DepthM + middle.TipHeightM),
            FastestMps = fastest.Spread,
            LeastLineM = leastLine.Spread,
            LineAngleRad = SampleDistribution.Of(angles).Spread,
            Middle = TowSolver.SolveTrusted(middle, TowSolver.DefaultSteps, default, out _),
        };
    }
}
