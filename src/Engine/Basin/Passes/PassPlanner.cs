using SecondShore.Engine.Core;
using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Basin.Passes;

/// <summary>
/// Draws lines to drag along: from a place both ways along its depth, steered as a boat steers. The heading follows the
/// contour and leans back towards the wanted depth, and never turns faster than the boat's radius allows.
/// </summary>
public static class PassPlanner
{
    /// <summary>The pass along the depth of a place; null where no line of the least length stays in the water and on the belt.</summary>
    /// <param name="grid">Depths.</param>
    /// <param name="chance">[Ny*Nx] chance in reach; null without a thermocline.</param>
    /// <param name="place">A place in the water.</param>
    /// <param name="targetM">Depth to keep, m.</param>
    /// <param name="reachM">How far above or below it the line may stray, m.</param>
    /// <param name="options">How it is drawn.</param>
    /// <param name="axisDeg">Bearing to take on level bottom, degrees; NaN for east.</param>
    public static Pass? Along(DepthGrid grid, float[]? chance, PlanePoint place, double targetM, double reachM, PassOptions options, double axisDeg = double.NaN)
    {
        Require.NotNull(grid);
        Require.NotNull(options);
        if (double.IsNaN(grid.DepthAtM(place))) return null;
        double stepM = Math.Max(3, Math.Min(0.5 * grid.Frame.CellM, options.TurnRadiusM / 3));
        (double gx, double gy) = Gradient(grid, place);
        double slope = Math.Sqrt((gx * gx) + (gy * gy)), axis = double.IsNaN(axisDeg) ? 90 : axisDeg;
        double dx = slope > 0.01 ? -gy / slope : Math.Sin(double.DegreesToRadians(axis)), dy = slope > 0.01 ? gx / slope : Math.Cos(double.DegreesToRadians(axis));
        List<PlanePoint> ahead = March(grid, place, dx, dy, targetM, reachM, options, stepM), behind = March(grid, place, -dx, -dy, targetM, reachM, options, stepM);
        behind.Reverse();
        return Of(grid, chance, [.. behind, place, .. ahead], options);
    }

    /// <summary>The pass along a given line near a place, as far as it stays in the water and on the belt; null where too little does.</summary>
    /// <param name="grid">Depths.</param>
    /// <param name="chance">[Ny*Nx] chance in reach; null without a thermocline.</param>
    /// <param name="line">The line, such as a crest or a ledge.</param>
    /// <param name="place">The place on it to start from.</param>
    /// <param name="targetM">Depth to keep near, m.</param>
    /// <param name="reachM">How far above or below it the line may stray, m.</param>
    /// <param name="options">How it is drawn.</param>
    public static Pass? Over(DepthGrid grid, float[]? chance, IReadOnlyList<PlanePoint> line, PlanePoint place, double targetM, double reachM, PassOptions options)
    {
        Require.NotNull(grid);
        Require.NotNull(line);
        Require.NotNull(options);
        int nearest = 0;
        for (int k = 1; k < line.Count; k++)
            if (line[k].SquaredDistanceToM2(place) < line[nearest].SquaredDistanceToM2(place)) nearest = k;
        int from = nearest, to = nearest;
        while (from > 0 && Good(line[from - 1]) && line[from - 1].DistanceToM(place) < 0.5 * options.LengthM) from--;
        while (to + 1 < line.Count && Good(line[to + 1]) && line[to + 1].DistanceToM(place) < 0.5 * options.LengthM) to++;
        List<PlanePoint> kept = [];
        for (int k = from; k <= to; k++) kept.Add(line[k]);
        return kept.Count < 3 || !IsGentle(kept, options.TurnRadiusM) ? null : Of(grid, chance, kept, options);

        bool Good(PlanePoint p) => grid.DepthAtM(p) is var d && d >= options.LeastDepthM && Math.Abs(d - targetM) <= reachM;
    }

    private static List<PlanePoint> March(DepthGrid grid, PlanePoint from, double dx, double dy, double targetM, double reachM, PassOptions options, double stepM)
    {
        List<PlanePoint> line = [];
        PlanePoint at = from;
        double heading = Math.Atan2(dy, dx), most = stepM / options.TurnRadiusM;
        for (double done = stepM; done <= 0.5 * options.LengthM; done += stepM)
        {
            (double gx, double gy) = Gradient(grid, at);
            double slope = Math.Sqrt((gx * gx) + (gy * gy));
            if (slope > 0.01)
            {
                // Along the contour in the running direction, leaning back to the wanted depth over two turning radii.
                double side = (Math.Cos(heading) * -gy) + (Math.Sin(heading) * gx) >= 0 ? 1 : -1;
                double tx = side * -gy / slope, ty = side * gx / slope;
                double off = Math.Clamp((targetM - grid.DepthAtM(at)) / (slope * 2 * options.TurnRadiusM), -1, 1);
                double wish = Math.Atan2(ty + (off * gy / slope), tx + (off * gx / slope));
                heading += Math.Clamp(Math.IEEERemainder(wish - heading, 2 * Math.PI), -most, most);
            }

            PlanePoint next = new(at.XM + (stepM * Math.Cos(heading)), at.YM + (stepM * Math.Sin(heading)));
            double depth = grid.DepthAtM(next);
            if (!(depth >= options.LeastDepthM) || Math.Abs(depth - targetM) > reachM || MeetsItself(line, from, next, options.TurnRadiusM)) break;
            line.Add(next);
            at = next;
        }

        return line;
    }

    // A line round a hump closes: it ends where it would run over its own start.
    private static bool MeetsItself(List<PlanePoint> line, PlanePoint start, PlanePoint next, double radiusM)
    {
        if (line.Count * 3 < radiusM) return false;
        double travelled = 0;
        for (int k = line.Count - 1; k > 0; k--)
        {
            travelled += line[k].DistanceToM(line[k - 1]);
            if (travelled > 3 * radiusM && line[k - 1].DistanceToM(next) < 0.5 * radiusM) return true;
        }

        return travelled > 3 * radiusM && start.DistanceToM(next) < 0.5 * radiusM;
    }

    private static bool IsGentle(List<PlanePoint> line, double radiusM)
    {
        for (int k = 2; k + 2 < line.Count; k++)
        {
            double radius = Terrain.BendRadius.ThroughM(line[k - 2], line[k], line[k + 2]);
            if (radius < radiusM) return false;
        }

        return true;
    }

    private static Pass? Of(DepthGrid grid, float[]? chance, List<PlanePoint> line, PassOptions options)
    {
        double length = 0, shallow = double.MaxValue, deep = 0, sum = 0;
        for (int k = 0; k < line.Count; k++)
        {
            if (k > 0) length += line[k - 1].DistanceToM(line[k]);
            double depth = grid.DepthAtM(line[k]);
            if (double.IsNaN(depth)) return null;
            shallow = Math.Min(shallow, depth);
            deep = Math.Max(deep, depth);
            if (chance is not null && grid.Frame.TryCellAt(line[k], out int ix, out int iy)) sum += chance[grid.Frame.Index(ix, iy)];
        }

        return length < options.LeastLengthM ? null : new Pass(line, length, shallow, deep, line[0].BearingToDeg(line[^1]), sum / line.Count);
    }

    // Slope of depth over a couple of cells either side, so that a sounder's noise does not steer the boat.
    private static (double X, double Y) Gradient(DepthGrid grid, PlanePoint p)
    {
        double h = Math.Max(1.5 * grid.Frame.CellM, 8), here = grid.DepthAtM(p);
        return (Slope(grid.DepthAtM(new PlanePoint(p.XM - h, p.YM)), here, grid.DepthAtM(new PlanePoint(p.XM + h, p.YM)), h),
            Slope(grid.DepthAtM(new PlanePoint(p.XM, p.YM - h)), here, grid.DepthAtM(new PlanePoint(p.XM, p.YM + h)), h));

        static double Slope(double before, double here, double after, double h) =>
            double.IsNaN(before) ? (double.IsNaN(after) ? 0 : (after - here) / h) : double.IsNaN(after) ? (here - before) / h : (after - before) / (2 * h);
    }
}
