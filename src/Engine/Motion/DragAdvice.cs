using SecondShore.Engine.Core;

namespace SecondShore.Engine.Motion;

/// <summary>How to drag with the water at one place and hour, and what the wind does to the boat meanwhile.</summary>
/// <param name="HeadingDeg">Recommended course over ground, degrees clockwise from north.</param>
/// <param name="OverGroundMps">Recommended speed over ground, m s-1.</param>
/// <param name="FollowsWater">Whether the course is the water's at the jig's depth; false where that water is all but still and the boat's drift was taken.</param>
/// <param name="AtJig">Current at the jig's depth.</param>
/// <param name="BoatDrift">Where the boat goes if nothing holds it.</param>
/// <param name="PushMps">Speed that the motor must add to the drift, m s-1.</param>
/// <param name="PushToDeg">Bearing of that push.</param>
public sealed record DragAdvice(double HeadingDeg, double OverGroundMps, bool FollowsWater, Current AtJig,
    Current BoatDrift, double PushMps, double PushToDeg)
{
    /// <summary>Slowest current worth following, m s-1 (choice): below it the water is called still.</summary>
    public static readonly double LeastFlowMps = 0.01;

    /// <summary>Usual speed of a dragged jig through the water at the bottom, m s-1 (0.6 mph; the trade's range is 0.3 to 1.0 mph).</summary>
    public static readonly double UsualThroughWaterMps = 0.6 * 0.44704;

    /// <summary>Windage of an open boat as a share of the wind (choice: the middle of 2 to 6 %; calibrate from a drift track).</summary>
    public static readonly double UsualWindageShare = 0.04;

    /// <summary>Advice for a column.</summary>
    /// <param name="column">Currents with depth.</param>
    /// <param name="jigDepthM">Depth of the jig, m.</param>
    /// <param name="windMps">Wind, m s-1.</param>
    /// <param name="windFromDeg">Where it comes from.</param>
    /// <param name="throughWaterMps">Wanted speed of the jig through the water, m s-1; null takes the usual.</param>
    /// <param name="windageShare">Boat's windage; null takes the usual.</param>
    public static DragAdvice For(ColumnCurrent column, double jigDepthM, double windMps, double windFromDeg,
        double? throughWaterMps = null, double? windageShare = null)
    {
        Require.NotNull(column);
        double wantedMps = Require.Positive(throughWaterMps ?? UsualThroughWaterMps, nameof(throughWaterMps));
        // A jig dragged on the bottom swims in the water a hand's breadth above it.
        Current atJig = column.At(Math.Min(jigDepthM, column.DepthM - Math.Min(0.3, 0.5 * column.DepthM)));
        Current drift = DriftOf(column, windMps, windFromDeg, windageShare ?? UsualWindageShare);
        bool follows = atJig.SpeedMps >= LeastFlowMps;
        double headingDeg = follows ? atJig.ToDeg : drift.ToDeg;
        double overGroundMps = wantedMps + (follows ? atJig.SpeedMps : 0.0);
        Current course = Current.Toward(overGroundMps, headingDeg);
        Current push = course + drift.Times(-1.0);
        return new DragAdvice(headingDeg, overGroundMps, follows, atJig, drift, push.SpeedMps, push.ToDeg);
    }

    /// <summary>Drift of a boat that nothing holds: the water a foot down plus windage.</summary>
    public static Current DriftOf(ColumnCurrent column, double windMps, double windFromDeg, double windageShare) =>
        Require.NotNull(column).At(0.3) + Current.Toward(Require.InRange(windageShare, 0.0, 0.3) * Require.NotNegative(windMps), windFromDeg + 180.0);
}
