using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Basin.Shore;

/// <summary>The belt: the bottom within reach of the thermocline, as wide as the doubt about its depth. Immutable.</summary>
public sealed class Belt
{
    private Belt(DepthGrid grid, float[] chance, SampleDistribution thermoclineM, double reachM, double expectedAreaM2)
    {
        (Grid, Chance, ThermoclineM, ReachM, ExpectedAreaM2) = (grid, chance, thermoclineM, reachM, expectedAreaM2);
        Bands = [BandOf(thermoclineM, 0.10), BandOf(thermoclineM, 0.20), BandOf(thermoclineM, 0.35)];
    }

    /// <summary>The lake.</summary>
    public DepthGrid Grid { get; }

    /// <summary>[Ny*Nx] chance, 0 to 1, that the bottom lies within reach of the thermocline; 0 on land.</summary>
    public float[] Chance { get; }

    /// <summary>Depth of the thermocline at rest, m.</summary>
    public SampleDistribution ThermoclineM { get; }

    /// <summary>How far above or below the thermocline counts as within reach, m.</summary>
    public double ReachM { get; }

    /// <summary>Bands of thermocline depth for drawing, widest first: the 10th to 90th, 20th to 80th, 35th to 65th percentile.</summary>
    public IReadOnlyList<DepthBand> Bands { get; }

    /// <summary>Expected area within reach, m2: the sum over cells of chance times area.</summary>
    public double ExpectedAreaM2 { get; }

    /// <summary>Area of the cells whose chance is at least a share, m2.</summary>
    /// <param name="chance">0 to 1.</param>
    public double AreaAboveM2(double chance)
    {
        Require.InRange(chance, 0, 1);
        long count = 0;
        for (int i = 0; i < Chance.Length; i++)
            if (Chance[i] >= chance && Grid.DepthM[i] > 0) count++;
        return count * Grid.Frame.CellAreaM2;
    }

    /// <summary>Computes the belt.</summary>
    /// <param name="grid">Depths at today's level, with their standard error.</param>
    /// <param name="thermoclineM">Depth of the thermocline at rest, below today's surface, m.</param>
    /// <param name="offsetM">[Ny*Nx] how much deeper than at rest the thermocline lies in a cell, m (wind tilt); null for none, NaN counts as 0.</param>
    /// <param name="reachM">How far above or below the thermocline counts as within reach, m, above 0.</param>
    /// <param name="chanceStratified">Chance that there is a thermocline at all, 0 to 1; scales every cell.</param>
    /// <exception cref="ArgumentException">A length does not fit the grid, or a number is out of range.</exception>
    public static Belt Compute(
        DepthGrid grid, SampleDistribution thermoclineM, float[]? offsetM, double reachM, double chanceStratified = 1.0)
    {
        Require.NotNull(grid);
        Require.NotNull(thermoclineM);
        Require.Positive(reachM);
        Require.InRange(chanceStratified, 0, 1);
        if (offsetM is not null) Require.SameLength(offsetM.Length, grid.Frame.Count, nameof(offsetM));
        float[] depthM = grid.DepthM, sdM = grid.DepthSdM, chance = new float[depthM.Length];
        float mostSdM = 0;
        for (int i = 0; i < sdM.Length; i++)
            if (depthM[i] > 0 && sdM[i] > mostSdM && float.IsFinite(sdM[i])) mostSdM = sdM[i];
        ReachTable table = new(thermoclineM, reachM, mostSdM);
        double sum = 0;
        for (int i = 0; i < chance.Length; i++)
        {
            float depth = depthM[i];
            if (!(depth > 0)) continue;
            float offset = offsetM is null ? 0f : offsetM[i];
            float sd = sdM[i] >= 0 && sdM[i] <= mostSdM ? sdM[i] : mostSdM;
            chance[i] = (float)chanceStratified * table.At(float.IsNaN(offset) ? depth : depth - offset, sd);
            sum += chance[i];
        }

        return new Belt(grid, chance, thermoclineM, reachM, sum * grid.Frame.CellAreaM2);
    }

    private static DepthBand BandOf(SampleDistribution thermoclineM, double share) =>
        new(share, thermoclineM.Quantile(share), thermoclineM.Quantile(1 - share));
}
