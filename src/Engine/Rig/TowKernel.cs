using System.Runtime.CompilerServices;
using SecondShore.Engine.Core;

namespace SecondShore.Engine.Rig;

/// <summary>Constants of one case, worked out once.</summary>
internal readonly struct TowSetup
{
    public readonly double HalfRhoDiameter, DiameterPerViscosity, DynamicViscosity, WetWeight, StretchPerN;
    public readonly double SpeedMps, LineOutM, SurfaceM, TargetM, HalfRho, LargestDragPerM;
    public readonly bool WorkedIn;
    public readonly int Steps;
    public readonly CurrentProfile Current;

    public TowSetup(in TowCase tow, int steps)
    {
        double area = 0.25 * Math.PI * tow.LineDiameterM * tow.LineDiameterM;
        HalfRho = 0.5 * tow.WaterDensityKgPerM3;
        HalfRhoDiameter = HalfRho * tow.LineDiameterM * tow.LineDragFactor;
        DiameterPerViscosity = tow.LineDiameterM / tow.ViscosityM2PerS;
        DynamicViscosity = tow.ViscosityM2PerS * tow.WaterDensityKgPerM3;
        WetWeight = (tow.LineDensityKgPerM3 - tow.WaterDensityKgPerM3) * PhysicalConstants.GravityMps2 * area;
        StretchPerN = tow.LineModulusPa > 0 ? 1.0 / (tow.LineModulusPa * area) : 0.0;
        SpeedMps = tow.SpeedMps;
        LineOutM = tow.LineOutM;
        SurfaceM = tow.DepthM;
        TargetM = tow.DepthM + tow.TipHeightM;
        WorkedIn = tow.Motion == TowMotion.WorkedIn;
        Steps = steps;
        Current = tow.Current ?? CurrentProfile.Still;
        double fastest = SpeedMps + Current.LargestMps + Current.LargestAcrossMps;
        LargestDragPerM = fastest > 0
            ? HalfRhoDiameter * LineDrag.NormalCoefficient(fastest * DiameterPerViscosity) * fastest * fastest
            : 0.0;
    }
}

/// <summary>How one integration from the jig up ended.</summary>
internal struct LineEnd
{
    /// <summary>State where the line leaves the water, or at its end when it does not.</summary>
    public LineState AtSurface;

    /// <summary>Line from the start of the integration to <see cref="AtSurface"/>, m unstretched.</summary>
    public double WetLineM;

    /// <summary>Height of the line's end over the rod tip, m: 0 for the true shape, negative when the line is too low.</summary>
    public double Residual;

    /// <summary>Floating line turned level before its end: the rest lies on the surface.</summary>
    public bool Surfaced;
}

/// <summary>
/// The line as a string in steady flow, integrated from the jig up by the classical fourth-order Runge-Kutta rule
/// (<c>ChooCasarella1973</c>). Forces: normal and axial drag by Reynolds number, weight in water, tension; with stretch.
/// </summary>
/// <remarks>
/// The step is even in q = ln(1 + s/a), a = first tension / (largest drag + weight per metre): the shape of a towed line
/// changes on the scale of s + a, so a fixed number of steps serves a taut line and a slack one alike.
/// </remarks>
internal static class TowKernel
{
    private const double TinyN = 1e-9;

    /// <summary>Integrates from a start to the rod tip. No allocation, no throw.</summary>
    /// <param name="c">The case.</param>
    /// <param name="start">Force and place at the lower end.</param>
    /// <param name="lengthM">Line above the start, m.</param>
    /// <param name="end">Where it ended.</param>
    /// <param name="trace">Receives the start and each step's end up to the surface, or is empty.</param>
    /// <returns>Number of states written to the trace.</returns>
    public static int Shoot(in TowSetup c, in LineState start, double lengthM, out LineEnd end, Span<LineState> trace)
    {
        double perM = c.LargestDragPerM + Math.Abs(c.WetWeight);
        double scale = Math.Clamp(Math.Max(start.Tension, TinyN) / Math.Max(perM, 1e-12), 1e-5 * lengthM, 1e3 * lengthM);
        double step = Math.Log(1.0 + (lengthM / scale)) / c.Steps;
        double half = Math.Exp(0.5 * step), full = half * half, grown = scale;
        double below = c.LineOutM - lengthM;
        int written = 0;
        if (!trace.IsEmpty) trace[written++] = start;

        LineState y = start;
        end = default;
        Slope(c, below, grown, y, out LineState slope);
        for (int i = 0; i < c.Steps; i++)
        {
            double grownHalf = grown * half, grownFull = grown * full;
            double sHalf = below + grownHalf - scale, sFull = below + grownFull - scale;
            LineState.Step(y, slope, 0.5 * step, out LineState probe);
            Slope(c, sHalf, grownHalf, probe, out LineState k2);
            LineState.Step(y, k2, 0.5 * step, out probe);
            Slope(c, sHalf, grownHalf, probe, out LineState k3);
            LineState.Step(y, k3, step, out probe);
            Slope(c, sFull, grownFull, probe, out LineState k4);
            LineState next = Combine(y, slope, k2, k3, k4, step / 6.0);
            Slope(c, sFull, grownFull, next, out LineState nextSlope);

            if (next.Z >= c.SurfaceM && next.Z > y.Z)
            {
                double share = Crossing(y.Z, slope.Z, next.Z, nextSlope.Z, step, c.SurfaceM);
                end.AtSurface = LineState.Hermite(y, slope, next, nextSlope, step, share);
                end.WetLineM = (grown * Math.Exp(share * step)) - scale;
                end.Residual = InAir(c, end.AtSurface, lengthM - end.WetLineM);
                if (!trace.IsEmpty) trace[written++] = end.AtSurface;
                return written;
            }

            if (next.Fz <= 0 && c.WetWeight < 0)
            {
                double share = y.Fz <= 0 ? 0 : Crossing(-y.Fz, -slope.Fz, -next.Fz, -nextSlope.Fz, step, 0);
                end.AtSurface = LineState.Hermite(y, slope, next, nextSlope, step, share);
                end.WetLineM = (grown * Math.Exp(share * step)) - scale;
                end.Residual = Math.Min(end.AtSurface.Z, c.SurfaceM) - c.TargetM;
                end.Surfaced = true;
                if (!trace.IsEmpty) trace[written++] = end.AtSurface;
                return written;
            }

            y = next;
            slope = nextSlope;
            grown = grownFull;
            if (!trace.IsEmpty) trace[written++] = y;
        }

        end.AtSurface = y;
        end.WetLineM = lengthM;
        end.Residual = y.Z - c.TargetM;
        return written;
    }

    /// <summary>Slope of force and place by q: that by line length, times ds/dq.</summary>
    /// <remarks>Symbols of the page docs/science/rig.md: t tangent, v water velocity minus line velocity, n and t parts.</remarks>
    private static void Slope(in TowSetup c, double sM, double perStep, in LineState y, out LineState slope)
    {
        double tension = y.Tension, inverse = 1.0 / Math.Max(tension, TinyN);
        double tx = y.Fx * inverse, ty = y.Fy * inverse, tz = y.Fz * inverse;
        c.Current.At(y.Z, out double vx, out double vy);
        vx -= c.SpeedMps;
        double vz = 0;
        if (c.WorkedIn)
        {
            // A line worked in swings about the rod tip: its sideways speed falls to nothing there.
            double share = c.SpeedMps * Math.Clamp(sM / c.LineOutM, 0.0, 1.0);
            vx += share * (1.0 - (tx * tx));
            vy -= share * tx * ty;
            vz -= share * tx * tz;
        }

        double vt = (vx * tx) + (vy * ty) + (vz * tz);
        double nx = vx - (vt * tx), ny = vy - (vt * ty), nz = vz - (vt * tz);
        double vn = Math.Sqrt((nx * nx) + (ny * ny) + (nz * nz));
        double reynolds = vn * c.DiameterPerViscosity;
        double normal = c.HalfRhoDiameter * LineDrag.NormalCoefficient(reynolds) * vn;
        double axial = LineDrag.TangentialCoefficient(reynolds, c.DynamicViscosity) * vt;
        double perM = perStep * (1.0 + (tension * c.StretchPerN));
        slope.Fx = -perM * ((normal * nx) + (axial * tx));
        slope.Fy = -perM * ((normal * ny) + (axial * ty));
        slope.Fz = (perStep * c.WetWeight) - (perM * ((normal * nz) + (axial * tz)));
        slope.X = perM * tx;
        slope.Y = perM * ty;
        slope.Z = perM * tz;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static LineState Combine(in LineState y, in LineState k1, in LineState k2, in LineState k3, in LineState k4, double sixth)
    {
        LineState next;
        next.Fx = y.Fx + (sixth * (k1.Fx + (2.0 * (k2.Fx + k3.Fx)) + k4.Fx));
        next.Fy = y.Fy + (sixth * (k1.Fy + (2.0 * (k2.Fy + k3.Fy)) + k4.Fy));
        next.Fz = y.Fz + (sixth * (k1.Fz + (2.0 * (k2.Fz + k3.Fz)) + k4.Fz));
        next.X = y.X + (sixth * (k1.X + (2.0 * (k2.X + k3.X)) + k4.X));
        next.Y = y.Y + (sixth * (k1.Y + (2.0 * (k2.Y + k3.Y)) + k4.Y));
        next.Z = y.Z + (sixth * (k1.Z + (2.0 * (k2.Z + k3.Z)) + k4.Z));
        return next;
    }

    // Above the water the line is straight: air drag and the line's own weight are a thousandth of the forces below.
    private static double InAir(in TowSetup c, in LineState atSurface, double leftM)
    {
        double tension = Math.Max(atSurface.Tension, TinyN);
        return c.SurfaceM - c.TargetM + (leftM * (atSurface.Fz / tension) * (1.0 + (tension * c.StretchPerN)));
    }

    // Share of a step at which a Hermite cubic reaches a value between those at its ends: bisection safeguarding Newton.
    internal static double Crossing(double a, double slopeA, double b, double slopeB, double step, double target)
    {
        double low = 0, high = 1, t = b > a ? Math.Clamp((target - a) / (b - a), 0.0, 1.0) : 0.5;
        for (int i = 0; i < 40; i++)
        {
            double u = 1.0 - t;
            double value = (u * u * (1.0 + (2.0 * t)) * a) + (t * t * (3.0 - (2.0 * t)) * b)
                + (t * u * step * ((u * slopeA) - (t * slopeB))) - target;
            if (value > 0) high = t; else low = t;
            double rate = (6.0 * t * u * (b - a)) + (step * ((u * (u - (2.0 * t)) * slopeA) + (t * (t - (2.0 * u)) * slopeB)));
            double nextT = rate > 0 ? t - (value / rate) : 0.5 * (low + high);
            if (!(nextT > low && nextT < high)) nextT = 0.5 * (low + high);
            if (Math.Abs(nextT - t) < 1e-13) return nextT;
            t = nextT;
        }

        return t;
    }
}
