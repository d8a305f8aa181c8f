using SecondShore.Engine.Core;

namespace SecondShore.Engine.Rig;

/// <summary>Fall on a tight line: the jig swings down and in about the rod tip, slowly.</summary>
public static class SwingSolver
{
    /// <summary>Time of a quasi-steady swing, s, from level line down to an angle.</summary>
    /// <remarks>W cos a = 1/2 rho (CdA + Cn d L/4) v^2: the drag of a straight line turning about its end acts as a quarter of its
    /// length at the jig. Half of the line's own weight helps the jig's.</remarks>
    /// <param name="fall">Jig, line and water; its depth is not used.</param>
    /// <param name="lineOutM">Line out, m.</param>
    /// <param name="downToRad">Angle below level at which the swing ends, 0 to pi/2.</param>
    /// <param name="lineDragCoefficient">Normal drag coefficient of the line, or NaN for that of the swing's own Reynolds number.</param>
    public static double TimeS(in FallCase fall, double lineOutM, double downToRad, double lineDragCoefficient = double.NaN)
    {
        Require.Positive(lineOutM);
        Require.InRange(downToRad, 0.0, 0.5 * Math.PI);
        double wetPerM = (fall.LineDensityKgPerM3 - fall.WaterDensityKgPerM3) * PhysicalConstants.GravityMps2
            * 0.25 * Math.PI * fall.LineDiameterM * fall.LineDiameterM;
        double weight = Math.Max(fall.JigWeightN + (0.5 * wetPerM * lineOutM), 1e-6);
        // With a = pi/2 - b^2 the integrand stays finite where the jig comes to hang.
        int steps = 200;
        double from = Math.Sqrt(0.5 * Math.PI), to = Math.Sqrt(Math.Max((0.5 * Math.PI) - downToRad, 0)), sum = 0;
        double width = (from - to) / steps, speed = 0.3;
        for (int i = 0; i < steps; i++)
        {
            double b = from - ((i + 0.5) * width), cos = Math.Sin(b * b);
            speed = Speed(fall, lineOutM, weight * cos, lineDragCoefficient, speed);
            sum += 2.0 * b * width * lineOutM / speed;
        }

        return sum;
    }

    /// <summary>Time of a swing until the jig meets a bottom at a depth below the rod tip, s; a line too short hangs at the end.</summary>
    /// <param name="fall">Jig, line and water.</param>
    /// <param name="lineOutM">Line out, m.</param>
    /// <param name="depthM">Bottom below the rod tip, m.</param>
    public static double TimeToBottomS(in FallCase fall, double lineOutM, double depthM) =>
        TimeS(fall, lineOutM, depthM >= lineOutM ? 0.5 * Math.PI : Math.Asin(Require.NotNegative(depthM) / lineOutM));

    private static double Speed(in FallCase fall, double lineM, double pullN, double given, double guess)
    {
        double v = guess;
        for (int i = 0; i < 12; i++)
        {
            // Most of the line's turning drag comes from its outer part, at about three quarters of the jig's speed.
            double c = double.IsNaN(given)
                ? LineDrag.NormalCoefficient(0.75 * v * fall.LineDiameterM / fall.ViscosityM2PerS)
                : given;
            double next = Math.Sqrt(2.0 * pullN / (fall.WaterDensityKgPerM3 * (fall.DragAreaM2 + (0.25 * c * fall.LineDiameterM * lineM))));
            if (Math.Abs(next - v) < 1e-9) return Math.Max(next, 1e-9);
            v = next;
        }

        return Math.Max(v, 1e-9);
    }
}
