namespace SecondShore.Engine.Motion;

/// <summary>What is found, assumed and refused about wind and water in motion.</summary>
public static class MotionFindings
{
    /// <summary>Wind without any direction.</summary>
    public static readonly FindingKind NoDirection = new("motion.no-direction");

    /// <summary>Wind without a direction at times.</summary>
    public static readonly FindingKind DirectionMissing = new("motion.direction-missing", "missing", "hours");

    /// <summary>Wind without gusts.</summary>
    public static readonly FindingKind NoGusts = new("motion.no-gusts");
}
