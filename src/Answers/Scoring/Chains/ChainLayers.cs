using SecondShore.Engine.Basin;
using SecondShore.Engine.Season;
using SecondShore.Engine.Water;

namespace SecondShore.Answers.Scoring.Chains;

/// <summary>The two layers that a chain's mean profile comes to, and the temperature between them.</summary>
/// <param name="Layers">The layers.</param>
/// <param name="IsothermC">Temperature at the thermocline, degC.</param>
internal sealed record ChainLayers(TwoLayers Layers, double IsothermC)
{
    /// <summary>Reads a mean profile; null where no thermocline stands in it.</summary>
    /// <param name="depthM">Depths, m.</param>
    /// <param name="tempC">Mean temperatures, degC.</param>
    /// <param name="lake">Area by depth, by which the layers' densities are weighed.</param>
    public static ChainLayers? Of(double[] depthM, double[] tempC, Hypsography lake)
    {
        if (depthM.Length < 3) return null;
        // A day's mean may still be turned over by a tenth of a kelvin at the top: only what falls with depth is a layer.
        double[] falling = [.. tempC];
        for (int i = 1; i < falling.Length; i++) falling[i] = Math.Min(falling[i], falling[i - 1]);
        Stratification found = Stratification.Of(depthM, falling);
        if (!found.HasThermocline) return null;
        double upper = 0, upperM3 = 0, lower = 0, lowerM3 = 0, isotherm = double.NaN;
        for (int i = 0; i < depthM.Length; i++)
        {
            double density = FreshWater.DensityKgPerM3(falling[i]), volume = lake.AreaAtM2(depthM[i]);
            // The water above the top logger is as the top logger's.
            if (i == 0) volume *= 1 + (depthM[0] / (depthM[1] - depthM[0]));
            if (depthM[i] < found.ThermoclineM) (upper, upperM3) = (upper + (volume * density), upperM3 + volume);
            else (lower, lowerM3) = (lower + (volume * density), lowerM3 + volume);
            if (double.IsNaN(isotherm) && depthM[i] >= found.ThermoclineM)
                isotherm = i == 0 ? falling[0] : falling[i - 1] + ((falling[i] - falling[i - 1]) * (found.ThermoclineM - depthM[i - 1]) / (depthM[i] - depthM[i - 1]));
        }

        if (!(upperM3 > 0) || !(lowerM3 > 0) || !(lower / lowerM3 > upper / upperM3)) return null;
        return new ChainLayers(new TwoLayers(found.ThermoclineM, upper / upperM3, lower / lowerM3, 1), isotherm);
    }
}
