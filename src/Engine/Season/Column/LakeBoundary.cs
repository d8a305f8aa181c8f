using SecondShore.Engine.Basin;
using SecondShore.Engine.Core;

namespace SecondShore.Engine.Season;

/// <summary>What happens at a lake's edges day by day besides the weather: pool level, flows, clarity. Days run from a series' start.</summary>
public sealed class LakeBoundary
{
    private readonly double[] _dropM, _volumeM3, _inflowC, _clarityFactor;

    private LakeBoundary(int days)
    {
        (_dropM, _volumeM3, _inflowC, _clarityFactor) = (new double[days], new double[days], new double[days], new double[days]);
        Array.Fill(_clarityFactor, 1.0);
    }

    /// <summary>Depth of the outlet below full pool, m; null where water leaves at the top.</summary>
    public double? OutletDepthM { get; private init; }

    /// <summary>Whether the level or the flows ever move.</summary>
    public bool Moves { get; private set; }

    /// <summary>Highest level, m below full pool; negative above it.</summary>
    public double HighestM { get; private set; }

    /// <summary>Builds the boundary of a weather series.</summary>
    /// <param name="site">The lake.</param>
    /// <param name="weather">Weather whose days it follows.</param>
    /// <param name="levels">Pool levels by time; between them straight, held before the first and after the last.</param>
    /// <param name="flows">Daily flows; a missing day is still water.</param>
    /// <param name="secchi">Secchi depths by time, m, to scale the light's extinction over the season; may be empty.</param>
    public static LakeBoundary Build(LakeSite site, WeatherSeries weather, IReadOnlyList<PoolLevel> levels,
        IReadOnlyList<DailyFlow> flows, IReadOnlyList<(DateTimeOffset At, double SecchiM)> secchi)
    {
        Require.NotNull(site);
        Require.NotNull(weather);
        int days = (int)Math.Ceiling(weather.Count * weather.StepS / PhysicalConstants.DayS) + 1;
        LakeBoundary boundary = new(days) { OutletDepthM = site.OutletDepthM };
        boundary.SetLevels(weather, [.. Require.NotNull(levels).OrderBy(l => l.At)]);
        boundary.SetFlows(weather, Require.NotNull(flows));
        boundary.SetClarity(weather, [.. Require.NotNull(secchi).Where(s => s.SecchiM > 0).OrderBy(s => s.At)]);
        return boundary;
    }

    /// <summary>Level below full pool on a day, m.</summary>
    public double DropM(int day) => _dropM[Math.Clamp(day, 0, _dropM.Length - 1)];

    /// <summary>Brings a column to a day's level, flow and clarity.</summary>
    public void Apply(LakeColumn column, int day)
    {
        day = Math.Clamp(day, 0, _dropM.Length - 1);
        double factor = _clarityFactor[day];
        if (factor != 1.0 || day > 0 && _clarityFactor[day - 1] != 1.0) column.SetExtinction(column.Parameters.LightExtinctionPerM * factor);
        if (!Moves) return;
        if (Math.Abs(_dropM[day] - column.DropM) > 1e-4)
            column.MoveLevel(_dropM[day], OutletDepthM, null, PhysicalConstants.DayS);
        if (_volumeM3[day] > 0)
            column.Flush(_volumeM3[day], double.IsNaN(_inflowC[day]) ? column.SurfaceTempC : _inflowC[day], OutletDepthM, PhysicalConstants.DayS);
    }

    private void SetLevels(WeatherSeries weather, PoolLevel[] levels)
    {
        if (levels.Length == 0) return;
        Moves = true;
        HighestM = levels.Min(l => l.BelowFullPoolM);
        for (int day = 0, k = 0; day < _dropM.Length; day++)
        {
            DateTimeOffset at = weather.StartUtc.AddDays(day + 0.5);
            while (k < levels.Length - 1 && levels[k + 1].At <= at) k++;
            PoolLevel a = levels[k], b = levels[Math.Min(k + 1, levels.Length - 1)];
            double span = (b.At - a.At).TotalDays, t = span > 0 ? Math.Clamp((at - a.At).TotalDays / span, 0, 1) : 0;
            _dropM[day] = a.BelowFullPoolM + (t * (b.BelowFullPoolM - a.BelowFullPoolM));
        }
    }

    private void SetFlows(WeatherSeries weather, IReadOnlyList<DailyFlow> flows)
    {
        // River water of unknown temperature follows the air, smoothed over five days.
        foreach (DailyFlow flow in flows)
        {
            int day = (int)Math.Floor((flow.At - weather.StartUtc).TotalDays + 0.25);
            if (day < 0 || day >= _volumeM3.Length || !(flow.InflowM3PerS > 0)) continue;
            Moves = true;
            _volumeM3[day] = flow.InflowM3PerS * PhysicalConstants.DayS;
            _inflowC[day] = double.IsNaN(flow.InflowTempC) ? AirAround(weather, day) : flow.InflowTempC;
        }
    }

    private static double AirAround(WeatherSeries weather, int day)
    {
        int perDay = (int)(PhysicalConstants.DayS / weather.StepS), to = Math.Min(weather.Count, (day + 1) * perDay), from = Math.Max(0, to - (5 * perDay));
        double sum = 0;
        for (int i = from; i < to; i++) sum += weather.AirTempC[i];
        return to > from ? Math.Max(0.5, sum / (to - from)) : double.NaN;
    }

    private void SetClarity(WeatherSeries weather, (DateTimeOffset At, double SecchiM)[] secchi)
    {
        if (secchi.Length < 3) return;
        double mean = Math.Exp(secchi.Average(s => Math.Log(s.SecchiM)));
        for (int day = 0, k = 0; day < _clarityFactor.Length; day++)
        {
            DateTimeOffset at = weather.StartUtc.AddDays(day + 0.5);
            while (k < secchi.Length - 1 && secchi[k + 1].At <= at) k++;
            (DateTimeOffset At, double SecchiM) a = secchi[k], b = secchi[Math.Min(k + 1, secchi.Length - 1)];
            double span = (b.At - a.At).TotalDays, t = span > 0 ? Math.Clamp((at - a.At).TotalDays / span, 0, 1) : 0;
            double near = Math.Min(Math.Abs((at - a.At).TotalDays), Math.Abs((b.At - at).TotalDays));
            // Readings speak for three weeks around them, then fade to the mean; 0.7 of their swing is kept, the rest is their own error.
            double trust = 0.7 * Math.Clamp(1.5 - (near / 30.0), 0, 1);
            double local = Math.Log(a.SecchiM) + (t * (Math.Log(b.SecchiM) - Math.Log(a.SecchiM)));
            _clarityFactor[day] = Math.Exp(-trust * Math.Clamp(local - Math.Log(mean), -1, 1));
        }
    }
}
