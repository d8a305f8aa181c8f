using System.Diagnostics.CodeAnalysis;

namespace SecondShore.Engine.Basin.Gridding;

/// <summary>What became of a survey: a lake, or the reason why there is none. Immutable.</summary>
public sealed record GriddedLake
{
    /// <summary>Whether there is a lake.</summary>
    [MemberNotNullWhen(true, nameof(Grid), nameof(Hypsography))]
    [MemberNotNullWhen(false, nameof(Refusal))]
    public bool IsGridded => Grid is not null;

    /// <summary>Depth below full pool; null when the survey gives none.</summary>
    public DepthGrid? Grid { get; init; }

    /// <summary>Area by depth of <see cref="Grid"/>; null with it.</summary>
    public Hypsography? Hypsography { get; init; }

    /// <summary>Why there is no lake; null when there is one.</summary>
    public Finding? Refusal { get; init; }

    /// <summary>Area of the water that an outline without depths encloses, m2; null where there are depths or no outline.</summary>
    public double? OutlineAreaM2 { get; init; }

    /// <summary>What was done, in sentences.</summary>
    public IReadOnlyList<string> Done { get; init; } = [];

    /// <summary>What had to be assumed, or was left out.</summary>
    public IReadOnlyList<Finding> Assumed { get; init; } = [];

    /// <summary>How depth was drawn between soundings; null where rasters alone gave it.</summary>
    public GriddingMethod? Method { get; init; }

    /// <summary>Root mean square error on left-out soundings, m; null when there were too few to leave any out.</summary>
    public double? LeaveOutRmseM { get; init; }

    internal static GriddedLake Refused(Finding why, IReadOnlyList<Finding>? assumed = null) =>
        new() { Refusal = why, Assumed = assumed ?? [] };
}
