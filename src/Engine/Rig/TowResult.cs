namespace SecondShore.Engine.Rig;

/// <summary>Where a towed jig runs.</summary>
public enum JigContact
{
    /// <summary>On the bottom, the line rising from the jig.</summary>
    OnBottom,

    /// <summary>On the bottom, the last stretch of line lying there too.</summary>
    LineOnBottom,

    /// <summary>Off the bottom.</summary>
    Lifted,
}

/// <summary>A steady tow, solved. Default: nothing.</summary>
public readonly record struct TowResult
{
    /// <summary>Whether the jig is on the bottom.</summary>
    public JigContact Contact { get; init; }

    /// <summary>Push of the bottom on the jig, N; 0 when lifted.</summary>
    public double BottomPushN { get; init; }

    /// <summary>That push over the jig's weight in water, 0 to 1: the feel. 0.3 to 0.7 is good, under 0.1 skips, over 0.8 digs in.</summary>
    public double WeightOnBottomShare { get; init; }

    /// <summary>Height of the jig over the bottom, m; 0 on it.</summary>
    public double HeightOverBottomM { get; init; }

    /// <summary>Angle of the line below level where it leaves the water, rad.</summary>
    public double LineAngleRad { get; init; }

    /// <summary>Tension at the rod, N.</summary>
    public double TensionN { get; init; }

    /// <summary>Tension at the jig, N.</summary>
    public double JigTensionN { get; init; }

    /// <summary>How far the jig trails behind the rod tip, m.</summary>
    public double TrailM { get; init; }

    /// <summary>How far the jig lies to the left of the track, m (a current across it).</summary>
    public double SideM { get; init; }

    /// <summary>Line lying on the bottom, m.</summary>
    public double LineOnBottomM { get; init; }

    /// <summary>Line lying on the surface, m (slack floating line).</summary>
    public double LineOnSurfaceM { get; init; }

    /// <summary>By how much tension lengthens the line, m (rod tension over the whole line, an upper bound).</summary>
    public double StretchM { get; init; }
}
