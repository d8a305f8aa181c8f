using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Day;

/// <summary>A way over the water between two places.</summary>
/// <param name="Line">Its corners, first to last, all in navigable water.</param>
/// <param name="LengthM">Its length, m.</param>
/// <param name="CalmS">Time on calm water with no-wake areas idled through, s; the parts by eye included.</param>
/// <param name="ByEyeM">Length of the parts at its ends that lead over water too shallow or foul for a route, m.</param>
public sealed record WaterRoute(IReadOnlyList<PlanePoint> Line, double LengthM, double CalmS, double ByEyeM);

/// <summary>Shortest ways in time over the lake at today's level: any angle, never over land, shallows or hazards.</summary>
/// <remarks>
/// Waypoints on a coarsened grid and Dijkstra1959 give a first guess within some percent; line of sight on the full grid
/// pulls it straight. Connectivity is that of the full grid: no strait a cell wide is lost.
/// </remarks>
public sealed class WaterRoutes
{
    /// <summary>How far from navigable water a place may lie and still be reached, by eye, m.</summary>
    public static readonly double ByEyeReachM = 250.0;

    /// <summary>Makes the routes of a lake.</summary>
    /// <param name="water">Where the boat may run.</param>
    /// <param name="waypoints">About how many waypoints to spread over the lake: more is finer and slower.</param>
    public WaterRoutes(NavigableWater water, int waypoints = 9000)
    {
        Water = Require.NotNull(water);
        Require.InRange(waypoints, 16, 1_000_000);
        int open = 0;
        for (int iy = 0; iy < water.Frame.Ny; iy++)
            for (int ix = 0; ix < water.Frame.Nx; ix++)
                if (water.IsOpen(ix, iy)) open++;
        Graph = new RouteGraph(water, Math.Max(1, (int)Math.Ceiling(Math.Sqrt((double)open / waypoints))));
    }

    /// <summary>Where the boat may run.</summary>
    public NavigableWater Water { get; }

    internal RouteGraph Graph { get; }

    /// <summary>The quickest way between two places on calm water; null when there is none.</summary>
    public WaterRoute? Find(PlanePoint from, PlanePoint to)
    {
        if (!TryAnchor(from, out RouteAnchor a) || !TryAnchor(to, out RouteAnchor b)) return null;
        float[] timeS = new float[Graph.Count];
        int[] previous = new int[Graph.Count];
        Graph.ShortestS(a.Node, [], timeS, previous);
        return Between(a, b, timeS, previous, new RouteSmoother(Water, [], 1, 1));
    }

    /// <summary>Ways between all of many places, with times by hour.</summary>
    /// <param name="places">Where each place is entered and left.</param>
    /// <param name="start">The first hour.</param>
    /// <param name="hours">Hours to know times for, at least 1.</param>
    /// <param name="sea">Waves by place and hour; null for calm water.</param>
    /// <param name="progress">Share done.</param>
    /// <param name="cancel">Ends the work early with an exception.</param>
    public RouteMatrix Matrix(IReadOnlyList<RoutePlace> places, DateTimeOffset start, int hours, ISeaState? sea = null,
        IProgress<double>? progress = null, CancellationToken cancel = default) =>
        RouteMatrix.Build(this, Require.NotNull(places), start, Require.InRange(hours, 1, 96), sea, progress, cancel);

    internal bool TryAnchor(PlanePoint place, out RouteAnchor anchor)
    {
        anchor = default;
        if (!Water.TryNearestOpen(place, ByEyeReachM, out PlanePoint open)) return false;
        Water.Frame.TryCellAt(open, out int ix, out int iy);
        int node = Graph.NodeOfCell[Water.Frame.Index(ix, iy)];
        anchor = new RouteAnchor(open, node, open.DistanceToM(place));
        return true;
    }

    internal WaterRoute? Between(RouteAnchor from, RouteAnchor to, float[] timeS, int[] previous, RouteSmoother smoother)
    {
        if (float.IsPositiveInfinity(timeS[to.Node])) return null;
        List<PlanePoint> way = [];
        List<int> nodes = [];
        for (int node = to.Node; node >= 0; node = previous[node]) nodes.Add(node);
        nodes.Reverse();
        Append(way, from.Open, Graph.Node(nodes[0]), nodes[0], nodes[0]);
        for (int i = 1; i < nodes.Count; i++) Append(way, Graph.Node(nodes[i - 1]), Graph.Node(nodes[i]), nodes[i - 1], nodes[i]);
        Append(way, Graph.Node(nodes[^1]), to.Open, nodes[^1], nodes[^1]);
        List<PlanePoint> line = smoother.Smooth(way);
        double lengthM = 0;
        for (int i = 1; i < line.Count; i++) lengthM += line[i - 1].DistanceToM(line[i]);
        double byEyeM = from.ByEyeM + to.ByEyeM, calmS = byEyeM / Water.Boat.NoWakeMps;
        for (int i = 1; i < line.Count; i++) calmS += Water.StraightS(line[i - 1], line[i], [], 1, 1);
        return new WaterRoute(line, lengthM, calmS, byEyeM);
    }

    private void Append(List<PlanePoint> way, PlanePoint from, PlanePoint to, int a, int b)
    {
        if (way.Count == 0) way.Add(from);
        if (from == to) return;
        if (Water.StraightS(from, to, [], 1, 1) < double.PositiveInfinity) { way.Add(to); return; }
        foreach (PlanePoint point in Graph.CellWay(from, to, a, b) ?? []) way.Add(point);
    }
}

/// <summary>A place of the matrix: where it is entered and where it is left (the two ends of a pass).</summary>
public readonly record struct RoutePlace(PlanePoint In, PlanePoint Out)
{
    /// <summary>A place entered and left at one point.</summary>
    public static RoutePlace At(PlanePoint point) => new(point, point);
}

/// <summary>A place tied to the waypoints.</summary>
internal readonly record struct RouteAnchor(PlanePoint Open, int Node, double ByEyeM);
