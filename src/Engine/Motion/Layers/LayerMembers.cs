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
    public static IReadOnlyList<LayerPair> Reduce(IReadOnlyList<TwoLayers> members, int count = 5) =>
        [.. Courses(members, [], count).Select(c => c[0])];

    /// <summary>
    /// The same classes followed over hours: each hour's means are of the members that still have a step, and a class without any
    /// keeps its last pair.
    /// </summary>
    /// <param name="members">The ensemble of the first hour; may be empty.</param>
    /// <param name="hours">The same members in the hours after it, in the same order; null where a member has no step any more.</param>
    /// <param name="count">Classes, at least 1.</param>
    /// <returns>[class][hour], the first hour first.</returns>
    public static IReadOnlyList<LayerPair[]> Courses(IReadOnlyList<TwoLayers> members, IReadOnlyList<IReadOnlyList<TwoLayers?>> hours,
        int count)
    {
        Require.NotNull(members);
        Require.NotNull(hours);
        Require.InRange(count, 1, 1000);
        double all = 0;
        foreach (TwoLayers member in members) all += Require.NotNegative(member.Weight, nameof(members));
        (List<(int Member, double Share)>[] classes, double total) = Classes(members, count);
        List<LayerPair[]> courses = [];
        foreach (List<(int Member, double Share)> shares in classes)
        {
            double sum = 0;
            foreach ((_, double share) in shares) sum += share;
            if (!(sum > 1e-9)) continue;
            double weight = sum * total / all;
            LayerPair[] course = new LayerPair[hours.Count + 1];
            course[0] = Mean(members, shares, weight)!;
            for (int h = 0; h < hours.Count; h++)
            {
                Require.SameLength(hours[h].Count, members.Count, nameof(hours));
                course[h + 1] = Mean(hours[h], shares, weight) ?? course[h];
            }

            courses.Add(course);
        }

        return courses;
    }

    private static (List<(int Member, double Share)>[] Classes, double Total) Classes(IReadOnlyList<TwoLayers> members, int count)
    {
        List<int> layered = [];
        double total = 0;
        for (int i = 0; i < members.Count; i++)
        {
            if (!IsLayered(members[i])) continue;
            layered.Add(i);
            total += members[i].Weight;
        }

        layered.Sort((a, b) => members[a].UpperM.CompareTo(members[b].UpperM));
        List<(int, double)>[] classes = [.. Enumerable.Range(0, count).Select(_ => new List<(int, double)>())];
        double below = 0;
        foreach (int i in layered)
        {
            // A member that straddles a cut is shared between the classes.
            double left = members[i].Weight / total;
            while (left > 1e-12)
            {
                int k = Math.Min(count - 1, (int)((below + 1e-12) * count));
                double part = k == count - 1 ? left : Math.Min(left, ((k + 1.0) / count) - below);
                classes[k].Add((i, part));
                below += part;
                left -= part;
            }
        }

        return (classes, total);
    }

    private static bool IsLayered(TwoLayers? member) =>
        member is not null && member.Weight > 0 && member.UpperM > 0 && member.LowerDensityKgPerM3 > member.UpperDensityKgPerM3;

    private static LayerPair? Mean(IReadOnlyList<TwoLayers?> members, List<(int Member, double Share)> shares, double weight)
    {
        double sum = 0, upperM = 0, gravity = 0;
        foreach ((int i, double share) in shares)
        {
            if (!IsLayered(members[i])) continue;
            TwoLayers m = members[i]!;
            sum += share;
            upperM += share * m.UpperM;
            gravity += share * PhysicalConstants.GravityMps2 * (m.LowerDensityKgPerM3 - m.UpperDensityKgPerM3) / m.LowerDensityKgPerM3;
        }

        return sum > 0 ? new LayerPair(upperM / sum, gravity / sum, weight) : null;
    }
}
