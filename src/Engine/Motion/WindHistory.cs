using SecondShore.Engine.Core;
using SecondShore.Engine.Season;

namespace SecondShore.Engine.Motion;

/// <summary>The wind of a weather series made ready for the water: directions and gusts filled in, stress as a vector. Immutable.</summary>
public sealed class WindHistory
{
    /// <summary>Gust over mean wind where no gust is given (choice after Harper2010).</summary>
    public static readonly double GustFactor = 1.45;

    /// <summary>The same in the showers of a cold front (choice).</summary>
    public static readonly double ShowerGustFactor = 1.8;

    private readonly WeatherSeries _weather;
    private readonly double[] _fromDeg;
    private readonly double[] _gustMps;
    private readonly double[] _eastPa;
    private readonly double[] _northPa;

    /// <summary>Reads the wind of a series.</summary>
    /// <param name="weather">Weather with at least one step.</param>
    /// <exception cref="ArgumentException">The series is empty.</exception>
    public WindHistory(WeatherSeries weather)
    {
        _weather = Require.NotNull(weather);
        int n = weather.Count;
        if (n == 0) throw new ArgumentException("The weather holds no hour: wind cannot be read from it.", nameof(weather));
        _fromDeg = FilledDirections(weather, out int unknown);
        _gustMps = new double[n];
        _eastPa = new double[n];
        _northPa = new double[n];
        int guessedGusts = 0;
        for (int i = 0; i < n; i++)
        {
            double gust = weather.GustMps[i];
            if (double.IsNaN(gust)) guessedGusts++;
            _gustMps[i] = double.IsNaN(gust) ? weather.WindMps[i] * (IsFrontShower(weather, i) ? ShowerGustFactor : GustFactor)
                : Math.Max(gust, weather.WindMps[i]);
            (double east, double north) = Bearings.Unit(_fromDeg[i]);
            double stressPa = WindStress.StressPa(Math.Max(0.0, weather.WindMps[i]));
            _eastPa[i] = -stressPa * east;
            _northPa[i] = -stressPa * north;
        }

        List<Finding> assumed = [];
        if (unknown == n) assumed.Add(MotionFindings.NoDirection.Of());
        else if (unknown > 0) assumed.Add(MotionFindings.DirectionMissing.Of(unknown, n));
        if (guessedGusts > n / 2) assumed.Add(MotionFindings.NoGusts.Of());
        Assumed = assumed;
    }

    /// <summary>What had to be assumed.</summary>
    public IReadOnlyList<Finding> Assumed { get; }

    /// <summary>Number of steps.</summary>
    public int Count => _weather.Count;

    /// <summary>Length of a step, s.</summary>
    public double StepS => _weather.StepS;

    /// <summary>The step that holds an instant, clamped to the series.</summary>
    public int StepAt(DateTimeOffset instant) => _weather.StepAt(instant);

    /// <summary>Mean wind of a step, m s-1.</summary>
    public double WindMps(int step) => _weather.WindMps[step];

    /// <summary>Where it comes from, degrees clockwise from north.</summary>
    public double FromDeg(int step) => _fromDeg[step];

    /// <summary>Gusts of a step, m s-1.</summary>
    public double GustMps(int step) => _gustMps[step];

    /// <summary>Stress on open water at an instant, Pa, linear between the middles of the steps.</summary>
    public (double EastPa, double NorthPa) StressAt(DateTimeOffset instant)
    {
        double at = Math.Clamp(((instant - _weather.StartUtc).TotalSeconds / _weather.StepS) - 0.5, 0.0, Count - 1.0);
        int low = (int)at, high = Math.Min(low + 1, Count - 1);
        double t = at - low;
        return (_eastPa[low] + (t * (_eastPa[high] - _eastPa[low])), _northPa[low] + (t * (_northPa[high] - _northPa[low])));
    }

    /// <summary>Mean stress over the time before an instant, Pa.</summary>
    /// <param name="instant">End of the time.</param>
    /// <param name="overS">Its length, s, 0 or more.</param>
    public (double EastPa, double NorthPa) MeanStress(DateTimeOffset instant, double overS)
    {
        int parts = Math.Max(1, (int)Math.Ceiling(overS / StepS));
        double east = 0, north = 0;
        for (int i = 0; i < parts; i++)
        {
            (double e, double n) = StressAt(instant.AddSeconds(-overS * (i + 0.5) / parts));
            east += e / parts;
            north += n / parts;
        }

        return (east, north);
    }

    /// <summary>Mean wind vector over the steps that end with one of them.</summary>
    /// <param name="step">Last step.</param>
    /// <param name="count">Steps, at least 1; fewer at the start of the series.</param>
    public (double WindMps, double FromDeg) MeanWind(int step, int count)
    {
        int first = Math.Max(0, step - count + 1);
        double east = 0, north = 0;
        for (int i = first; i <= step; i++)
        {
            (double e, double n) = Bearings.Unit(_fromDeg[i]);
            east += _weather.WindMps[i] * e;
            north += _weather.WindMps[i] * n;
        }

        double size = Math.Sqrt((east * east) + (north * north));
        return (size / (step - first + 1), Bearings.OfVectorDeg(east, north));
    }

    private static double[] FilledDirections(WeatherSeries weather, out int unknown)
    {
        double[] fromDeg = new double[weather.Count];
        unknown = 0;
        double known = double.NaN;
        foreach (double deg in weather.WindFromDeg)
        {
            if (!double.IsFinite(deg)) continue;
            known = deg;
            break;
        }

        if (double.IsNaN(known)) known = 270.0;
        for (int i = 0; i < fromDeg.Length; i++)
        {
            if (double.IsFinite(weather.WindFromDeg[i])) known = weather.WindFromDeg[i]; else unknown++;
            fromDeg[i] = Bearings.WrapDeg(known);
        }

        return fromDeg;
    }

    // Rain while the air cooled by 3 K within three hours.
    private static bool IsFrontShower(WeatherSeries weather, int i)
    {
        int before = Math.Max(0, i - (int)Math.Round(3 * PhysicalConstants.HourS / weather.StepS));
        return weather.PrecipitationMmPerH[i] > 0.2 && weather.AirTempC[before] - weather.AirTempC[i] >= 3.0;
    }
}
