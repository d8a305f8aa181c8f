namespace SecondShore.Engine.Rig;

/// <summary>One point of the line under water.</summary>
/// <param name="BehindM">Distance behind the rod tip, m, along the track.</param>
/// <param name="LeftM">Distance left of the track, m.</param>
/// <param name="HeightM">Height over the bottom, m.</param>
/// <param name="TensionN">Tension, N.</param>
public readonly record struct LinePoint(double BehindM, double LeftM, double HeightM, double TensionN);

/// <summary>The true shape of the line, from the jig to the rod tip, to draw to scale.</summary>
/// <param name="Tow">The tow.</param>
/// <param name="Points">Points from the jig up to the rod tip.</param>
/// <param name="BowM">Largest distance of the line from the straight between its ends, m.</param>
/// <param name="SlackM">How much longer the line between its ends is than that straight, m.</param>
public sealed record TowShape(TowResult Tow, IReadOnlyList<LinePoint> Points, double BowM, double SlackM)
{
    /// <summary>Solves a tow and traces its line.</summary>
    /// <param name="tow">The case.</param>
    /// <param name="steps">Points along the line, 4 to 2000; 0 takes 40.</param>
    /// <exception cref="RefusedException">The case lies outside <see cref="TowBounds"/>.</exception>
    public static TowShape Of(in TowCase tow, int steps = 0)
    {
        TowBounds.Require(tow);
        int parts = TowSolver.Steps(steps == 0 ? 40 : steps);
        LineState[] trace = new LineState[parts + 2];
        TowResult result = TowSolver.SolveTrusted(tow, parts, trace, out int count);
        LinePoint[] points = new LinePoint[count + 1];
        for (int i = 0; i < count; i++)
        {
            LineState s = trace[i];
            points[i] = new LinePoint(result.TrailM - s.X, result.SideM + s.Y, s.Z, s.Tension);
        }

        points[count] = new LinePoint(0, 0, tow.DepthM + tow.TipHeightM, result.TensionN);
        return new TowShape(result, points, Bow(points), Slack(points));
    }

    private static double Bow(LinePoint[] points)
    {
        LinePoint a = points[0], b = points[^1];
        (double x, double y, double z) = (b.BehindM - a.BehindM, b.LeftM - a.LeftM, b.HeightM - a.HeightM);
        double length = Math.Sqrt((x * x) + (y * y) + (z * z)), most = 0;
        if (length < 1e-12) return 0;
        foreach (LinePoint p in points)
        {
            (double px, double py, double pz) = (p.BehindM - a.BehindM, p.LeftM - a.LeftM, p.HeightM - a.HeightM);
            double along = ((px * x) + (py * y) + (pz * z)) / length;
            double off = Math.Sqrt(Math.Max((px * px) + (py * py) + (pz * pz) - (along * along), 0));
            most = Math.Max(most, off);
        }

        return most;
    }

    private static double Slack(LinePoint[] points)
    {
        double arc = 0;
        for (int i = 1; i < points.Length; i++) arc += Distance(points[i - 1], points[i]);
        return Math.Max(arc - Distance(points[0], points[^1]), 0);
    }

    private static double Distance(LinePoint a, LinePoint b)
    {
        double x = b.BehindM - a.BehindM, y = b.LeftM - a.LeftM, z = b.HeightM - a.HeightM;
        return Math.Sqrt((x * x) + (y * y) + (z * z));
    }
}
