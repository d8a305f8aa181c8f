using System.Globalization;

namespace SecondShore.Engine.Rig;

/// <summary>The physical bounds within which <see cref="TowSolver"/> answers, and the sentence for a case outside them.</summary>
public static class TowBounds
{
    /// <summary>What is wrong with a case, in one sentence, or null when it can be solved.</summary>
    public static string? Problem(in TowCase tow) =>
        Check("The depth", tow.DepthM, 0.3, 100, "m")
        ?? Check("The line out", tow.LineOutM, 0.3, 400, "m")
        ?? Check("The drag speed", tow.SpeedMps, 0, 3, "m/s")
        ?? Check("The height of the rod tip over the water", tow.TipHeightM, 0, 5, "m")
        ?? Check("The slope of the bottom", tow.SlopeRad, -0.53, 0.53, "rad")
        ?? Check("The weight of the jig in water", tow.JigWeightN, 0.002, 20, "N")
        ?? Check("The drag area of the jig", tow.JigDragAreaM2, 0, 0.01, "m2")
        ?? Check("The friction on the bottom", tow.FrictionCoefficient, 0, 2, "")
        ?? Check("The diameter of the line", tow.LineDiameterM, 5e-5, 2e-3, "m")
        ?? Check("The density of the line", tow.LineDensityKgPerM3, 500, 8000, "kg/m3")
        ?? (tow.LineModulusPa == 0 ? null : Check("The modulus of the line", tow.LineModulusPa, 1e8, 3e11, "Pa"))
        ?? Check("The factor on line drag", tow.LineDragFactor, 0.1, 5, "")
        ?? Check("The density of the water", tow.WaterDensityKgPerM3, 900, 1100, "kg/m3")
        ?? Check("The kinematic viscosity of the water", tow.ViscosityM2PerS, 2e-7, 1e-5, "m2/s")
        ?? CheckCurrent(tow.Current);

    /// <summary>Throws the sentence of <see cref="Problem"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The case lies outside the bounds.</exception>
    public static void Require(in TowCase tow)
    {
        if (Problem(tow) is { } problem) throw new ArgumentOutOfRangeException(nameof(tow), problem);
    }

    private static string? CheckCurrent(CurrentProfile? current) => current is null
        ? null
        : Check("The current along the track", current.LargestMps, 0, 3, "m/s")
            ?? Check("The current across the track", current.LargestAcrossMps, 0, 3, "m/s");

    private static string? Check(string what, double value, double low, double high, string unit) =>
        value >= low && value <= high ? null : Sentence(what, value, low, high, unit);

    private static string Sentence(string what, double value, double low, double high, string unit)
    {
        string gap = unit.Length == 0 ? "" : " ";
        return string.Create(CultureInfo.InvariantCulture,
            $"{what} is {value:G6}{gap}{unit}; the solver works from {low} to {high}{gap}{unit}: check the number and its unit.");
    }
}
