namespace SecondShore.Engine.Season;

/// <summary>
/// Medians of one quantity over the members, again and again: the order found last is the first guess of the next, so that values that
/// change little from depth to depth are hardly sorted at all. The median of <see cref="Core.Numerics.SampleDistribution"/>.
/// </summary>
/// <param name="weights">Weights of the members, sum 1.</param>
internal sealed class MemberMedian(double[] weights)
{
    private readonly int[] _order = [.. Enumerable.Range(0, weights.Length).Where(i => weights[i] > 0)];

    /// <summary>A value for each member; write before <see cref="Take"/>.</summary>
    public float[] Values { get; } = new float[weights.Length];

    /// <summary>The weighted median of <see cref="Values"/>.</summary>
    public float Take()
    {
        float[] values = Values;
        int[] order = _order;
        for (int i = 1; i < order.Length; i++)
        {
            int member = order[i], at = i;
            float value = values[member];
            while (at > 0 && values[order[at - 1]] > value) order[at] = order[--at];
            order[at] = member;
        }

        double below = 0, middle = 0;
        for (int i = 0; i < order.Length; i++)
        {
            double weight = weights[order[i]], before = middle;
            middle = below + (0.5 * weight);
            below += weight;
            if (middle < 0.5) continue;
            if (i == 0) break;
            float lower = values[order[i - 1]], upper = values[order[i]];
            return (float)(lower + ((0.5 - before) / (middle - before) * (upper - lower)));
        }

        return values[order[middle < 0.5 ? ^1 : 0]];
    }
}
