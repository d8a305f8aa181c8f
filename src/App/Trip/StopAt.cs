using SecondShore.Desk.Views;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.App.Trip;

/// <summary>Which planned stop the boat is at.</summary>
public static class StopAt
{
    private static readonly double ReachM = 80, MostDoubtM = 60;

    /// <summary>The index of the stop whose place or pass lies nearest within reach; null when the boat is at none.</summary>
    /// <param name="day">The plan.</param>
    /// <param name="boat">The boat in the lake's plane.</param>
    /// <param name="accuracyM">How far off the phone may be, m.</param>
    public static int? Find(DayView day, PlanePoint boat, double accuracyM)
    {
        ArgumentNullException.ThrowIfNull(day);
        double leastM = ReachM + Math.Clamp(accuracyM, 0, MostDoubtM);
        int? found = null;
        for (int i = 0; i < day.Stops.Count; i++)
        {
            StopView stop = day.Stops[i];
            double awayM = boat.DistanceToM(new PlanePoint(stop.XM, stop.YM));
            IReadOnlyList<double> pass = day.Chart?.Passes.FirstOrDefault(p => p.Letter == stop.Letter)?.Points ?? [];
            for (int k = 0; k + 3 < pass.Count; k += 2) awayM = Math.Min(awayM, FromLineM(boat, new(pass[k], pass[k + 1]), new(pass[k + 2], pass[k + 3])));
            if (awayM > leastM || (awayM == leastM && found is not null)) continue;
            (leastM, found) = (awayM, i);
        }

        return found;
    }

    private static double FromLineM(PlanePoint p, PlanePoint a, PlanePoint b)
    {
        double dx = b.XM - a.XM, dy = b.YM - a.YM, square = (dx * dx) + (dy * dy);
        double share = square > 0 ? Math.Clamp((((p.XM - a.XM) * dx) + ((p.YM - a.YM) * dy)) / square, 0, 1) : 0;
        return p.DistanceToM(new PlanePoint(a.XM + (share * dx), a.YM + (share * dy)));
    }
}
