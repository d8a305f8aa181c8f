using SecondShore.Engine.Core.Geo;

namespace SecondShore.Answers.Sheet;

/// <summary>Leaves out points of a line that no eye would miss on paper (DouglasPeucker1973).</summary>
internal static class LineThinning
{
    public static PlanePoint[] Thin(PlanePoint[] points, double toleranceM)
    {
        if (points.Length < 4) return points;
        bool[] kept = new bool[points.Length];
        kept[0] = kept[^1] = true;
        Stack<(int From, int To)> parts = new();
        // A ring is cut at its middle, or its ends would coincide.
        int middle = points.Length / 2;
        kept[middle] = true;
        parts.Push((0, middle));
        parts.Push((middle, points.Length - 1));
        while (parts.TryPop(out (int From, int To) part))
        {
            double worst = toleranceM * toleranceM;
            int at = -1;
            for (int i = part.From + 1; i < part.To; i++)
            {
                double squared = SquaredOffLineM2(points[i], points[part.From], points[part.To]);
                if (squared > worst) { worst = squared; at = i; }
            }

            if (at < 0) continue;
            kept[at] = true;
            parts.Push((part.From, at));
            parts.Push((at, part.To));
        }

        List<PlanePoint> thin = [];
        for (int i = 0; i < points.Length; i++)
            if (kept[i]) thin.Add(points[i]);
        return [.. thin];
    }

    private static double SquaredOffLineM2(PlanePoint p, PlanePoint a, PlanePoint b)
    {
        double squared = a.SquaredDistanceToM2(b);
        double t = squared > 0 ? Math.Clamp((((p.XM - a.XM) * (b.XM - a.XM)) + ((p.YM - a.YM) * (b.YM - a.YM))) / squared, 0, 1) : 0;
        return p.SquaredDistanceToM2(new PlanePoint(a.XM + (t * (b.XM - a.XM)), a.YM + (t * (b.YM - a.YM))));
    }
}
