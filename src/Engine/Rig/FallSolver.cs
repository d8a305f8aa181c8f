using SecondShore.Engine.Core;

namespace SecondShore.Engine.Rig;

/// <summary>Fall of a jig on slack line, which it pulls down behind itself.</summary>
public static class FallSolver
{
    /// <summary>Share of the displaced water that speeds up with a blunt body (sphere), dimensionless.</summary>
    public static readonly double AddedMassCoefficient = 0.5;

    private const int Levels = 160;

    /// <summary>Steps a fall for samples of the doubt: its time to a thousandth.</summary>
    internal const int SampledLevels = 60;

    /// <summary>Falls from rest at the surface to the bottom.</summary>
    /// <param name="fall">The drop.</param>
    /// <param name="current">Current by height over the bottom, which sets the jig sideways; null is still water.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its bounds, or the jig floats.</exception>
    public static FallResult Solve(in FallCase fall, CurrentProfile? current = null)
    {
        Check(fall);
        return SolveTrusted(fall, current ?? CurrentProfile.Still);
    }

    /// <summary>Steady speed of a jig without line, m s-1.</summary>
    /// <param name="jigWeightN">Weight in water, N.</param>
    /// <param name="dragAreaM2">Drag area, m2, above 0.</param>
    /// <param name="waterDensityKgPerM3">Density of the water, kg m-3.</param>
    public static double TerminalMps(double jigWeightN, double dragAreaM2, double waterDensityKgPerM3) =>
        Math.Sqrt(2.0 * Require.Positive(jigWeightN) / (waterDensityKgPerM3 * Require.Positive(dragAreaM2)));

    /// <summary>Axial drag of line pulled straight down behind a sinking jig, N (<c>Batchelor1954</c>).</summary>
    /// <param name="speedMps">Speed of fall, m s-1.</param>
    /// <param name="lineM">Line in the water, m.</param>
    /// <param name="lineDiameterM">Diameter, m.</param>
    /// <param name="waterDensityKgPerM3">Density, kg m-3.</param>
    /// <param name="viscosityM2PerS">Kinematic viscosity, m2 s-1.</param>
    public static double LineDragN(double speedMps, double lineM, double lineDiameterM, double waterDensityKgPerM3, double viscosityM2PerS)
    {
        if (!(speedMps > 0) || !(lineM > 0)) return 0;
        double radius = 0.5 * lineDiameterM;
        // The law holds once the boundary layer is thick against the line (argument over 10); below, its logarithm is held.
        double layer = Math.Log(Math.Max(4.0 * viscosityM2PerS * lineM / (speedMps * radius * radius), 10.0));
        return 4.0 * Math.PI * viscosityM2PerS * waterDensityKgPerM3 * speedMps * lineM / layer;
    }

    internal static FallResult SolveTrusted(in FallCase fall, CurrentProfile current, int levels = Levels)
    {
        double bare = Math.Sqrt(2.0 * fall.JigWeightN / (fall.WaterDensityKgPerM3 * Math.Max(fall.DragAreaM2, 1e-7)));
        double quick = fall.MovingMassKg * bare / fall.JigWeightN;
        double dt = Math.Min(0.25 * quick, fall.DepthM / (bare * levels)), t = 0, z = 0, v = 0, along = 0, across = 0;
        // Very light jigs on thick line may all but stop; a line then bears them and no drop ends.
        for (int i = 0; i < 2_000_000; i++)
        {
            double k1 = Rate(fall, z, v), v2 = v + (0.5 * dt * k1);
            double k2 = Rate(fall, z + (0.5 * dt * v), v2), v3 = v + (0.5 * dt * k2);
            double k3 = Rate(fall, z + (0.5 * dt * v2), v3), v4 = v + (dt * k3);
            double k4 = Rate(fall, z + (dt * v3), v4);
            double nextZ = z + (dt / 6.0 * (v + (2.0 * (v2 + v3)) + v4)), nextV = v + (dt / 6.0 * (k1 + (2.0 * (k2 + k3)) + k4));
            double part = nextZ >= fall.DepthM ? (fall.DepthM - z) / (nextZ - z) : 1.0;
            current.At(fall.DepthM - (0.5 * (z + nextZ)), out double ux, out double uy);
            along += ux * dt * part;
            across += uy * dt * part;
            t += dt * part;
            if (part < 1.0 || nextZ >= fall.DepthM) return new FallResult(t, nextV, along, across);
            if (nextV < 1e-4 && i > 1000) break;
            z = nextZ;
            v = nextV;
            // Past the start, a step per level is enough: speed then changes slowly.
            if (t > 8.0 * quick) dt = Math.Min(1.4 * quick, fall.DepthM / (Math.Max(v, 1e-3) * levels));
        }

        return new FallResult(double.PositiveInfinity, v, along, across);
    }

    private static double Rate(in FallCase fall, double z, double v)
    {
        double drag = 0.5 * fall.WaterDensityKgPerM3 * fall.DragAreaM2 * v * Math.Abs(v);
        double line = LineDragN(v, z, fall.LineDiameterM, fall.WaterDensityKgPerM3, fall.ViscosityM2PerS);
        // The slack's own weight is borne by its broadside drag where it leans, so it is left out (docs/science/rig.md).
        return (fall.JigWeightN - drag - line - fall.SpoolN) / fall.MovingMassKg;
    }

    private static void Check(in FallCase fall)
    {
        Require.InRange(fall.DepthM, 0.05, 100);
        Require.InRange(fall.JigWeightN, 0.002, 20);
        Require.InRange(fall.MovingMassKg, 0.0003, 5);
        Require.InRange(fall.DragAreaM2, 1e-6, 0.02);
        Require.InRange(fall.LineDiameterM, 5e-5, 2e-3);
        Require.InRange(fall.LineDensityKgPerM3, 500, 8000);
        Require.NotNegative(fall.SpoolN);
        Require.InRange(fall.WaterDensityKgPerM3, 900, 1100);
        Require.InRange(fall.ViscosityM2PerS, 2e-7, 1e-5);
    }
}
