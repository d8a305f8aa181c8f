using SecondShore.Engine.Core;
using SecondShore.Engine.Water;

namespace SecondShore.Engine.Season;

/// <summary>What a density profile says of its layers. Depths in m below the surface of the profile.</summary>
/// <param name="ThermoclineM">Depth of the main thermocline: the steepest place of the step with the largest density jump, m; NaN when none stands.</param>
/// <param name="SecondaryM">Depth of a shallower, younger step, m; NaN when there is none.</param>
/// <param name="TopM">Top of the metalimnion, m; NaN without a thermocline.</param>
/// <param name="BottomM">Bottom of the metalimnion, m; NaN without a thermocline.</param>
/// <param name="DensityDifferenceKgPerM3">Density at the bottom less density at the surface, kg m-3.</param>
public readonly record struct Stratification(double ThermoclineM, double SecondaryM, double TopM, double BottomM, double DensityDifferenceKgPerM3)
{
    /// <summary>Gradient that counts as a thermocline and bounds the metalimnion, kg m-3 per m (source: Read2011).</summary>
    public static readonly double EdgeGradientKgPerM4Value = 0.1;

    /// <summary>Density difference from top to bottom above which a lake counts as layered, kg m-3 (source: Woolway2021).</summary>
    public static readonly double LayeredKgPerM3 = 0.1;

    /// <summary>Share of the steepest gradient a local peak needs to count as a thermocline of its own (source: Read2011).</summary>
    public static readonly double PeakShare = 0.15;

    /// <summary>Share of a peak's gradient down to which its flanks belong to the same step (choice).</summary>
    public static readonly double FlankShare = 0.3;

    /// <summary>Whether a thermocline stands.</summary>
    public bool HasThermocline => !double.IsNaN(ThermoclineM);

    /// <summary>Water without layers.</summary>
    public static Stratification None { get; } = new(double.NaN, double.NaN, double.NaN, double.NaN, 0);

    /// <summary>Reads a temperature profile.</summary>
    /// <param name="depthM">Depths, m, increasing, at least three for a thermocline.</param>
    /// <param name="tempC">Temperatures, degC, same length; no NaN.</param>
    public static Stratification Of(ReadOnlySpan<double> depthM, ReadOnlySpan<double> tempC)
    {
        Require.SameLength(tempC.Length, depthM.Length, nameof(tempC));
        Span<double> density = tempC.Length <= 512 ? stackalloc double[tempC.Length] : new double[tempC.Length];
        for (int i = 0; i < density.Length; i++) density[i] = FreshWater.DensityKgPerM3(tempC[i]);
        return OfDensity(depthM, density);
    }

    /// <summary>Reads a density profile.</summary>
    /// <param name="depthM">Depths, m, increasing, at least three for a thermocline.</param>
    /// <param name="densityKgPerM3">Densities, kg m-3, same length; no NaN.</param>
    public static Stratification OfDensity(ReadOnlySpan<double> depthM, ReadOnlySpan<double> densityKgPerM3)
    {
        Require.SameLength(densityKgPerM3.Length, depthM.Length, nameof(densityKgPerM3));
        Stratification none = None;
        int n = depthM.Length;
        if (n < 2) return none;
        double difference = densityKgPerM3[n - 1] - densityKgPerM3[0];
        none = none with { DensityDifferenceKgPerM3 = difference };
        if (n < 3 || difference < LayeredKgPerM3) return none;
        Span<double> middle = n <= 512 ? stackalloc double[n - 1] : new double[n - 1];
        Span<double> gradient = n <= 512 ? stackalloc double[n - 1] : new double[n - 1];
        double steepest = 0;
        double upper = densityKgPerM3[0];
        for (int i = 0; i < n - 1; i++)
        {
            double lower = densityKgPerM3[i + 1], span = depthM[i + 1] - depthM[i];
            middle[i] = 0.5 * (depthM[i] + depthM[i + 1]);
            gradient[i] = span > 0 ? (lower - upper) / span : 0;
            steepest = Math.Max(steepest, gradient[i]);
            upper = lower;
        }

        if (steepest < EdgeGradientKgPerM4Value) return none;
        (int parent, int secondary) = Peaks(depthM, gradient, Math.Max(PeakShare * steepest, EdgeGradientKgPerM4Value));
        if (parent < 0) return none;
        return new Stratification(
            Vertex(middle, gradient, parent, depthM),
            secondary < 0 ? double.NaN : Vertex(middle, gradient, secondary, depthM),
            Edge(middle, gradient, parent, -1, depthM[0]),
            Edge(middle, gradient, parent, +1, depthM[n - 1]),
            difference);
    }

    /// <summary>Where a column shows the step that a sounder saw at a depth, m: its main step, unless the secondary one is nearer by more than a cost.</summary>
    /// <remarks>
    /// What shows on a sounder is mostly the main step, so a column that can offer only its secondary one answers from a cost
    /// further off. Without it a column whose main step lies far below would count as a good match, and keep its doubt.
    /// </remarks>
    /// <param name="depthM">Depth seen, m.</param>
    /// <param name="secondaryCostM">How much further off a secondary step counts, m.</param>
    public double StepSeenM(double depthM, double secondaryCostM)
    {
        double off = SecondaryM - depthM, cost = Math.Abs(off) + secondaryCostM;
        return !double.IsNaN(off) && cost < Math.Abs(ThermoclineM - depthM) ? depthM + Math.CopySign(cost, off) : ThermoclineM;
    }

    /// <summary>Buoyancy frequency squared between two temperatures, s-2.</summary>
    public static double BuoyancyPerS2(double upperC, double lowerC, double distanceM)
    {
        double a = FreshWater.DensityKgPerM3(upperC), b = FreshWater.DensityKgPerM3(lowerC);
        return PhysicalConstants.GravityMps2 / (0.5 * (a + b)) * (b - a) / distanceM;
    }

    // The main step is the peak that the largest density jump belongs to: single layers of a noisy cast and the warm skin of an
    // afternoon may be steeper, but little lies across them. The secondary is the largest jump above it.
    private static (int Parent, int Secondary) Peaks(ReadOnlySpan<double> depthM, ReadOnlySpan<double> gradient, double least)
    {
        int parent = -1;
        double most = 0;
        for (int i = 0; i < gradient.Length; i++)
        {
            if (!IsPeak(gradient, i)) continue;
            double jump = JumpKgPerM3(depthM, gradient, i);
            if (jump > most) (parent, most) = (i, jump);
        }

        int secondary = -1;
        most = 0;
        for (int i = 0; i < parent; i++)
        {
            if (!IsPeak(gradient, i) || gradient[i] < least) continue;
            double jump = JumpKgPerM3(depthM, gradient, i);
            if (jump > most) (secondary, most) = (i, jump);
        }

        return (parent, secondary);
    }

    private static bool IsPeak(ReadOnlySpan<double> gradient, int i) =>
        gradient[i] > 0 && (i == 0 || gradient[i] >= gradient[i - 1]) && (i == gradient.Length - 1 || gradient[i] > gradient[i + 1]);

    // Density gained over the run around a peak in which the gradient stays above a share of the peak and below it.
    private static double JumpKgPerM3(ReadOnlySpan<double> depthM, ReadOnlySpan<double> gradient, int peak)
    {
        double sum = 0, edge = FlankShare * gradient[peak];
        for (int j = peak; j >= 0 && gradient[j] >= edge && gradient[j] <= gradient[peak]; j--) sum += gradient[j] * (depthM[j + 1] - depthM[j]);
        for (int j = peak + 1; j < gradient.Length && gradient[j] >= edge && gradient[j] <= gradient[peak]; j++) sum += gradient[j] * (depthM[j + 1] - depthM[j]);
        return sum;
    }

    // Between the two neighbours, weighted by how fast the gradient falls off to either side.
    private static double Vertex(ReadOnlySpan<double> middle, ReadOnlySpan<double> gradient, int k, ReadOnlySpan<double> depthM)
    {
        if (k == 0 || k == gradient.Length - 1) return middle[k];
        double below = gradient[k] - gradient[k + 1], above = gradient[k] - gradient[k - 1];
        if (!(below > 0) || !(above > 0)) return middle[k];
        double down = (middle[k + 1] - middle[k]) / below, up = (middle[k] - middle[k - 1]) / above;
        return depthM[k] + ((depthM[k + 1] - depthM[k]) * down / (down + up));
    }

    private static double Edge(ReadOnlySpan<double> middle, ReadOnlySpan<double> gradient, int from, int step, double beyondM)
    {
        for (int i = from; i + step >= 0 && i + step < gradient.Length; i += step)
        {
            double a = gradient[i], b = gradient[i + step];
            if (b < EdgeGradientKgPerM4Value)
                return middle[i] + ((middle[i + step] - middle[i]) * Math.Clamp((a - EdgeGradientKgPerM4Value) / (a - b), 0, 1));
        }

        return beyondM;
    }
}
