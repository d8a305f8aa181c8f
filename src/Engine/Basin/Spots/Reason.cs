using SecondShore.Engine.Basin.Forms;

namespace SecondShore.Engine.Basin.Spots;

/// <summary>Kinds of reason for a spot.</summary>
public enum ReasonKind
{
    /// <summary>It lies on a form, at depths <see cref="Reason.ShallowM"/> to <see cref="Reason.DeepM"/>.</summary>
    OnForm,

    /// <summary>A channel swings against a flat <see cref="Reason.DistanceM"/> away.</summary>
    SwingsByFlat,

    /// <summary>Another form lies <see cref="Reason.DistanceM"/> away.</summary>
    NearForm,

    /// <summary>Cover lies <see cref="Reason.DistanceM"/> away.</summary>
    CoverNear,

    /// <summary>The bottom breaks by <see cref="Reason.SlopeDeg"/>.</summary>
    SharpEdge,

    /// <summary>The bottom changes from <see cref="Reason.ShallowM"/> to <see cref="Reason.DeepM"/> within <see cref="Reason.DistanceM"/>.</summary>
    DepthChange,

    /// <summary>Water of <see cref="Reason.DeepM"/> lies <see cref="Reason.DistanceM"/> away.</summary>
    DeepWater,

    /// <summary>Chance that the bottom is in reach of the thermocline.</summary>
    InReach,

    /// <summary>The arm named by <see cref="Reason.Word"/> has mixed and settled.</summary>
    ArmSettled,

    /// <summary>The arm named by <see cref="Reason.Word"/> is still layered.</summary>
    ArmLayered,

    /// <summary>Steep: fish can move up and down without travelling.</summary>
    SteepAnyDepth,

    /// <summary>A channel's edge, good at any depth.</summary>
    EdgeAnyDepth,

    /// <summary>The back of an arm, shallow: swim the jig rather than drag it.</summary>
    BackOfArm,

    /// <summary>A shallow flat near a channel with the wind on it.</summary>
    WindBlownFlat,
}

/// <summary>One reason with its numbers, so that units can be switched when it is put into words. NaN where a number does not apply.</summary>
/// <param name="Kind">What it says.</param>
/// <param name="Form">The form meant, if one is.</param>
/// <param name="DistanceM">Distance, m.</param>
/// <param name="ShallowM">Shallow end of a depth range, m.</param>
/// <param name="DeepM">Deep end of a depth range, m.</param>
/// <param name="SlopeDeg">Slope, degrees.</param>
/// <param name="ChanceShare">Chance, 0 to 1.</param>
/// <param name="Cover">Cover meant, if one is.</param>
/// <param name="Word">A name or the user's word.</param>
public sealed record Reason(ReasonKind Kind, FormClass? Form = null, double DistanceM = double.NaN, double ShallowM = double.NaN, double DeepM = double.NaN,
    double SlopeDeg = double.NaN, double ChanceShare = double.NaN, CoverKind? Cover = null, string Word = "");
