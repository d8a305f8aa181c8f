using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Rig;

/// <summary>How fast a jig may be dragged, and how little line will do, before it stops keeping the bottom.</summary>
public static class HoldLimits
{
    /// <summary>Fastest drag speed at which a share of the jig's weight stays on the bottom, m s-1; 0 when no speed does, 3 at most.</summary>
    /// <param name="tow">The tow; its speed is where the search starts.</param>
    /// <param name="share">Share of weight on the bottom, 0 to 0.9.</param>
    /// <exception cref="RefusedException">The tow lies outside <see cref="TowBounds"/>.</exception>
    public static double FastestMps(in TowCase tow, double share)
    {
        TowBounds.Require(tow);
        return FastestTrusted(tow, Require.InRange(share, 0.0, 0.9), TowSolver.DefaultSteps);
    }

    /// <summary>Least line out at which a share of the jig's weight stays on the bottom, m; infinity when none does up to 400 m.</summary>
    /// <param name="tow">The tow; its line out is not used.</param>
    /// <param name="share">Share of weight on the bottom, 0 to 0.9.</param>
    /// <exception cref="RefusedException">The tow lies outside <see cref="TowBounds"/>.</exception>
    public static double LeastLineM(in TowCase tow, double share)
    {
        TowBounds.Require(tow);
        return LeastLineTrusted(tow, Require.InRange(share, 0.0, 0.9), TowSolver.DefaultSteps);
    }

    /// <summary>Both limits over the doubt.</summary>
    /// <param name="jig">Jig.</param>
    /// <param name="line">Line.</param>
    /// <param name="conditions">Conditions.</param>
    /// <param name="rule">What counts as keeping the bottom.</param>
    /// <param name="samples">Samples.</param>
    /// <param name="seed">Seed.</param>
    /// <returns>Fastest speed of the boat, m s-1, and least line out, m (400 stands for more).</returns>
    public static (SampleDistribution FastestMps, SampleDistribution LeastLineM) UnderDoubt(Jig jig, FishingLine line,
        RigConditions conditions, HoldRule rule, int samples = 60, ulong seed = 1)
    {
        TowCase middle = WeightNeed.Checked(jig, line, conditions);
        RigDraw[] draws = RigDraw.Hypercube(samples, seed);
        double[] speeds = new double[samples], lines = new double[samples];
        for (int i = 0; i < samples; i++)
        {
            TowCase tow = draws[i].Tow(middle, jig.Belief, line, conditions) with { JigDragAreaM2 = jig.DragAreaM2() * draws[i].JigFactor(jig.Belief) };
            // A boat meant to do one speed does another; what it may mean to do is that much less or more.
            speeds[i] = Math.Max(FastestTrusted(tow, rule.LeastShare, WeightNeed.QuickSteps) - (conditions.SpeedSdMps * draws[i].Speed), 0);
            lines[i] = Math.Min(LeastLineTrusted(tow, rule.LeastShare, WeightNeed.QuickSteps), 400);
        }

        return (SampleDistribution.Of(speeds), SampleDistribution.Of(lines));
    }

    private static double FastestTrusted(in TowCase tow, double share, int steps)
    {
        SpeedShot shot = new(tow, share, steps);
        double slow = tow.SpeedMps, at = shot.At(slow);
        if (at < 0)
        {
            // Slower than this, or with the water: the speed of the current along the track is where the line hangs freest.
            (tow.Current ?? CurrentProfile.Still).At(tow.DepthM * 0.5, out double along, out _);
            slow = Math.Clamp(along, 0, tow.SpeedMps);
            at = shot.At(slow);
            if (at < 0) return 0;
        }

        double fast = Math.Min(Math.Max(slow * 1.6, 0.3), 3), atFast = shot.At(fast);
        while (atFast > 0 && fast < 3)
        {
            slow = fast;
            at = atFast;
            fast = Math.Min(fast * 1.6, 3);
            atFast = shot.At(fast);
        }

        return atFast >= 0 ? fast : BracketedRoot.Find(ref shot, slow, at, fast, atFast, double.NaN, 1e-5, 1e-6 * tow.DepthM);
    }

    private static double LeastLineTrusted(in TowCase tow, double share, int steps)
    {
        LineShot shot = new(tow, share, steps);
        double shorter = tow.DepthM + tow.TipHeightM, at = shot.At(shorter), longer = shorter, atLonger = at;
        if (at >= 0) return shorter;
        while (atLonger < 0 && longer < 400)
        {
            shorter = longer;
            at = atLonger;
            longer = Math.Min(longer * 1.5, 400);
            atLonger = shot.At(longer);
        }

        return atLonger < 0
            ? double.PositiveInfinity
            : BracketedRoot.Find(ref shot, shorter, at, longer, atLonger, double.NaN, 1e-4, 1e-6 * tow.DepthM);
    }

    private struct SpeedShot(in TowCase tow, double share, int steps) : IResidual
    {
        private readonly TowCase _tow = tow;

        public readonly double At(double x) => Residual(_tow with { SpeedMps = x }, share, steps);
    }

    private struct LineShot(in TowCase tow, double share, int steps) : IResidual
    {
        private readonly TowCase _tow = tow;

        public readonly double At(double x) => Residual(_tow with { LineOutM = x }, share, steps);
    }

    private static double Residual(in TowCase tow, double share, int steps)
    {
        TowSetup setup = new(tow, steps);
        JigForces forces = new(tow, setup);
        return HeightKernel.ResidualM(setup, forces.Start(share * tow.JigWeightN, 0), tow.LineOutM);
    }
}
