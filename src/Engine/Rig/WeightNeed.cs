using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Rig;

/// <summary>Weight that keeps the bottom under doubt, by samples or by a quick straight-line law for tables.</summary>
public static class WeightNeed
{
    /// <summary>Least mass of head over the doubt, kg, at the rule's least share on the bottom. A case that no mass up to
    /// <see cref="LeastMass.LargestKg"/> holds counts as twice that.</summary>
    /// <param name="jig">The jig whose head is scaled.</param>
    /// <param name="line">Line.</param>
    /// <param name="conditions">Conditions.</param>
    /// <param name="rule">What counts as keeping the bottom.</param>
    /// <param name="samples">Samples, 1 to 100000.</param>
    /// <param name="seed">Seed.</param>
    /// <exception cref="RefusedException">A number lies outside <see cref="TowBounds"/>.</exception>
    public static SampleDistribution LeastKg(Jig jig, FishingLine line, RigConditions conditions, HoldRule rule, int samples = 200, ulong seed = 1)
    {
        TowCase middle = Checked(jig, line, conditions);
        RigDraw[] draws = RigDraw.Hypercube(samples, seed);
        double[] masses = new double[draws.Length];
        double guess = LeastMass.MassKgTrusted(jig, middle, jig.Belief.JigFactor(0, 0), rule.LeastShare, double.NaN, TowSolver.DefaultSteps);
        for (int i = 0; i < draws.Length; i++)
        {
            TowCase tow = draws[i].Tow(middle, jig.Belief, line, conditions);
            double kg = LeastMass.MassKgTrusted(jig, tow, draws[i].JigFactor(jig.Belief), rule.LeastShare, guess, TowSolver.DefaultSteps);
            masses[i] = double.IsNaN(kg) ? 2.0 * LeastMass.LargestKg : kg;
        }

        return SampleDistribution.Of(masses);
    }

    /// <summary>Mass of head that the rule asks for, kg, quickly: one solution a doubt, each moved by one standard deviation,
    /// added as if ln(mass) were linear in them. Infinity when no mass does.</summary>
    /// <param name="jig">The jig whose head is scaled.</param>
    /// <param name="line">Line.</param>
    /// <param name="conditions">Conditions.</param>
    /// <param name="rule">What counts as keeping the bottom.</param>
    /// <param name="sureShare">What samples made of this law where they were taken (<see cref="RigChoice.SureShare"/>); 1 for the law alone.</param>
    /// <exception cref="RefusedException">A number lies outside <see cref="TowBounds"/>.</exception>
    public static double QuickKg(Jig jig, FishingLine line, RigConditions conditions, HoldRule rule, double sureShare = 1)
    {
        (double sure, double felt) = Quick(jig, line, conditions, rule);
        return Math.Max(sure * sureShare, felt);
    }

    /// <summary>The two parts of <see cref="QuickKg"/>: mass that stays down at the wanted confidence, and mass that is felt, kg.</summary>
    internal static (double SureKg, double FeltKg) Quick(Jig jig, FishingLine line, RigConditions conditions, HoldRule rule)
    {
        TowCase middle = Checked(jig, line, conditions);
        double factor = jig.Belief.JigFactor(0, 0);
        double held = LeastMass.MassKgTrusted(jig, middle, factor, rule.LeastShare, double.NaN, QuickSteps);
        if (double.IsNaN(held)) return (double.PositiveInfinity, double.PositiveInfinity);
        double felt = LeastMass.MassKgTrusted(jig, middle, factor, rule.FeelShare, held, QuickSteps);
        if (double.IsNaN(felt)) return (double.PositiveInfinity, double.PositiveInfinity);

        double variance = 0;
        for (int kind = 0; kind < RigDraw.Kinds; kind++)
        {
            if (!Doubtful(kind, conditions)) continue;
            RigDraw draw = RigDraw.Single(kind, 1);
            double kg = LeastMass.MassKgTrusted(jig, draw.Tow(middle, jig.Belief, line, conditions), draw.JigFactor(jig.Belief),
                rule.LeastShare, held, QuickSteps);
            double change = Math.Log((double.IsNaN(kg) ? 2.0 * LeastMass.LargestKg : kg) / held);
            variance += change * change;
        }

        return (held * Math.Exp(NormalLaw.Quantile(rule.Confidence) * Math.Sqrt(variance)), felt);
    }

    internal static readonly int QuickSteps = 12;

    internal static TowCase Checked(Jig jig, FishingLine line, RigConditions conditions)
    {
        Require.NotNull(conditions);
        Require.NotNegative(conditions.DepthSdM);
        Require.NotNegative(conditions.SpeedSdMps);
        Require.NotNegative(conditions.CurrentSdMps);
        TowCase middle = conditions.Tow(jig, line);
        TowBounds.Require(middle);
        return middle;
    }

    private static bool Doubtful(int kind, RigConditions conditions) => kind switch
    {
        4 => conditions.DepthSdM > 0,
        5 => conditions.SpeedSdMps > 0,
        6 => conditions.CurrentSdMps > 0,
        _ => true,
    };
}
