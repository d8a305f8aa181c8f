namespace SecondShore.Engine.Rig;

/// <summary>A rod.</summary>
/// <param name="Name">Name.</param>
/// <param name="LengthM">Length, m.</param>
/// <param name="LightestLureKg">Lightest lure it is rated for, kg; 0 when not said.</param>
/// <param name="HeaviestLureKg">Heaviest lure it is rated for, kg; 0 when not said.</param>
public sealed record Rod(string Name, double LengthM, double LightestLureKg = 0, double HeaviestLureKg = 0);
