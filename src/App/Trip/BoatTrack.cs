using SecondShore.App.Shell;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.App.Trip;

/// <summary>
/// Where the boat went in the last minutes, thinned by how exactly the phone knows: the jig on its line follows the same way, as far
/// behind as the line lies out.
/// </summary>
public sealed class BoatTrack
{
    private static readonly TimeSpan Kept = TimeSpan.FromMinutes(20);
    private static readonly double LeastStepM = 3;
    private readonly List<(PlanePoint Point, DateTimeOffset At)> _points = [];
    private (PlanePoint Point, DateTimeOffset At)? _now;

    /// <summary>The way, oldest first, with the present place last.</summary>
    public IReadOnlyList<PlanePoint> Points => [.. _points.Select(p => p.Point), .. _now is { } now && (_points.Count == 0 || _points[^1] != now) ? [now.Point] : Array.Empty<PlanePoint>()];

    /// <summary>Adds a fix. What the phone's own error could have made is no step.</summary>
    public void Add(BoatFix fix)
    {
        ArgumentNullException.ThrowIfNull(fix);
        if (fix.Point is not { } point) return;
        if (_now is { } before && fix.At < before.At) _points.Clear();
        _now = (point, fix.At);
        _points.RemoveAll(p => fix.At - p.At > Kept);
        if (_points.Count == 0 || _points[^1].Point.DistanceToM(point) >= Math.Max(LeastStepM, 0.5 * fix.AccuracyM)) _points.Add((point, fix.At));
    }

    /// <summary>Where something drawn so far behind the boat is.</summary>
    /// <param name="behindM">How far behind along the way, m.</param>
    /// <returns>The place; null before the boat's way is known. A way shorter than that is carried on straight.</returns>
    public PlanePoint? Behind(double behindM)
    {
        IReadOnlyList<PlanePoint> way = Points;
        if (way.Count < 2) return null;
        double left = behindM;
        for (int i = way.Count - 1; i > 0; i--)
        {
            double stepM = way[i].DistanceToM(way[i - 1]);
            if (stepM >= left && stepM > 0) return Between(way[i], way[i - 1], left / stepM);
            left -= stepM;
        }

        double lastM = way[1].DistanceToM(way[0]);
        return lastM > 0 ? Between(way[1], way[0], (lastM + left) / lastM) : null;
    }

    private static PlanePoint Between(PlanePoint from, PlanePoint to, double share) =>
        new(from.XM + (share * (to.XM - from.XM)), from.YM + (share * (to.YM - from.YM)));
}
