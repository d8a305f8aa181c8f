namespace SecondShore.Engine.Rig;

/// <summary>A soft trailer on the hook.</summary>
/// <param name="Name">Name.</param>
/// <param name="DragAreaM2">Drag coefficient times area, m2.</param>
/// <param name="MassKg">Mass, kg.</param>
/// <param name="DensityKgPerM3">Density, kg m-3: soft plastic about 1080, salted more, floating less than water.</param>
public sealed record Trailer(string Name, double DragAreaM2, double MassKg = 0.006, double DensityKgPerM3 = 1080)
{
    /// <summary>No trailer.</summary>
    public static Trailer None { get; } = new("none", 0, 0);

    /// <summary>Slim and quiet.</summary>
    public static Trailer Slim { get; } = new("slim", 1.0e-4);

    /// <summary>Bulky, with claws.</summary>
    public static Trailer Bulky { get; } = new("bulky", 2.5e-4, 0.009);

    /// <summary>Flapping claws.</summary>
    public static Trailer Flapping { get; } = new("flapping", 3.0e-4, 0.008);

    /// <summary>Swimming tail.</summary>
    public static Trailer Swimming { get; } = new("swimming", 1.8e-4, 0.008);

    /// <summary>The kinds known by name; areas are priors (choice) that one timed drop corrects.</summary>
    public static IReadOnlyList<Trailer> Kinds { get; } = [None, Slim, Bulky, Flapping, Swimming];
}
