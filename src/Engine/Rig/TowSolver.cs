namespace SecondShore.Engine.Rig;

/// <summary>
/// Steady tow of a jig on the bottom or above it. The line hangs as <see cref="TowKernel"/> integrates it; the one unknown
/// is the push of the bottom, or, when even without it the line pulls the jig off, the height over the bottom.
/// </summary>
/// <remarks>Without allocation; about ten integrations a solution. See docs/science/rig.md.</remarks>
public static class TowSolver
{
    /// <summary>Runge-Kutta steps a line unless said otherwise: depth to about 1e-5 of itself.</summary>
    public static readonly int DefaultSteps = 20;

    /// <summary>Solves a tow.</summary>
    /// <param name="tow">The case, within <see cref="TowBounds"/>.</param>
    /// <param name="steps">Runge-Kutta steps along the line, 4 to 2000; 0 takes <see cref="DefaultSteps"/>.</param>
    /// <exception cref="RefusedException">The case lies outside the bounds.</exception>
    public static TowResult Solve(in TowCase tow, int steps = 0)
    {
        TowBounds.Require(tow);
        return SolveTrusted(tow, Steps(steps), default, out _);
    }

    /// <summary>Solves a tow, or says why not.</summary>
    /// <param name="tow">The case.</param>
    /// <param name="result">The tow; default when there is a problem.</param>
    /// <param name="problem">What is wrong, or null.</param>
    public static bool TrySolve(in TowCase tow, out TowResult result, out Finding? problem)
    {
        problem = TowBounds.Problem(tow);
        result = problem is null ? SolveTrusted(tow, DefaultSteps, default, out _) : default;
        return problem is null;
    }

    internal static int Steps(int steps) => steps == 0 ? DefaultSteps : Core.Require.InRange(steps, 4, 2000);

    /// <summary>As <see cref="Solve"/>, unchecked, writing the states along the line into a trace when one is given.</summary>
    internal static TowResult SolveTrusted(in TowCase tow, int steps, Span<LineState> trace, out int traced)
    {
        TowSetup setup = new(tow, steps);
        JigForces jig = new(tow, setup);
        PushShot push = new(setup, jig);
        double lifting = push.At(0);
        if (lifting < 0) return SolveLifted(tow, setup, jig, -lifting, trace, out traced);

        // A guess a little high mostly closes the bracket at once; only when it is low must a full push be tried.
        double full = jig.LargestPushN, low = 0, atLow = lifting, high = 1.02 * PushGuess(tow, setup, full);
        double atHigh = high < full ? push.At(high) : double.PositiveInfinity;
        if (!(atHigh < 0))
        {
            if (high < full) (low, atLow) = (high, atHigh);
            high = full;
            atHigh = push.At(full);
            if (atHigh >= 0) return SolveLineOnBottom(tow, setup, jig, atHigh, trace, out traced);
        }

        double n = BracketedRoot.Find(ref push, low, atLow, high, atHigh, double.NaN, 1e-9 * full, 1e-7 * tow.DepthM);
        traced = TowKernel.Shoot(setup, jig.Start(n, 0), tow.LineOutM, out LineEnd end, trace);
        return Result(tow, setup, end, jig.Start(n, 0), JigContact.OnBottom, n, 0, 0);
    }

    // Push by the closed form of a weightless line, with half the line's weight and the mean flow: saves integrations, decides nothing.
    private static double PushGuess(in TowCase tow, in TowSetup setup, double fullN)
    {
        setup.Current.At(0.5 * tow.DepthM, out double along, out double across);
        double squared = ((along - tow.SpeedMps) * (along - tow.SpeedMps)) + (across * across), speed = Math.Sqrt(squared);
        if (speed < 1e-3) return double.NaN;
        double perM = setup.HalfRhoDiameter * LineDrag.NormalCoefficient(speed * setup.DiameterPerViscosity) * squared;
        if (setup.WorkedIn) perM *= 0.5;
        double line = 0.5 * setup.WetWeight * tow.LineOutM, drag = setup.HalfRho * tow.JigDragAreaM2 * squared;
        double low = 0, high = fullN;
        for (int i = 0; i < 9; i++)
        {
            double n = 0.5 * (low + high), up = tow.JigWeightN - n + line, back = drag + (tow.FrictionCoefficient * n);
            if (up <= 0) { high = n; continue; }
            double t = Math.Sqrt((up * up) + (back * back)), c0 = back / up, c1 = c0 + (perM * tow.LineOutM / t);
            if (t / perM * (Math.Asinh(c1) - Math.Asinh(c0)) > setup.TargetM) low = n; else high = n;
        }

        return 0.5 * (low + high);
    }

    private static TowResult SolveLifted(in TowCase tow, in TowSetup setup, in JigForces jig, double missingM, Span<LineState> trace, out int traced)
    {
        HeightShot shot = new(setup, jig);
        double top = setup.TargetM;
        double h = BracketedRoot.Find(ref shot, 0, -missingM, top, shot.At(top), missingM, 1e-9 * top, 1e-8 * tow.DepthM);
        traced = TowKernel.Shoot(setup, jig.Start(0, h), tow.LineOutM, out LineEnd end, trace);
        return Result(tow, setup, end, jig.Start(0, h), JigContact.Lifted, 0, h, 0);
    }

    private static TowResult SolveLineOnBottom(in TowCase tow, in TowSetup setup, in JigForces jig, double slackM, Span<LineState> trace, out int traced)
    {
        BedShot shot = new(setup, jig, tow.FrictionCoefficient);
        double most = Math.Max(tow.LineOutM - setup.TargetM, 0), left = shot.At(most);
        double bed = most <= 0 || left >= 0
            ? most
            : BracketedRoot.Find(ref shot, 0, slackM, most, left, double.NaN, 1e-9 * tow.LineOutM, 1e-8 * tow.DepthM);
        LineState start = shot.Start(bed);
        if (!trace.IsEmpty) trace[0] = new LineState { Fx = jig.Start(jig.LargestPushN, 0).Fx };
        traced = (trace.IsEmpty ? 0 : 1) + TowKernel.Shoot(setup, start, tow.LineOutM - bed, out LineEnd end, trace.IsEmpty ? trace : trace[1..]);
        return Result(tow, setup, end, start, JigContact.LineOnBottom, jig.LargestPushN, 0, bed);
    }

    private static TowResult Result(in TowCase tow, in TowSetup setup, in LineEnd end, in LineState start, JigContact contact,
        double pushN, double heightM, double bedM)
    {
        LineState top = end.AtSurface;
        double tension = top.Tension, level = Math.Sqrt((top.Fx * top.Fx) + (top.Fy * top.Fy));
        double air = level > 1e-12 && top.Fz > 0 ? tow.TipHeightM * (level / top.Fz) : 0;
        air = Math.Min(air, Math.Max(tow.LineOutM - bedM - end.WetLineM, 0));
        double surfaceLine = end.Surfaced ? Math.Max(tow.LineOutM - bedM - end.WetLineM, 0) : 0;
        return new TowResult
        {
            Contact = contact,
            BottomPushN = pushN,
            WeightOnBottomShare = pushN / tow.JigWeightN,
            HeightOverBottomM = heightM,
            LineAngleRad = Math.Atan2(top.Fz, level),
            TensionN = tension,
            JigTensionN = start.Tension,
            TrailM = top.X + (level > 1e-12 ? air * top.Fx / level : 0) + surfaceLine,
            SideM = -(top.Y + (level > 1e-12 ? air * top.Fy / level : 0)),
            LineOnBottomM = bedM,
            LineOnSurfaceM = surfaceLine,
            StretchM = tension * setup.StretchPerN * tow.LineOutM,
        };
    }
}
