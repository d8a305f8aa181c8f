namespace SecondShore.Engine.Rig;

/// <summary>How the line moves with the jig.</summary>
public enum TowMotion
{
    /// <summary>The whole line travels with the boat: dragging under way or adrift.</summary>
    BehindBoat,

    /// <summary>The boat stands and the jig is worked in: the line runs along itself and swings about the rod tip.</summary>
    WorkedIn,
}

/// <summary>One steady tow, in plain numbers. Everything that the solver needs and nothing else. Default: not valid.</summary>
/// <remarks>
/// Heights grow upward from the bottom under the jig. Along is the boat's direction of travel. Bounds are those of
/// <see cref="TowBounds"/>.
/// </remarks>
public readonly record struct TowCase
{
    /// <summary>Depth of water at the jig, m.</summary>
    public double DepthM { get; init; }

    /// <summary>Line out from the rod tip to the jig, unstretched, m.</summary>
    public double LineOutM { get; init; }

    /// <summary>Speed of the jig over the bottom, m s-1: the boat's, or that of the jig worked in.</summary>
    public double SpeedMps { get; init; }

    /// <summary>Height of the rod tip over the water, m.</summary>
    public double TipHeightM { get; init; }

    /// <summary>How the line moves.</summary>
    public TowMotion Motion { get; init; }

    /// <summary>Current by height; null is still water.</summary>
    public CurrentProfile? Current { get; init; }

    /// <summary>Slope of the bottom along the track, rad, positive uphill.</summary>
    public double SlopeRad { get; init; }

    /// <summary>Weight of jig and trailer in water, N.</summary>
    public double JigWeightN { get; init; }

    /// <summary>Drag coefficient times area of head, skirt and trailer, m2.</summary>
    public double JigDragAreaM2 { get; init; }

    /// <summary>Friction of the jig on the bottom, dimensionless.</summary>
    public double FrictionCoefficient { get; init; }

    /// <summary>Line diameter, m.</summary>
    public double LineDiameterM { get; init; }

    /// <summary>Line density, kg m-3.</summary>
    public double LineDensityKgPerM3 { get; init; }

    /// <summary>Young's modulus of the line, Pa; 0 means that it does not stretch.</summary>
    public double LineModulusPa { get; init; }

    /// <summary>Factor on the normal drag coefficient of the line: fuzz, strumming, doubt. 1 is a smooth line.</summary>
    public double LineDragFactor { get; init; }

    /// <summary>Density of the water, kg m-3.</summary>
    public double WaterDensityKgPerM3 { get; init; }

    /// <summary>Kinematic viscosity of the water, m2 s-1.</summary>
    public double ViscosityM2PerS { get; init; }
}
