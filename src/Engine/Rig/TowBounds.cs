namespace SecondShore.Engine.Rig;

/// <summary>The physical bounds within which <see cref="TowSolver"/> answers, and what is wrong with a case outside them.</summary>
public static class TowBounds
{
    /// <summary>What is wrong with a case, or null when it can be solved.</summary>
    public static Finding? Problem(in TowCase tow) =>
        (tow.DepthM is >= 0.3 and <= 100 ? null : RigFindings.DepthOutOfBounds.Of(Told.Difference(tow.DepthM), Told.Difference(0.3), Told.Difference(100)))
        ?? Check(RigFindings.LineOut, tow.LineOutM, 0.3, 400, "m")
        ?? (tow.SpeedMps is >= 0 and <= 3 ? null : RigFindings.SpeedOutOfBounds.Of(Told.Speed(tow.SpeedMps), Told.Speed(0), Told.Speed(3)))
        ?? Check(RigFindings.TipHeight, tow.TipHeightM, 0, 5, "m")
        ?? Check(RigFindings.Slope, tow.SlopeRad, -0.53, 0.53, "rad")
        ?? Check(RigFindings.JigWeight, tow.JigWeightN, 0.002, 20, "N")
        ?? Check(RigFindings.JigDrag, tow.JigDragAreaM2, 0, 0.01, "m2")
        ?? Check(RigFindings.Friction, tow.FrictionCoefficient, 0, 2, "")
        ?? Check(RigFindings.LineDiameter, tow.LineDiameterM, 5e-5, 2e-3, "m")
        ?? Check(RigFindings.LineDensity, tow.LineDensityKgPerM3, 500, 8000, "kg/m3")
        ?? (tow.LineModulusPa == 0 ? null : Check(RigFindings.LineModulus, tow.LineModulusPa, 1e8, 3e11, "Pa"))
        ?? Check(RigFindings.LineDrag, tow.LineDragFactor, 0.1, 5, "")
        ?? Check(RigFindings.WaterDensity, tow.WaterDensityKgPerM3, 900, 1100, "kg/m3")
        ?? Check(RigFindings.Viscosity, tow.ViscosityM2PerS, 2e-7, 1e-5, "m2/s")
        ?? CheckCurrent(tow.Current);

    /// <summary>Throws what <see cref="Problem"/> finds.</summary>
    /// <exception cref="RefusedException">The case lies outside the bounds.</exception>
    public static void Require(in TowCase tow)
    {
        if (Problem(tow) is { } problem) throw new RefusedException(problem);
    }

    private static Finding? CheckCurrent(CurrentProfile? current) => current is null
        ? null
        : Check(RigFindings.CurrentAlong, current.LargestMps, 0, 3, "m/s")
            ?? Check(RigFindings.CurrentAcross, current.LargestAcrossMps, 0, 3, "m/s");

    private static Finding? Check(FindingKind what, double value, double low, double high, string unit) =>
        value >= low && value <= high ? null : RigFindings.OutOfBounds.Of(what.Of(), value, unit.Length == 0 ? "" : " " + unit, low, high);
}
