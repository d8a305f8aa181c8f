using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Motion;
using SecondShore.Engine.Motion.Layers;
using Xunit;

namespace SecondShore.Engine.Tests.Motion;

/// <summary>
/// The gravest wave around a round basin of even depth on the turning earth: zeta = R(r) cos(theta - s t), where R is the
/// Bessel function J1 (s above f) or I1 (below) and no water crosses the shore: s R'(a) = f R(a)/a (Lamb 1932, art. 210).
/// </summary>
internal sealed class RoundMode
{
    private readonly double _radiusM, _coriolis, _gravity, _kappa;
    private readonly bool _rising;

    private RoundMode(double radiusM, double frequency, double kappa, bool rising, double coriolis, double gravity)
    {
        (_radiusM, FrequencyRadPerS, _kappa, _rising, _coriolis, _gravity) = (radiusM, frequency, kappa, rising, coriolis, gravity);
    }

    public double FrequencyRadPerS { get; }

    public static RoundMode Gravest(double radiusM, double speedMps, double coriolis, double gravity)
    {
        // The lowest root: look below f first (a shore-bound wave), then above.
        double Condition(double s)
        {
            bool rising = s < coriolis;
            double kappa = Math.Sqrt(Math.Abs((s * s) - (coriolis * coriolis))) / speedMps;
            (double r, double slope) = Bessel(kappa, radiusM, rising);
            return (s * slope) - (coriolis * r / radiusM);
        }

        double low = 1e-7, step = 1e-7, at = Condition(low);
        for (double s = low + step; ; s += step)
        {
            if (Math.Abs(s - coriolis) < 0.5 * step) continue;
            double next = Condition(s);
            // Within a hair of f the condition is trivially small; a real root changes sign away from it.
            if (at * next < 0 && Math.Abs(s - coriolis) > 3 * step)
            {
                double root = Halved(Condition, s - step, s);
                return new RoundMode(radiusM, root, Math.Sqrt(Math.Abs((root * root) - (coriolis * coriolis))) / speedMps, root < coriolis, coriolis, gravity);
            }

            at = next;
            Assert.True(s < 0.01, "no root");
        }
    }

    // The root between two values of different sign, to the last digit.
    private static double Halved(Func<double, double> condition, double low, double high)
    {
        bool rising = condition(low) < 0;
        for (double middle = 0.5 * (low + high); middle > low && middle < high; middle = 0.5 * (low + high))
        {
            if (condition(middle) < 0 == rising) low = middle;
            else high = middle;
        }

        return low;
    }

    public void Start(InterfaceModel model)
    {
        CoarseDepths depths = model.Grid.Depths;
        double[] offset = new double[depths.Frame.Count];
        for (int i = 0; i < offset.Length; i++)
        {
            PlanePoint p = depths.Frame.Centre(i);
            double x = p.XM - _radiusM, y = p.YM - _radiusM;
            double r = Math.Max(1e-6, Math.Sqrt((x * x) + (y * y)));
            offset[i] = 0.1 * Bessel(_kappa, r, _rising).Value * x / r;
        }

        InterfaceState.SetOffset(model, offset);
        for (int iy = 0; iy < depths.Frame.Ny; iy++)
        {
            for (int ix = 0; ix < depths.Frame.Nx; ix++)
            {
                int entry = model.Grid.Entry(ix, iy);
                PlanePoint p = depths.Frame.Centre(ix, iy);
                double half = 0.5 * depths.Frame.CellM;
                if (model.Fields.EastRoot[entry] > 0) model.Fields.East[entry] = 0.1 * Velocity(p.XM + half, p.YM).East * model.Fields.EastRoot[entry];
                if (model.Fields.NorthRoot[entry] > 0) model.Fields.North[entry] = 0.1 * Velocity(p.XM, p.YM + half).North * model.Fields.NorthRoot[entry];
            }
        }
    }

    /// <summary>Phase of the part of the displacement that turns as cos(theta - phase).</summary>
    public double PhaseRad(InterfaceModel model)
    {
        CoarseDepths depths = model.Grid.Depths;
        double[] offset = new double[depths.Frame.Count];
        InterfaceState.CopyOffset(model, offset);
        double cos = 0, sin = 0;
        for (int i = 0; i < offset.Length; i++)
        {
            if (double.IsNaN(offset[i])) continue;
            PlanePoint p = depths.Frame.Centre(i);
            double x = p.XM - _radiusM, y = p.YM - _radiusM, r = Math.Max(1e-6, Math.Sqrt((x * x) + (y * y)));
            double shape = Bessel(_kappa, r, _rising).Value;
            cos += offset[i] * shape * x / r;
            sin += offset[i] * shape * y / r;
        }

        return Math.Atan2(sin, cos);
    }

    // u_r (s2 - f2) = i g (f R/r - s R'), u_t from the second equation, at t = 0 with zeta = Re(R e^{i theta}).
    private (double East, double North) Velocity(double xM, double yM)
    {
        double x = xM - _radiusM, y = yM - _radiusM, r = Math.Max(1e-6, Math.Sqrt((x * x) + (y * y)));
        double cos = x / r, sin = y / r, s = FrequencyRadPerS, f = _coriolis;
        (double value, double slope) = Bessel(_kappa, r, _rising);
        double radial = _gravity * ((f * value / r) - (s * slope)) / ((s * s) - (f * f));
        // -i s v + f u = -i g R/r with u = i radial gives v = (g R/r + f radial)/s.
        double around = ((_gravity * value / r) + (f * radial)) / s;
        double ur = -radial * sin, ut = around * cos;
        return ((ur * cos) - (ut * sin), (ur * sin) + (ut * cos));
    }

    // J1(k r) or I1(k r) and the slope in r, by their power series (arguments stay below 12 here).
    private static (double Value, double Slope) Bessel(double k, double r, bool rising)
    {
        double x = k * r, q = (rising ? 0.25 : -0.25) * x * x, term = 0.5 * x, value = 0, slope = 0;
        for (int m = 0; m < 60; m++)
        {
            value += term;
            slope += term * ((2 * m) + 1) / r;
            term *= q / ((m + 1.0) * (m + 2.0));
        }

        return (value, slope);
    }
}
