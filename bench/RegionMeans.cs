namespace SecondShore.Bench;

/// <summary>Means of the lakes of each region, in order: lakes that share their weather count as one.</summary>
internal sealed class RegionMeans
{
    private readonly double[] _means;

    private RegionMeans(double[] means) => _means = means;

    public int Count => _means.Length;

    public double Median => 0.5 * (_means[(Count - 1) / 2] + _means[Count / 2]);

    public double Mean => _means.Average();

    /// <summary>Of lakes' figures; null where no lake has one.</summary>
    public static RegionMeans? Of(IReadOnlyList<int> regions, Func<int, double?> ofLake)
    {
        double[] means = [.. Enumerable.Range(0, regions.Count).Where(i => ofLake(i) is not null)
            .GroupBy(i => regions[i]).Select(g => g.Average(i => ofLake(i)!.Value)).Order()];
        return means.Length == 0 ? null : new RegionMeans(means);
    }
}
