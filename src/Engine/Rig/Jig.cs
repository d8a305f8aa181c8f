using SecondShore.Engine.Core;

namespace SecondShore.Engine.Rig;

/// <summary>A jig as a user owns it, or a size of the trade.</summary>
/// <param name="Name">Name.</param>
/// <param name="MassKg">Mass of the head, kg.</param>
/// <param name="Material">Material of the head.</param>
/// <param name="Head">Shape of the head.</param>
/// <param name="SkirtDragAreaM2">Drag coefficient times area of the skirt, m2; 0 without.</param>
/// <param name="Trailer">Trailer; <see cref="Rig.Trailer.None"/> without.</param>
public sealed record Jig(string Name, double MassKg, JigMaterial Material, HeadShape Head, double SkirtDragAreaM2, Trailer Trailer)
{
    /// <summary>Drag area of a usual skirt, m2 (choice: a dressed 14 g jig then falls at 0.7 to 0.9 m s-1).</summary>
    public static readonly double UsualSkirtAreaM2 = 1.2e-4;

    /// <summary>What the angler's own timings and tows said about this jig; prior without.</summary>
    public RigBelief Belief { get; init; } = RigBelief.Prior;

    /// <summary>A usual jig for dragging: broad head, skirt, slim trailer.</summary>
    /// <param name="massKg">Mass of the head, kg.</param>
    /// <param name="material">Material; lead when null.</param>
    public static Jig Usual(double massKg, JigMaterial? material = null) =>
        new("jig", massKg, material ?? JigMaterial.Lead, HeadShape.Broad, UsualSkirtAreaM2, Trailer.Slim);

    /// <summary>The same jig in another weight.</summary>
    /// <param name="massKg">Mass of the head, kg.</param>
    public Jig WithMass(double massKg) => this with { MassKg = massKg };

    /// <summary>Weight of head and trailer in water, N.</summary>
    /// <param name="waterDensityKgPerM3">Density of the water, kg m-3.</param>
    public double WeightInWaterN(double waterDensityKgPerM3) => WeightInWaterN(MassKg, waterDensityKgPerM3);

    /// <summary>Drag coefficient times area of head, skirt and trailer, m2, before what <see cref="Belief"/> corrects.</summary>
    public double DragAreaM2() => DragAreaM2(MassKg);

    internal double WeightInWaterN(double massKg, double waterDensityKgPerM3) => PhysicalConstants.GravityMps2
        * ((massKg * (1.0 - (waterDensityKgPerM3 / Material.DensityKgPerM3)))
            + (Trailer.MassKg > 0 ? Trailer.MassKg * (1.0 - (waterDensityKgPerM3 / Trailer.DensityKgPerM3)) : 0.0));

    internal double DragAreaM2(double massKg) =>
        HeadDrag.AreaM2(Head, massKg, Material.DensityKgPerM3) + SkirtDragAreaM2 + Trailer.DragAreaM2;
}
