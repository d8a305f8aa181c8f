using System.Numerics;
using SecondShore.Engine.Core;

namespace SecondShore.Engine.Season;

/// <summary>
/// What a fitted column keeps missing in one lake, by depth and day of the year: the part of its errors that comes back season
/// after season. Immutable. It corrects temperatures; the step itself and the turnover stay the column's. Source: season.md, "What comes back".
/// </summary>
public sealed class SeasonBias
{
    // A mixed lake has one temperature, so it gets the mean of the correction; this many kelvin of layering bring all of it (choice).
    private const double LayeredK = 2.0;

    private readonly double[] _depthM, _days, _offK, _meanK;

    /// <summary>A correction on a raster of depths and days.</summary>
    /// <param name="depthM">Depths, m, rising, two or more, [d].</param>
    /// <param name="knotDays">Days of the year, rising, two or more, [t].</param>
    /// <param name="offK">What to add to the column, K, day by day within a depth, [d x t].</param>
    public SeasonBias(ReadOnlySpan<double> depthM, ReadOnlySpan<double> knotDays, ReadOnlySpan<double> offK)
    {
        Require.SameLength(offK.Length, depthM.Length * knotDays.Length, nameof(offK));
        if (depthM.Length < 2 || knotDays.Length < 2) throw new ArgumentException("A correction needs two depths and two days or more.", nameof(depthM));
        (_depthM, _days, _offK) = (depthM.ToArray(), knotDays.ToArray(), offK.ToArray());
        for (int i = 1; i < _depthM.Length; i++) if (!(_depthM[i] > _depthM[i - 1])) throw new ArgumentException("Depths must rise.", nameof(depthM));
        for (int i = 1; i < _days.Length; i++) if (!(_days[i] > _days[i - 1])) throw new ArgumentException("Days must rise.", nameof(knotDays));
        _meanK = new double[_days.Length];
        for (int d = 0; d < _depthM.Length; d++)
            for (int t = 0; t < _days.Length; t++) _meanK[t] += Require.Finite(_offK[(d * _days.Length) + t]) / _depthM.Length;
    }

    /// <summary>Depths of the raster, m.</summary>
    public IReadOnlyList<double> DepthM => _depthM;

    /// <summary>Days of the year of the raster.</summary>
    public IReadOnlyList<double> Days => _days;

    /// <summary>What to add, K, day by day within a depth.</summary>
    public IReadOnlyList<double> OffK => _offK;

    /// <summary>What to add to a column's temperature, K.</summary>
    /// <param name="depthM">Depth below the surface of the day, m; beyond the raster its edge holds.</param>
    /// <param name="yearDays">Day of the year.</param>
    /// <param name="spanK">Temperature at the top less the one at the bottom, K: how much of a layered lake there is to correct.</param>
    public double AtK(double depthM, double yearDays, double spanK)
    {
        (int d, double v) = Place(_depthM, depthM);
        (int t, double u) = Place(_days, yearDays);
        int n = _days.Length;
        double upper = _offK[(d * n) + t] + (u * (_offK[(d * n) + t + 1] - _offK[(d * n) + t]));
        double lower = _offK[((d + 1) * n) + t] + (u * (_offK[((d + 1) * n) + t + 1] - _offK[((d + 1) * n) + t]));
        double mean = _meanK[t] + (u * (_meanK[t + 1] - _meanK[t])), here = upper + (v * (lower - upper));
        return mean + (Math.Clamp(spanK / LayeredK, 0, 1) * (here - mean));
    }

    /// <summary>Corrects a profile in place.</summary>
    /// <param name="depthM">Depths, m, rising, [n].</param>
    /// <param name="tempC">Temperatures of the column, degC, [n].</param>
    /// <param name="yearDays">Day of the year.</param>
    public void Correct<T>(ReadOnlySpan<double> depthM, Span<T> tempC, double yearDays)
        where T : struct, IFloatingPoint<T>
    {
        Require.SameLength(tempC.Length, depthM.Length, nameof(tempC));
        if (tempC.Length == 0) return;
        double span = double.CreateChecked(tempC[0] - tempC[^1]);
        for (int i = 0; i < tempC.Length; i++) tempC[i] += T.CreateChecked(AtK(depthM[i], yearDays, span));
    }

    private static (int Index, double Share) Place(double[] knots, double x)
    {
        int i = 0;
        while (i < knots.Length - 2 && knots[i + 1] < x) i++;
        return (i, Math.Clamp((x - knots[i]) / (knots[i + 1] - knots[i]), 0, 1));
    }
}
