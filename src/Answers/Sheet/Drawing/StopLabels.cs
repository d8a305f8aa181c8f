namespace SecondShore.Answers.Sheet.Drawing;

/// <summary>Where the letters of stops stand on a map: off their place by a leader, away from every other mark and inside the frame.</summary>
internal static class StopLabels
{
    private const double LeaderPx = 36;

    /// <summary>Offsets of the letters from their anchors, in the drawing's own units.</summary>
    /// <param name="anchors">Places of the stops on the drawing.</param>
    /// <param name="ramp">Place of the ramp, whose name takes room too.</param>
    /// <param name="widthPx">Width of the frame.</param>
    /// <param name="heightPx">Height of the frame.</param>
    public static IReadOnlyList<(double DxPx, double DyPx)> Place(IReadOnlyList<(double XPx, double YPx)> anchors, (double XPx, double YPx) ramp, double widthPx, double heightPx)
    {
        ArgumentNullException.ThrowIfNull(anchors);
        List<(double X, double Y)> taken = [];
        for (int k = 0; k <= 4; k++) taken.Add((ramp.XPx + (ramp.XPx < widthPx * 0.7 ? 24 * k : -24 * k), ramp.YPx));
        foreach ((double x, double y) in anchors) taken.Add((x, y));
        List<(double DxPx, double DyPx)> offsets = [];
        foreach ((double x, double y) in anchors)
        {
            double best = double.NegativeInfinity, dx = 0, dy = -34;
            for (int k = 0; k < 16; k++)
            {
                double angle = k * Math.PI / 8, tx = x + (LeaderPx * Math.Cos(angle)), ty = y + (LeaderPx * Math.Sin(angle));
                if (tx < 16 || ty < 16 || tx > widthPx - 16 || ty > heightPx - 16) continue;
                double room = 90;
                foreach ((double ox, double oy) in taken) room = Math.Min(room, Math.Sqrt(((tx - ox) * (tx - ox)) + ((ty - oy) * (ty - oy))));
                if (room <= best) continue;
                (best, dx, dy) = (room, tx - x, ty - y);
            }

            taken.Add((x + dx, y + dy));
            offsets.Add((dx, dy));
        }

        return offsets;
    }
}
