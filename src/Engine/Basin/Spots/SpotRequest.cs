using SecondShore.Engine.Basin.Forms;
using SecondShore.Engine.Basin.Passes;
using SecondShore.Engine.Core.Geo;
using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Engine.Basin.Spots;

/// <summary>State of an arm's water, as far as ranking needs it.</summary>
public enum ArmWater
{
    /// <summary>Layered: the belt holds there.</summary>
    Layered,

    /// <summary>Turning over: a bad spell.</summary>
    Turning,

    /// <summary>Mixed and settled again.</summary>
    Settled,
}

/// <summary>An arm's name and state.</summary>
/// <param name="Name">The arm's name.</param>
/// <param name="Water">Its state.</param>
public sealed record ArmState(string Name, ArmWater Water);

/// <summary>A place that the lake's folder names.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Place">Where.</param>
/// <param name="RadiusM">How far the name reaches, m.</param>
public sealed record NamedPlace(string Name, PlanePoint Place, double RadiusM);

/// <summary>All that ranking of spots asks for. Treated as immutable.</summary>
public sealed record SpotRequest
{
    /// <summary>Depths at today's level.</summary>
    public required DepthGrid Grid { get; init; }

    /// <summary>Forms found on a grid of the same frame.</summary>
    public required FormMap Forms { get; init; }

    /// <summary>[Ny*Nx] chance, 0 to 1, that the bottom lies within reach of the thermocline, already scaled by the chance that there is one; null for none.</summary>
    public float[]? ChanceInReach { get; init; }

    /// <summary>Depth of the thermocline, m; null when there is none.</summary>
    public SampleDistribution? ThermoclineM { get; init; }

    /// <summary>Chance that a thermocline stands, 0 to 1: below 1 the answers for a lake without one come in, as much as they may be needed.</summary>
    public double ChanceStratified { get; init; } = 1;

    /// <summary>Cover.</summary>
    public IReadOnlyList<CoverMark> Cover { get; init; } = [];

    /// <summary>[Ny*Nx] index into <see cref="Arms"/> by cell, -1 for none; null when arms are not told apart.</summary>
    public int[]? ArmOfCell { get; init; }

    /// <summary>States of the arms.</summary>
    public IReadOnlyList<ArmState> Arms { get; init; } = [];

    /// <summary>Names of places.</summary>
    public IReadOnlyList<NamedPlace> Names { get; init; } = [];

    /// <summary>Where the wind has come from, degrees; NaN when not known. Wind-blown shallows are worth more without a thermocline.</summary>
    public double WindFromDeg { get; init; } = double.NaN;

    /// <summary>What counts how much.</summary>
    public SpotWeights Weights { get; init; } = SpotWeights.Default;

    /// <summary>How passes are drawn.</summary>
    public PassOptions PassOptions { get; init; } = PassOptions.Default;

    /// <summary>Most spots wanted, 1 to 200.</summary>
    public int MaxCount { get; init; } = 16;
}
