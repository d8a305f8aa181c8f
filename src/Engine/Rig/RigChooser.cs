using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Rig;

/// <summary>Chooses the lightest weight that keeps the bottom.</summary>
public static class RigChooser
{
    /// <summary>Chooses among jigs on one line.</summary>
    /// <param name="candidates">Jigs, at least one; jigs that differ only in mass share their work.</param>
    /// <param name="line">Line.</param>
    /// <param name="conditions">Conditions with their doubt.</param>
    /// <param name="rule">What counts as keeping the bottom.</param>
    /// <param name="samples">Samples of the doubt, 20 to 100000.</param>
    /// <param name="seed">Seed.</param>
    /// <param name="withNeighbours">Whether to work out the next lighter and heavier as well: two thirds of the work.</param>
    /// <exception cref="ArgumentException">There is no candidate.</exception>
    /// <exception cref="RefusedException">A number lies outside <see cref="TowBounds"/>.</exception>
    public static RigChoice Choose(IReadOnlyList<Jig> candidates, FishingLine line, RigConditions conditions, HoldRule rule,
        int samples = 200, ulong seed = 1, bool withNeighbours = true)
    {
        Require.NotNull(candidates);
        Require.NotNull(line);
        Require.NotNull(conditions);
        Require.InRange(samples, 20, 100_000);
        if (candidates.Count == 0) throw new ArgumentException("There is no jig to choose from.", nameof(candidates));

        List<Jig> sorted = [.. candidates];
        sorted.Sort((a, b) => a.MassKg != b.MassKg ? a.MassKg.CompareTo(b.MassKg) : string.CompareOrdinal(a.Name, b.Name));
        Dictionary<Jig, Family> families = [];
        int chosen = -1;
        for (int i = 0; i < sorted.Count && chosen < 0; i++)
            if (sorted[i].MassKg >= Of(families, sorted[i], line, conditions, rule, samples, seed).NeededKg) chosen = i;

        bool holds = chosen >= 0;
        if (!holds) chosen = sorted.Count - 1;
        Jig jig = sorted[chosen];
        Family family = Of(families, jig, line, conditions, rule, samples, seed);
        double quick = WeightNeed.Quick(KindOf(jig), line, conditions, rule).SureKg;
        return new RigChoice
        {
            Chosen = Outlook(jig),
            Lighter = withNeighbours && Neighbour(sorted, chosen, -1) is { } lighter ? Outlook(lighter) : null,
            Heavier = withNeighbours && Neighbour(sorted, chosen, +1) is { } heavier ? Outlook(heavier) : null,
            Reason = !holds ? WeightReason.NothingHolds
                : Neighbour(sorted, chosen, -1) is null && jig.MassKg > 1.3 * family.NeededKg ? WeightReason.LightestOwned
                : family.FeltKg >= family.SureKg ? WeightReason.Feel
                : WeightReason.Hold,
            NeededKg = family.NeededKg,
            Least = family.Least,
            SureShare = quick < LeastMass.LargestKg && family.SureKg < LeastMass.LargestKg ? family.SureKg / quick : 1,
            FeltKg = family.FeltKg,
        };

        // The chance comes from the samples that decide, so that words and choice never disagree.
        WeightOutlook Outlook(Jig of) => WeightOutlook.Of(of, line, conditions, rule, Math.Min(samples, 60), seed) with
        {
            HoldsChance = Of(families, of, line, conditions, rule, samples, seed).Least.ShareBelow(of.MassKg),
        };
    }

    /// <summary>Whether two jigs differ in name and mass only, so that one table serves both.</summary>
    public static bool AreOfOneKind(Jig first, Jig second) => KindOf(Require.NotNull(first)) == KindOf(Require.NotNull(second));

    private static Jig KindOf(Jig jig) => jig with { Name = "", MassKg = 0.014 };

    /// <summary>Standard sizes as jigs of one kind.</summary>
    /// <param name="kind">The jig whose mass is varied.</param>
    /// <param name="sizes">Sizes.</param>
    public static IReadOnlyList<Jig> Standard(Jig kind, IReadOnlyList<StandardWeight> sizes)
    {
        Require.NotNull(kind);
        Require.NotNull(sizes);
        List<Jig> jigs = [];
        foreach (StandardWeight size in sizes) jigs.Add(kind with { Name = size.Label, MassKg = size.MassKg });
        return jigs;
    }

    private static Jig? Neighbour(List<Jig> sorted, int from, int step)
    {
        // A jig of the same weight is no neighbour: what a lighter or heavier one does is the question.
        for (int i = from + step; i >= 0 && i < sorted.Count; i += step)
            if (Math.Abs(Math.Log(sorted[i].MassKg / sorted[from].MassKg)) > 0.03) return sorted[i];
        return null;
    }

    private static Family Of(Dictionary<Jig, Family> families, Jig jig, FishingLine line, RigConditions conditions, HoldRule rule, int samples, ulong seed)
    {
        Jig key = KindOf(jig);
        if (families.TryGetValue(key, out Family? family)) return family;
        SampleDistribution least = WeightNeed.LeastKg(key, line, conditions, rule, samples, seed);
        double felt = LeastMass.MassKg(key, conditions.Tow(key, line), key.Belief.JigFactor(0, 0), rule.FeelShare);
        family = new Family(least, least.Quantile(rule.Confidence), double.IsNaN(felt) ? 2.0 * LeastMass.LargestKg : felt);
        families.Add(key, family);
        return family;
    }

    private sealed record Family(SampleDistribution Least, double SureKg, double FeltKg)
    {
        public double NeededKg => Math.Max(SureKg, FeltKg);
    }
}
