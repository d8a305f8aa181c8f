namespace SecondShore.Engine.Rig;

/// <summary>What is found, assumed and refused about what is tied on.</summary>
public static class RigFindings
{
    /// <summary>What is out of bounds: the line out.</summary>
    public static readonly FindingKind LineOut = new("rig.line-out");

    /// <summary>What is out of bounds: the height of the rod tip over the water.</summary>
    public static readonly FindingKind TipHeight = new("rig.tip-height");

    /// <summary>What is out of bounds: the slope of the bottom.</summary>
    public static readonly FindingKind Slope = new("rig.slope");

    /// <summary>What is out of bounds: the weight of the jig in water.</summary>
    public static readonly FindingKind JigWeight = new("rig.jig-weight");

    /// <summary>What is out of bounds: the drag area of the jig.</summary>
    public static readonly FindingKind JigDrag = new("rig.jig-drag");

    /// <summary>What is out of bounds: the friction on the bottom.</summary>
    public static readonly FindingKind Friction = new("rig.friction");

    /// <summary>What is out of bounds: the diameter of the line.</summary>
    public static readonly FindingKind LineDiameter = new("rig.line-diameter");

    /// <summary>What is out of bounds: the density of the line.</summary>
    public static readonly FindingKind LineDensity = new("rig.line-density");

    /// <summary>What is out of bounds: the modulus of the line.</summary>
    public static readonly FindingKind LineModulus = new("rig.line-modulus");

    /// <summary>What is out of bounds: the factor on line drag.</summary>
    public static readonly FindingKind LineDrag = new("rig.line-drag");

    /// <summary>What is out of bounds: the density of the water.</summary>
    public static readonly FindingKind WaterDensity = new("rig.water-density");

    /// <summary>What is out of bounds: the kinematic viscosity of the water.</summary>
    public static readonly FindingKind Viscosity = new("rig.viscosity");

    /// <summary>What is out of bounds: the current along the track.</summary>
    public static readonly FindingKind CurrentAlong = new("rig.current-along");

    /// <summary>What is out of bounds: the current across the track.</summary>
    public static readonly FindingKind CurrentAcross = new("rig.current-across");

    /// <summary>A number that the solver does not cover.</summary>
    public static readonly FindingKind OutOfBounds = new("rig.out-of-bounds", "what", "value", "unit", "low", "high");

    /// <summary>A depth that the solver does not cover.</summary>
    public static readonly FindingKind DepthOutOfBounds = new("rig.depth-out-of-bounds", "depth", "low", "high");

    /// <summary>A speed that the solver does not cover.</summary>
    public static readonly FindingKind SpeedOutOfBounds = new("rig.speed-out-of-bounds", "speed", "low", "high");
}
