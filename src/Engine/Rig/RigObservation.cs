namespace SecondShore.Engine.Rig;

/// <summary>What an angler saw of one jig.</summary>
public enum ObservationKind
{
    /// <summary>The jig just leaves the bottom.</summary>
    LeavesBottom,

    /// <summary>It stayed on the bottom.</summary>
    HoldsBottom,

    /// <summary>It was off the bottom.</summary>
    OffBottom,

    /// <summary>A timed drop on slack line.</summary>
    Fall,
}

/// <summary>One observation of one jig.</summary>
/// <param name="Kind">What was seen.</param>
/// <param name="Line">Line it was seen on.</param>
/// <param name="Conditions">Depth, speed, line out, current, water; for a fall only depth and water count.</param>
/// <param name="FallS">Time of the fall, s; not used otherwise.</param>
public sealed record RigObservation(ObservationKind Kind, FishingLine Line, RigConditions Conditions, double FallS = double.NaN)
{
    /// <summary>Share of its weight on the bottom at which a jig is taken to leave it: below this it skips and is felt no more (choice).</summary>
    public static readonly double LeavingShare = 0.1;

    /// <summary>How far off the true speed, depth and moment of leaving are taken to be, as a standard deviation of ln(mass) (choice):
    /// a tenth in speed alone moves the least mass by a sixth.</summary>
    public static readonly double TowLnSd = 0.18;

    /// <summary>How far off a timed fall is taken to be, as a standard deviation of ln(time) (choice).</summary>
    public static readonly double FallLnSd = 0.07;
}
