namespace SecondShore.Engine.Rig;

/// <summary>Shape of a jig head, which sets its drag.</summary>
public enum HeadShape
{
    /// <summary>Round.</summary>
    Ball,

    /// <summary>Broad, lying across, rolls over gravel and rock.</summary>
    Broad,

    /// <summary>Slim, goes through wood and weed.</summary>
    Slim,

    /// <summary>Pointed, for swimming.</summary>
    Pointed,

    /// <summary>Flat, glides.</summary>
    Flat,
}

/// <summary>Drag of jig heads.</summary>
public static class HeadDrag
{
    // Frontal area of a sphere over its volume to the two thirds: pi/4 (6/pi)^(2/3).
    private const double SphereAreaShape = 1.2090;

    /// <summary>Drag coefficient on the area of the sphere of equal volume (<c>Hoerner1965</c>, middle of each range).</summary>
    public static double Coefficient(HeadShape shape) => shape switch
    {
        HeadShape.Ball => 0.45,
        HeadShape.Broad => 0.75,
        HeadShape.Slim => 0.40,
        HeadShape.Pointed => 0.30,
        HeadShape.Flat => 1.20,
        _ => throw new ArgumentOutOfRangeException(nameof(shape), shape, "Not a head shape."),
    };

    /// <summary>Drag area of a bare head, m2.</summary>
    /// <param name="shape">Shape.</param>
    /// <param name="massKg">Mass, kg.</param>
    /// <param name="densityKgPerM3">Density of the material, kg m-3.</param>
    public static double AreaM2(HeadShape shape, double massKg, double densityKgPerM3)
    {
        double side = Math.Cbrt(massKg / densityKgPerM3);
        return Coefficient(shape) * SphereAreaShape * side * side;
    }
}
