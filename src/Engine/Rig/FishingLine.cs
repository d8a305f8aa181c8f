using SecondShore.Engine.Core;

namespace SecondShore.Engine.Rig;

/// <summary>A fishing line.</summary>
/// <param name="Name">Name.</param>
/// <param name="Material">Material.</param>
/// <param name="DiameterM">Diameter, m.</param>
/// <param name="StrengthN">Rated strength, N.</param>
/// <param name="DiameterMeasured">Whether the diameter was measured; a label's may be 20 % off.</param>
public sealed record FishingLine(string Name, LineMaterial Material, double DiameterM, double StrengthN, bool DiameterMeasured)
{
    /// <summary>Newtons in one pound-force, exact to the digits given.</summary>
    public static readonly double PoundForceN = 4.4482216152605;

    /// <summary>Density, kg m-3, where the user knows better than the material's.</summary>
    public double DensityKgPerM3 { get; init; } = Material.DensityKgPerM3;

    /// <summary>Young's modulus, Pa, where the user knows better than the material's.</summary>
    public double ModulusPa { get; init; } = Material.ModulusPa;

    /// <summary>Standard deviation of ln(diameter): 2 % when measured, 8 % from a label or a strength (choice).</summary>
    public double DiameterLnSd => DiameterMeasured ? 0.02 : 0.08;

    /// <summary>A line known by strength alone, with the diameter usual for it.</summary>
    /// <param name="material">Material.</param>
    /// <param name="labelPoundsNumber">Rated strength as the label says it, in pounds-force.</param>
    public static FishingLine OfPoundsWeight(LineMaterial material, double labelPoundsNumber)
    {
        Require.NotNull(material);
        Require.InRange(labelPoundsNumber, 1, 300);
        double strengthN = labelPoundsNumber * PoundForceN;
        return new FishingLine(
            FormattableString.Invariant($"{labelPoundsNumber:0.#} lb {material.Name}"), material,
            UsualDiameterM(strengthN, material.StrengthPa), strengthN, DiameterMeasured: false);
    }

    /// <summary>Diameter from rated strength, m.</summary>
    /// <param name="strengthN">Rated strength, N.</param>
    /// <param name="strengthPa">Strength over area, Pa.</param>
    public static double UsualDiameterM(double strengthN, double strengthPa) =>
        Math.Sqrt(4.0 * Require.Positive(strengthN) / (Math.PI * Require.Positive(strengthPa)));

    /// <summary>By how much a load lengthens a line, m.</summary>
    /// <param name="loadN">Load, N.</param>
    /// <param name="lengthM">Length, m.</param>
    public double StretchM(double loadN, double lengthM) =>
        loadN * lengthM / (ModulusPa * 0.25 * Math.PI * DiameterM * DiameterM);
}
