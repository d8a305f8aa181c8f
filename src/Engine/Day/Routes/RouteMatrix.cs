using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Day;

/// <summary>Times of runs between places by hour of leaving: what the planner asks.</summary>
public interface ITravelTimes
{
    /// <summary>Time of the run, s, without stowing; infinite when it cannot be made in that hour.</summary>
    /// <param name="from">Index of the place left.</param>
    /// <param name="to">Index of the place entered.</param>
    /// <param name="leaving">When.</param>
    double TravelS(int from, int to, DateTimeOffset leaving);

    /// <summary>The way taken; null when there is none.</summary>
    WaterRoute? Route(int from, int to, DateTimeOffset leaving);

    /// <summary>Greatest significant wave on the way at that hour, m.</summary>
    double GreatestWaveM(int from, int to, DateTimeOffset leaving);
}

/// <summary>
/// Ways between all places of a day. Each pair keeps its quickest way on calm water and, where waves will rise, the
/// quickest through the day's mean waves, which keeps to the lee; each hour takes the better of the two.
/// </summary>
public sealed class RouteMatrix : ITravelTimes
{
    private readonly int _count, _hours;
    private readonly DateTimeOffset _start;
    private readonly WaterRoute?[] _calm, _lee;
    private readonly float[] _timeS, _waveM;
    private readonly bool[] _takesLee;

    private RouteMatrix(int count, DateTimeOffset start, int hours)
    {
        _count = count;
        _start = start;
        _hours = hours;
        _calm = new WaterRoute?[count * count];
        _lee = new WaterRoute?[count * count];
        _timeS = new float[hours * count * count];
        _waveM = new float[hours * count * count];
        _takesLee = new bool[hours * count * count];
    }

    /// <inheritdoc/>
    public double TravelS(int from, int to, DateTimeOffset leaving) => _timeS[Index(from, to, leaving)];

    /// <inheritdoc/>
    public WaterRoute? Route(int from, int to, DateTimeOffset leaving) =>
        (_takesLee[Index(from, to, leaving)] ? _lee : _calm)[(from * _count) + to];

    /// <inheritdoc/>
    public double GreatestWaveM(int from, int to, DateTimeOffset leaving) => _waveM[Index(from, to, leaving)];

    internal static RouteMatrix Build(WaterRoutes routes, IReadOnlyList<RoutePlace> places, DateTimeOffset start, int hours,
        ISeaState? sea, IProgress<double>? progress, CancellationToken cancel)
    {
        var matrix = new RouteMatrix(places.Count, start, hours);
        WaveLattice? waves = sea is null ? null : new WaveLattice(routes.Water, sea, start, hours);
        float[] slowness = waves is null ? [] : waves.MeanSlowness(routes.Graph);
        matrix.FindRoutes(routes, places, [], matrix._calm, progress, cancel);
        if (slowness.Length > 0) matrix.FindRoutes(routes, places, slowness, matrix._lee, progress, cancel);
        matrix.TimeByHour(routes.Water, waves);
        return matrix;
    }

    private int Index(int from, int to, DateTimeOffset leaving)
    {
        int hour = (int)Math.Clamp(Math.Floor((leaving - _start).TotalHours), 0, _hours - 1);
        return (((hour * _count) + Require.InRange(from, 0, _count - 1)) * _count) + Require.InRange(to, 0, _count - 1);
    }

    private void FindRoutes(WaterRoutes routes, IReadOnlyList<RoutePlace> places, float[] slowness, WaterRoute?[] found,
        IProgress<double>? progress, CancellationToken cancel)
    {
        float[] timeS = new float[routes.Graph.Count];
        int[] previous = new int[routes.Graph.Count];
        var smoother = new RouteSmoother(routes.Water, slowness, routes.Graph.Block, routes.Graph.BlocksX);
        for (int from = 0; from < _count; from++)
        {
            cancel.ThrowIfCancellationRequested();
            progress?.Report((double)from / _count);
            if (!routes.TryAnchor(places[from].Out, out RouteAnchor a)) continue;
            bool searched = false;
            for (int to = 0; to < _count; to++)
            {
                if (to == from || found[(from * _count) + to] is not null || !routes.TryAnchor(places[to].In, out RouteAnchor b)) continue;
                if (!searched) { routes.Graph.ShortestS(a.Node, slowness, timeS, previous); searched = true; }
                WaterRoute? route = routes.Between(a, b, timeS, previous, smoother);
                found[(from * _count) + to] = route;
                // Where both places are points, the way back is the same.
                if (route is not null && places[from].In == places[from].Out && places[to].In == places[to].Out)
                    found[(to * _count) + from] = Reversed(route);
            }
        }

        progress?.Report(1.0);
    }

    private static WaterRoute Reversed(WaterRoute route)
    {
        PlanePoint[] line = [.. route.Line];
        Array.Reverse(line);
        return route with { Line = line };
    }

    private void TimeByHour(NavigableWater water, WaveLattice? waves)
    {
        for (int hour = 0; hour < _hours; hour++)
        {
            for (int pair = 0; pair < _count * _count; pair++)
            {
                int at = (hour * _count * _count) + pair;
                if (pair / _count == pair % _count) continue;
                (double calmS, double calmWaveM) = Time(water, waves, hour, _calm[pair]);
                (double leeS, double leeWaveM) = Time(water, waves, hour, _lee[pair]);
                _takesLee[at] = leeS < calmS;
                _timeS[at] = (float)Math.Min(calmS, leeS);
                _waveM[at] = (float)(leeS < calmS ? leeWaveM : calmWaveM);
            }
        }
    }

    private static (double S, double WaveM) Time(NavigableWater water, WaveLattice? waves, int hour, WaterRoute? route)
    {
        if (route is null) return (double.PositiveInfinity, 0);
        if (waves is null) return (route.CalmS, 0);
        double s = route.ByEyeM / water.Boat.NoWakeMps, greatestM = 0;
        for (int i = 1; i < route.Line.Count; i++)
        {
            PlanePoint a = route.Line[i - 1], b = route.Line[i];
            double lengthM = a.DistanceToM(b);
            int parts = Math.Max(1, (int)Math.Ceiling(lengthM / waves.SpacingM));
            for (int k = 0; k < parts; k++)
            {
                PlanePoint p = Along(a, b, (double)k / parts), q = Along(a, b, (k + 1.0) / parts), middle = Along(a, b, (k + 0.5) / parts);
                double waveM = waves.WaveM(middle, hour), share = water.Boat.SpeedShare(waveM);
                greatestM = Math.Max(greatestM, waveM);
                if (share <= 0) return (double.PositiveInfinity, greatestM);
                double partS = water.StraightS(p, q, [], 1, 1), slowestS = lengthM / parts / water.Boat.NoWakeMps;
                // Waves slow a run, not idling: a part already at no-wake speed keeps it.
                s += partS >= slowestS * 0.999 ? partS : Math.Min(partS / share, Math.Max(slowestS, partS));
            }
        }

        return (s, greatestM);
    }

    private static PlanePoint Along(PlanePoint a, PlanePoint b, double share) =>
        new(a.XM + (share * (b.XM - a.XM)), a.YM + (share * (b.YM - a.YM)));
}
