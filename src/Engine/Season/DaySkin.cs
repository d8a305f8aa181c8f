using SecondShore.Engine.Core;
using SecondShore.Engine.Water;

namespace SecondShore.Engine.Season;

/// <summary>
/// Tells the layers that last from the warm skin of one day: water warmer than the surface was at its coolest within the last
/// day has been warmed since and goes with the night (season.md, "The day's skin"). One column's hours; not thread-safe.
/// </summary>
public sealed class DaySkin
{
    /// <summary>Warming of the surface since its coolest hour from which on a skin is named, K (choice: a sounder may show it).</summary>
    public static readonly double StrongK = 1.0;

    private const int Hours = 24;
    private readonly double[] _surfaceC = new double[Hours];
    private int _count, _next;

    /// <summary>The coolest that the surface was within the last 24 hours, degC; NaN before the first.</summary>
    public double CoolestC
    {
        get
        {
            double least = double.NaN;
            for (int i = 0; i < _count; i++) least = i == 0 ? _surfaceC[0] : Math.Min(least, _surfaceC[i]);
            return least;
        }
    }

    /// <summary>Takes in an hour's surface temperature, degC.</summary>
    public void Add(double surfaceC)
    {
        _surfaceC[_next] = surfaceC;
        _next = (_next + 1) % Hours;
        _count = Math.Min(Hours, _count + 1);
    }

    /// <summary>Moves the hours kept when a cast moves the column: the day's own warming stays what it was.</summary>
    /// <param name="byK">By how much the surface was moved, K.</param>
    public void Shift(double byK)
    {
        for (int i = 0; i < _count; i++) _surfaceC[i] += byK;
    }

    /// <summary>The layers that last, with the day's skin told apart.</summary>
    /// <param name="depthM">Depths, m, increasing.</param>
    /// <param name="tempC">Temperatures now, degC, same length; no NaN.</param>
    /// <param name="coolestC">The coolest that the surface was within a day, degC; NaN leaves no skin.</param>
    /// <returns>Lasting layers; <see cref="LastingLayers.SkinK"/> is 0 without a skin.</returns>
    public static LastingLayers Of(ReadOnlySpan<double> depthM, ReadOnlySpan<double> tempC, double coolestC)
    {
        Span<double> density = tempC.Length <= 512 ? stackalloc double[tempC.Length] : new double[tempC.Length];
        for (int i = 0; i < density.Length; i++) density[i] = FreshWater.DensityKgPerM3(tempC[i]);
        return Of(depthM, tempC, density, coolestC);
    }

    /// <summary>The same where the densities are known already.</summary>
    internal static LastingLayers Of(ReadOnlySpan<double> depthM, ReadOnlySpan<double> tempC, ReadOnlySpan<double> densityKgPerM3,
        double coolestC)
    {
        Require.SameLength(tempC.Length, depthM.Length, nameof(tempC));
        Require.SameLength(densityKgPerM3.Length, depthM.Length, nameof(densityKgPerM3));
        Span<double> density = tempC.Length <= 512 ? stackalloc double[tempC.Length] : new double[tempC.Length];
        double coolestKgPerM3 = double.IsNaN(coolestC) ? double.NaN : FreshWater.DensityKgPerM3(coolestC);
        for (int i = 0; i < density.Length; i++) density[i] = tempC[i] > coolestC ? coolestKgPerM3 : densityKgPerM3[i];
        Stratification layers = Stratification.OfDensity(depthM, density);
        double skinK = tempC.Length > 0 && tempC[0] > coolestC ? tempC[0] - coolestC : 0;
        return new LastingLayers(layers, skinK > 0 ? SkinDepthM(depthM, tempC, coolestC + (0.5 * skinK)) : double.NaN, skinK);
    }

    /// <summary>A temperature without the day's skin, degC.</summary>
    public static double LastingC(double tempC, double coolestC) => tempC > coolestC ? coolestC : tempC;

    // Where half of the day's warming is left: the skin lies above it.
    private static double SkinDepthM(ReadOnlySpan<double> depthM, ReadOnlySpan<double> tempC, double halfC)
    {
        for (int i = 1; i < tempC.Length; i++)
        {
            if (tempC[i] >= halfC) continue;
            double share = (tempC[i - 1] - halfC) / (tempC[i - 1] - tempC[i]);
            return depthM[i - 1] + (share * (depthM[i] - depthM[i - 1]));
        }

        return depthM.Length > 0 ? depthM[^1] : double.NaN;
    }
}

/// <summary>Layers that last longer than a day, and the warm skin above them.</summary>
/// <param name="Layers">The lasting layers.</param>
/// <param name="SkinDepthM">Depth where half of the day's warming is left, m; NaN without a skin.</param>
/// <param name="SkinK">How much warmer the surface is than at its coolest within a day, K; 0 without a skin.</param>
public readonly record struct LastingLayers(Stratification Layers, double SkinDepthM, double SkinK)
{
    /// <summary>Whether the skin is one to be named.</summary>
    public bool IsStrong => SkinK >= DaySkin.StrongK;

    /// <summary>What a sounder may show: the lasting step, and a shallower one, the skin's where no lasting one is there.</summary>
    public Stratification Seen => IsStrong && double.IsNaN(Layers.SecondaryM) ? Layers with { SecondaryM = SkinDepthM } : Layers;
}
