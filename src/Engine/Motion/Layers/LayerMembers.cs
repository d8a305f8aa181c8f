using SecondShore.Engine.Core;
using SecondShore.Engine.Season;

namespace SecondShore.Engine.Motion.Layers;

/// <summary>Few pairs of layers that stand for an ensemble.</summary>
public static class LayerMembers
{
    /// <summary>
    /// Sorts the members by the thickness of the upper layer, cuts them into classes of equal weight and takes each class's
    /// weighted means. Members without a density step count to the weight but give no pair.
    /// </summary>
    /// <param name="members">The ensemble; may be empty.</param>
    /// <param name="count">Classes, at least 1.</param>
    /// <returns>Thinnest first; weights sum to the weight of members with a step, 1 if all have one. Empty when none has.</returns>
    public static IReadOnlyList<LayerPair> Reduce(IReadOnlyList<TwoLayers> members, int count = 5)
    {
        Require.NotNull(members);
        Require.InRange(count, 1, 1000);
        List<TwoLayers> layered = [];
        double total = 0, all = 0;
        foreach (TwoLayers member in members)
        {
            all += Require.NotNegative(member.Weight, nameof(members));
            if (!(member.Weight > 0) || !(member.UpperM > 0) || !(member.LowerDensityKgPerM3 > member.UpperDensityKgPerM3)) continue;
            layered.Add(member);
            total += member.Weight;
        }

        layered.Sort((a, b) => a.UpperM.CompareTo(b.UpperM));
        double[] weights = new double[count], uppersM = new double[count], gravities = new double[count];
        double below = 0;
        foreach (TwoLayers member in layered)
        {
            double gravity = PhysicalConstants.GravityMps2 * (member.LowerDensityKgPerM3 - member.UpperDensityKgPerM3) / member.LowerDensityKgPerM3;
            // A member that straddles a cut is shared between the classes.
            double left = member.Weight / total;
            while (left > 1e-12)
            {
                int k = Math.Min(count - 1, (int)((below + 1e-12) * count));
                double part = k == count - 1 ? left : Math.Min(left, ((k + 1.0) / count) - below);
                weights[k] += part;
                uppersM[k] += part * member.UpperM;
                gravities[k] += part * gravity;
                below += part;
                left -= part;
            }
        }

        List<LayerPair> pairs = [];
        for (int k = 0; k < count; k++)
            if (weights[k] > 1e-9) pairs.Add(new LayerPair(uppersM[k] / weights[k], gravities[k] / weights[k], weights[k] * total / all));
        return pairs;
    }
}
