namespace SecondShore.Engine.Rig;

/// <summary>The water that a rig is worked in.</summary>
/// <param name="DensityKgPerM3">Density, kg m-3.</param>
/// <param name="ViscosityM2PerS">Kinematic viscosity, m2 s-1.</param>
public readonly record struct RigWater(double DensityKgPerM3, double ViscosityM2PerS)
{
    /// <summary>Fresh water at 15 degC, for a rig worked out by hand.</summary>
    public static RigWater Usual { get; } = new(999.10, 1.139e-6);
}
