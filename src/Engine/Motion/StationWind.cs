using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Motion;

/// <summary>The wind's stress at one place, hour by hour, as a station or a grid point tells it. Immutable.</summary>
/// <remarks>
/// Each row's stress is worked out first and then averaged over its hour, since stress grows faster than the wind: the mean of
/// quarter hours then counts their gusts. Hours without a row are missing; up to three of them are bridged.
/// </remarks>
public sealed class StationWind
{
    private const int LongestBridgeH = 3;
    private readonly long _firstHour;
    private readonly double[] _eastPa;
    private readonly double[] _northPa;

    /// <summary>Reads a station's rows.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="place">Where it is.</param>
    /// <param name="times">Stamps, rising; a value holds from its stamp on.</param>
    /// <param name="windMps">Wind at 10 m over water, m s-1; NaN where missing.</param>
    /// <param name="fromDeg">Where it comes from, degrees; NaN where missing.</param>
    /// <exception cref="ArgumentException">There are no rows, or the arrays differ in length.</exception>
    public StationWind(string name, PlanePoint place, IReadOnlyList<DateTimeOffset> times, double[] windMps, double[] fromDeg)
    {
        (Name, Place) = (Require.NotNull(name), place);
        int n = Require.NotNull(times).Count;
        if (n == 0) throw new ArgumentException("A station's wind needs at least one row.", nameof(times));
        Require.SameLength(Require.NotNull(windMps).Length, n, nameof(windMps));
        Require.SameLength(Require.NotNull(fromDeg).Length, n, nameof(fromDeg));
        _firstHour = WholeHour(times[0]);
        int count = checked((int)(WholeHour(times[n - 1]) - _firstHour + 1)), rows = 0, calms = 0;
        _eastPa = new double[count];
        _northPa = new double[count];
        int[] seen = new int[count];
        for (int i = 0; i < n; i++)
        {
            if (double.IsNaN(windMps[i])) continue;
            rows++;
            if (windMps[i] <= 0) calms++;
            // A calm needs no direction; a wind without one cannot push anywhere.
            if (windMps[i] > 0 && double.IsNaN(fromDeg[i])) continue;
            int hour = (int)(WholeHour(times[i]) - _firstHour);
            seen[hour]++;
            if (!(windMps[i] > 0)) continue;
            (double east, double north) = Bearings.Unit(Bearings.WrapDeg(fromDeg[i]));
            double stressPa = WindStress.StressPa(windMps[i]);
            _eastPa[hour] -= stressPa * east;
            _northPa[hour] -= stressPa * north;
        }

        for (int h = 0; h < count; h++)
            (_eastPa[h], _northPa[h]) = seen[h] > 0 ? (_eastPa[h] / seen[h], _northPa[h] / seen[h]) : (double.NaN, double.NaN);
        Gaps.Bridge(_eastPa, LongestBridgeH);
        Gaps.Bridge(_northPa, LongestBridgeH);
        CalmShare = rows > 0 ? (double)calms / rows : 0;
    }

    /// <summary>Its name.</summary>
    public string Name { get; }

    /// <summary>Where it is.</summary>
    public PlanePoint Place { get; }

    /// <summary>Share of its rows without any wind.</summary>
    public double CalmShare { get; }

    /// <summary>Stress in the hour of a number, Pa; NaN where it is not known.</summary>
    /// <param name="hour">Hours since 1970, UTC.</param>
    public (double EastPa, double NorthPa) StressPa(long hour)
    {
        long i = hour - _firstHour;
        return i < 0 || i >= _eastPa.Length ? (double.NaN, double.NaN) : (_eastPa[i], _northPa[i]);
    }

    /// <summary>The hour whose middle lies at or before an instant, and how far the instant lies toward the middle of the next, 0 to 1.</summary>
    internal static (long Hour, double Share) HourOf(DateTimeOffset at)
    {
        double middle = (at.ToUnixTimeMilliseconds() / 3_600_000.0) - 0.5;
        double hour = Math.Floor(middle);
        return ((long)hour, middle - hour);
    }

    private static long WholeHour(DateTimeOffset at) => (long)Math.Floor(at.ToUnixTimeSeconds() / PhysicalConstants.HourS);
}
