using System.Runtime.CompilerServices;
using SecondShore.Engine.Core;

namespace SecondShore.Engine.Rig;

/// <summary>
/// Current by height over the bottom, along the track (positive: it goes where the boat goes) and across it (positive: to the
/// boat's left). Linear between heights, constant outside them. Immutable.
/// </summary>
public sealed class CurrentProfile
{
    private readonly double[] _heightM, _alongMps, _acrossMps;

    private CurrentProfile(double[] heightM, double[] alongMps, double[] acrossMps)
    {
        _heightM = heightM;
        _alongMps = alongMps;
        _acrossMps = acrossMps;
        foreach (double along in alongMps) LargestMps = Math.Max(LargestMps, Math.Abs(along));
        foreach (double across in acrossMps) LargestAcrossMps = Math.Max(LargestAcrossMps, Math.Abs(across));
    }

    /// <summary>Still water.</summary>
    public static CurrentProfile Still { get; } = new([0.0], [0.0], [0.0]);

    /// <summary>Largest speed along the track in the profile, either way, m s-1.</summary>
    public double LargestMps { get; }

    /// <summary>Largest speed across the track in the profile, either way, m s-1.</summary>
    public double LargestAcrossMps { get; }

    /// <summary>Number of heights.</summary>
    public int Count => _heightM.Length;

    /// <summary>The same current at every height.</summary>
    /// <param name="alongMps">Along the track, m s-1.</param>
    /// <param name="acrossMps">Across it, m s-1.</param>
    public static CurrentProfile Uniform(double alongMps, double acrossMps = 0) =>
        new([0.0], [Require.Finite(alongMps)], [Require.Finite(acrossMps)]);

    /// <summary>A current given at heights over the bottom.</summary>
    /// <param name="heightM">Heights over the bottom, m, ascending, at least one.</param>
    /// <param name="alongMps">Speeds along the track, m s-1, as many.</param>
    /// <param name="acrossMps">Speeds across the track, m s-1, as many.</param>
    /// <exception cref="ArgumentException">Lengths differ, there is none, heights do not ascend, or a value is not finite.</exception>
    public static CurrentProfile Of(ReadOnlySpan<double> heightM, ReadOnlySpan<double> alongMps, ReadOnlySpan<double> acrossMps)
    {
        if (heightM.Length == 0) throw new ArgumentException("A current profile needs at least one height.", nameof(heightM));
        Require.SameLength(alongMps.Length, heightM.Length, nameof(alongMps));
        Require.SameLength(acrossMps.Length, heightM.Length, nameof(acrossMps));
        for (int i = 0; i < heightM.Length; i++)
        {
            Require.Finite(heightM[i], nameof(heightM));
            Require.Finite(alongMps[i], nameof(alongMps));
            Require.Finite(acrossMps[i], nameof(acrossMps));
            if (i > 0 && !(heightM[i] > heightM[i - 1]))
                throw new ArgumentException($"Heights over the bottom must ascend; value {i + 1} does not.", nameof(heightM));
        }

        return new CurrentProfile(heightM.ToArray(), alongMps.ToArray(), acrossMps.ToArray());
    }

    /// <summary>The same profile with a speed added along the track at every height.</summary>
    /// <param name="alongMps">What is added, m s-1.</param>
    public CurrentProfile Shifted(double alongMps)
    {
        if (alongMps == 0) return this;
        double[] shifted = new double[_alongMps.Length];
        for (int i = 0; i < shifted.Length; i++) shifted[i] = _alongMps[i] + alongMps;
        return new CurrentProfile(_heightM, shifted, _acrossMps);
    }

    /// <summary>Current at a height over the bottom.</summary>
    /// <param name="heightM">Height over the bottom, m.</param>
    /// <param name="alongMps">Along the track, m s-1.</param>
    /// <param name="acrossMps">Across it, m s-1.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void At(double heightM, out double alongMps, out double acrossMps)
    {
        if (_heightM.Length == 1 || heightM <= _heightM[0])
        {
            alongMps = _alongMps[0];
            acrossMps = _acrossMps[0];
            return;
        }

        Between(heightM, out alongMps, out acrossMps);
    }

    private void Between(double heightM, out double alongMps, out double acrossMps)
    {
        int last = _heightM.Length - 1;
        if (heightM >= _heightM[last])
        {
            alongMps = _alongMps[last];
            acrossMps = _acrossMps[last];
            return;
        }

        int above = 1;
        while (_heightM[above] < heightM) above++;
        double t = (heightM - _heightM[above - 1]) / (_heightM[above] - _heightM[above - 1]);
        alongMps = _alongMps[above - 1] + (t * (_alongMps[above] - _alongMps[above - 1]));
        acrossMps = _acrossMps[above - 1] + (t * (_acrossMps[above] - _acrossMps[above - 1]));
    }
}
