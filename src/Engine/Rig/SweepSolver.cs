using SecondShore.Engine.Core;

namespace SecondShore.Engine.Rig;

/// <summary>When the pull of a rod sweep reaches the jig.</summary>
/// <param name="TimeS">From the start of the sweep until the pull is there, s; infinity when the sweep is too slow to take the bow out.</param>
/// <param name="RodTravelM">How far the rod tip has moved by then, m.</param>
/// <param name="StretchM">How much of that went into stretch, m.</param>
/// <param name="BowM">How much of that went into straightening the bow, m.</param>
public readonly record struct SweepResult(double TimeS, double RodTravelM, double StretchM, double BowM);

/// <summary>A sweep of the rod on a bowed, stretchy line.</summary>
/// <remarks>
/// The tug itself runs up the line at the speed of sound in it, in hundredths of a second. What takes time is stretch, and the
/// bow: a line pulled broadside through water follows b y_t = T y_xx with drag per speed b, so its slack e decays at
/// 2 pi^2 T/(b L^2) (first mode). The rod tip's travel is shared between the two while tension climbs to the wanted pull. A jig that nothing holds moves at once:
/// line slides along its own bow.
/// </remarks>
public static class SweepSolver
{
    /// <summary>Works out a sweep.</summary>
    /// <param name="tow">The tow before the sweep.</param>
    /// <param name="shape">Its shape.</param>
    /// <param name="sweepMps">Speed of the rod tip along the line, m s-1, above 0.</param>
    /// <param name="pullN">By how much the pull must rise to count, N: what it takes to move what holds the jig.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its bounds.</exception>
    public static SweepResult Solve(in TowCase tow, TowShape shape, double sweepMps, double pullN)
    {
        TowBounds.Require(tow);
        Require.NotNull(shape);
        Require.InRange(sweepMps, 0.05, 20);
        TowSetup setup = new(tow, TowSolver.DefaultSteps);
        double length = tow.LineOutM, slack = shape.SlackM, start = shape.Tow.TensionN;
        double moves = start + Require.InRange(pullN, 0.01, 500);
        double perN = setup.StretchPerN * length;
        double tension = start, rod = 0, time = 0, bow = 0, dt = 1e-3;
        while (tension < moves && time < 20)
        {
            double speed = 0.3 + (0.5 * sweepMps * Math.Sqrt(Math.Min(2.0 * Math.Max(slack, 1e-6) / length, 1.0)));
            double normal = ClosedForms.LineDragNPerM(tow.LineDiameterM, speed, tow.WaterDensityKgPerM3, tow.ViscosityM2PerS) * tow.LineDragFactor;
            double decay = 2.0 * Math.PI * Math.PI * tension / (2.0 * normal / speed * length * length);
            // Implicit in tension: without stretch the balance is stiff.
            double taken = Math.Min(slack * (1.0 - Math.Exp(-decay * dt)), sweepMps * dt);
            double gain = (sweepMps * dt) - taken;
            tension += gain / Math.Max(perN, 1e-3 * length / 100);
            slack -= taken;
            bow += taken;
            rod += sweepMps * dt;
            time += dt;
        }

        double sound = setup.StretchPerN > 0 ? length / Math.Sqrt(tow.LineModulusPa / tow.LineDensityKgPerM3) : 0;
        return tension < moves
            ? new SweepResult(double.PositiveInfinity, rod, rod - bow, bow)
            : new SweepResult(time + sound, rod, rod - bow, bow);
    }
}
