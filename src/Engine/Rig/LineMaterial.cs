using SecondShore.Engine.Core;

namespace SecondShore.Engine.Rig;

/// <summary>What a fishing line is made of, with typical values of the finished line.</summary>
/// <param name="Name">Name as a user writes it.</param>
/// <param name="DensityKgPerM3">Density, kg m-3.</param>
/// <param name="StrengthPa">Rated strength over nominal area, Pa: turns a strength into a diameter.</param>
/// <param name="ModulusPa">Young's modulus, Pa: stretch.</param>
public sealed record LineMaterial(string Name, double DensityKgPerM3, double StrengthPa, double ModulusPa)
{
    /// <summary>Nylon monofilament.</summary>
    public static LineMaterial Nylon { get; } = new("nylon", 1140, 6.5e8, 1.7e9);

    /// <summary>Fluorocarbon (PVDF): sinks.</summary>
    public static LineMaterial Fluorocarbon { get; } = new("fluorocarbon", 1780, 6.7e8, 2.0e9);

    /// <summary>Braided polyethylene: floats, hardly stretches.</summary>
    public static LineMaterial Braid { get; } = new("braid", 975, 2.1e9, 4.0e10);

    /// <summary>The material of a name, or null.</summary>
    /// <param name="name">Name, any case; <c>mono</c> is nylon, <c>fluoro</c> fluorocarbon.</param>
    public static LineMaterial? Find(string name) => Require.NotNull(name).Trim().ToUpperInvariant() switch
    {
        "NYLON" or "MONO" or "MONOFILAMENT" => Nylon,
        "FLUOROCARBON" or "FLUORO" => Fluorocarbon,
        "BRAID" or "BRAIDED" => Braid,
        _ => null,
    };
}
