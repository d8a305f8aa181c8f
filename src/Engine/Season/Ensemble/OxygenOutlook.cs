using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Season;

/// <summary>What members say of oxygen, and what may be said of it.</summary>
public static class OxygenOutlook
{
    /// <summary>Share of members from which on the water is told to run short.</summary>
    internal const double ToldFrom = 0.5;

    // Enough is said of a layered lake only by a meter: of the lower half, of the last weeks, and when hardly a member disagrees.
    private const double DeepShare = 0.5, EnoughUnder = 0.2;
    private const int FreshHours = 30 * 24;

    internal static double ChanceShort(int arm, double[] weight, MemberTrace[] traces)
    {
        double sum = 0;
        for (int i = 0; i < traces.Length; i++)
            if (double.IsFinite(traces[i].Now[arm].FloorM)) sum += weight[i];
        return Math.Clamp(sum, 0, 1);
    }

    internal static OxygenState State(SeasonModel model, int arm, double chanceShort, LayerState layers)
    {
        if (chanceShort >= ToldFrom) return OxygenState.Short;
        double deep = DeepShare * model.Arms[arm].Basin.MaxDepthM;
        int now = model.Timeline.AtStep;
        bool seen = model.Observations.All.Any(o =>
            o.Kind == ReadingKind.Oxygen && o.Arm == arm && o.DepthM >= deep && o.Step > now - FreshHours);
        return layers == LayerState.Mixed || (seen && chanceShort < EnoughUnder) ? OxygenState.Enough : OxygenState.NotKnown;
    }

    /// <summary>The floor's depth with the error that all members share; null where too few run short.</summary>
    internal static SampleDistribution? FloorM(SeasonModel model, int arm, double[] weight, MemberTrace[] traces) =>
        Law([.. traces.Select(t => t.Now[arm].FloorM)], [.. traces.Select(t => t.Now[arm].FloorSdM)], weight,
            model.Arms[arm].Basin.MaxDepthM);

    /// <summary>The same of any members' floors.</summary>
    /// <param name="floorM">Each member's floor, m; NaN where its bottom has enough.</param>
    /// <param name="sdM">What each leaves open of it, m.</param>
    /// <param name="weight">Their weights, sum 1.</param>
    /// <param name="deepestM">Depth of the water, m.</param>
    public static SampleDistribution? Law(double[] floorM, double[] sdM, double[] weight, double deepestM)
    {
        ArgumentNullException.ThrowIfNull(floorM);
        ArgumentNullException.ThrowIfNull(sdM);
        ArgumentNullException.ThrowIfNull(weight);
        List<double> samples = [], shares = [], errors = [];
        double sum = 0;
        for (int i = 0; i < floorM.Length; i++)
        {
            if (!double.IsFinite(floorM[i]) || !(weight[i] > 0)) continue;
            samples.Add(floorM[i]);
            shares.Add(weight[i]);
            errors.Add(sdM[i]);
            sum += weight[i];
        }

        if (sum < ToldFrom) return null;
        (double[] wide, double[] parts) = ModelError.Widen([.. samples], [.. shares], [.. errors], 0, deepestM);
        return SampleDistribution.Of(wide, parts);
    }
}
