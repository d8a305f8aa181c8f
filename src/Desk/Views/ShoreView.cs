using SecondShore.Engine.Core.Numerics;

namespace SecondShore.Desk.Views;

/// <summary>The second shore, its belt and the spots on it. SI throughout.</summary>
public sealed record ShoreView
{
    /// <summary>The thermocline's depth drawn, m; null without one.</summary>
    public Spread? ThermoclineM { get; init; }

    /// <summary>Whether the depth is one the user tries.</summary>
    public bool WhatIf { get; init; }

    /// <summary>Length of the second shore, m.</summary>
    public double LengthM { get; init; }

    /// <summary>Spots, best first; null while the depth is only being tried and the places were not ranked anew.</summary>
    public IReadOnlyList<SpotView>? Spots { get; init; }

    /// <summary>Whether there is a layer; without one the spots are those that need none.</summary>
    public bool IsLayered { get; init; }

    /// <summary>How far the surface lies below full pool in what is drawn, m; null when not known.</summary>
    public double? BelowFullPoolM { get; init; }

    /// <summary>The day that it is drawn for, at the lake.</summary>
    public DateOnly Date { get; init; }
}

/// <summary>A spot.</summary>
public sealed record SpotView
{
    /// <summary>Its letter, A best.</summary>
    public required string Letter { get; init; }

    /// <summary>Its id within the answer.</summary>
    public required string Id { get; init; }

    /// <summary>The lake's name for it, else the form with where it lies.</summary>
    public required string Name { get; init; }

    /// <summary>Bottom form in words.</summary>
    public required string Form { get; init; }

    /// <summary>Place in the lake's plane, m.</summary>
    public required double XM { get; init; }

    /// <summary>Place in the lake's plane, m.</summary>
    public required double YM { get; init; }

    /// <summary>Depth of the bottom, m.</summary>
    public required double DepthM { get; init; }

    /// <summary>Chance that the bottom there lies within reach of the thermocline, 0 to 1; 0 where there is no layer.</summary>
    public required double Chance { get; init; }

    /// <summary>Why, in sentences.</summary>
    public required IReadOnlyList<string> Reasons { get; init; }

    /// <summary>The pass in words; empty without one.</summary>
    public string PassWords { get; init; } = "";
}
