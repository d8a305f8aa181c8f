using SecondShore.Engine.Core;

namespace SecondShore.Engine.Rig;

/// <summary>The mass at which a jig just leaves a wanted share of its weight on the bottom: one root, no inner loop.</summary>
public static class LeastMass
{
    /// <summary>Heaviest head looked at, kg.</summary>
    public static readonly double LargestKg = 1.0;

    /// <summary>Lightest head looked at, kg.</summary>
    public static readonly double SmallestKg = 0.0005;

    /// <summary>Least mass of head, kg, that leaves a share of its weight on the bottom; NaN when none up to <see cref="LargestKg"/> does.</summary>
    /// <remarks>
    /// With the push fixed to a share of the weight, the line's height at the rod rises with mass, so one bracketed root gives the
    /// mass. <see cref="SmallestKg"/> is returned when even that stays down. The two jig terms of the case are ignored.
    /// </remarks>
    /// <param name="jig">The jig whose head is scaled; skirt and trailer stay.</param>
    /// <param name="tow">The case.</param>
    /// <param name="jigDragFactor">Factor on the jig's drag area.</param>
    /// <param name="share">Wanted share of weight on the bottom, 0 to 0.9.</param>
    /// <param name="guessKg">A first guess, kg, or NaN.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its bounds.</exception>
    public static double MassKg(Jig jig, in TowCase tow, double jigDragFactor, double share, double guessKg = double.NaN)
    {
        Require.NotNull(jig);
        Require.InRange(share, 0.0, 0.9);
        Require.InRange(jigDragFactor, 0.0, 20.0);
        TowBounds.Require(tow with { JigWeightN = 0.1, JigDragAreaM2 = 1e-4 });
        return MassKgTrusted(jig, tow, jigDragFactor, share, guessKg, TowSolver.DefaultSteps);
    }

    internal static double MassKgTrusted(Jig jig, in TowCase tow, double jigDragFactor, double share, double guessKg, int steps)
    {
        MassShot shot = new(jig, tow, jigDragFactor, share, steps);
        double low = Math.Log(SmallestKg), high = Math.Log(LargestKg);
        double guess = double.IsNaN(guessKg) ? Math.Log(Math.Clamp(Guess(jig, tow, share), 0.001, 0.5)) : Math.Log(guessKg);
        // A narrow bracket around the guess first: most calls then need four or five integrations.
        double a = Math.Max(low, guess - 0.25), b = Math.Min(high, guess + 0.25), fa = shot.At(a), fb;
        if (fa >= 0)
        {
            b = a; fb = fa; a = low; fa = b > low ? shot.At(low) : fb;
            if (fa >= 0) return SmallestKg;
        }
        else
        {
            fb = shot.At(b);
            if (fb < 0)
            {
                a = b; fa = fb; b = high; fb = a < high ? shot.At(high) : fa;
                if (fb < 0) return double.NaN;
            }
        }

        return Math.Exp(BracketedRoot.Find(ref shot, a, fa, b, fb, double.NaN, 1e-7, 2e-7 * tow.DepthM));
    }

    private static double Guess(Jig jig, in TowCase tow, double share)
    {
        double speed = Math.Max(tow.SpeedMps - 0.0, 0.02);
        double perM = tow.LineDragFactor * ClosedForms.LineDragNPerM(tow.LineDiameterM, speed, tow.WaterDensityKgPerM3, tow.ViscosityM2PerS);
        double scope = Math.Clamp(tow.LineOutM / (tow.DepthM + tow.TipHeightM), 1.05, 20);
        double weightN = (perM * tow.DepthM / (0.7 + Math.Log(2.0 * scope)) * 1.15) + (0.2 * tow.WaterDensityKgPerM3 * 3e-4 * speed * speed);
        return weightN / (1.0 - share) / (PhysicalConstants.GravityMps2 * (1.0 - (tow.WaterDensityKgPerM3 / jig.Material.DensityKgPerM3)));
    }

    private struct MassShot : IResidual
    {
        private readonly TowSetup _setup;
        private readonly TowCase _tow;
        private readonly Jig _jig;
        private readonly double _factor, _share;

        public MassShot(Jig jig, in TowCase tow, double factor, double share, int steps)
        {
            _setup = new TowSetup(tow, steps);
            _tow = tow;
            _jig = jig;
            _factor = factor;
            _share = share;
        }

        public readonly double At(double x)
        {
            double massKg = Math.Exp(x), weightN = Math.Max(_jig.WeightInWaterN(massKg, _tow.WaterDensityKgPerM3), 1e-6);
            TowCase tow = _tow with { JigWeightN = weightN, JigDragAreaM2 = _factor * _jig.DragAreaM2(massKg) };
            JigForces forces = new(tow, _setup);
            return HeightKernel.ResidualM(_setup, forces.Start(_share * weightN, 0), _setup.LineOutM);
        }
    }
}
