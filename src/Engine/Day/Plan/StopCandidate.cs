using SecondShore.Engine.Core.Geo;

namespace SecondShore.Engine.Day;

/// <summary>A place the plan may stop at. Immutable.</summary>
public sealed record StopCandidate
{
    /// <summary>The spot's id.</summary>
    public required string Id { get; init; }

    /// <summary>Letter on the chart; A is the best spot, and letters never change with the plan.</summary>
    public required string Letter { get; init; }

    /// <summary>Name in words, such as <c>Kiln Bluff</c>.</summary>
    public required string Name { get; init; }

    /// <summary>Where fishing begins: the start of the pass.</summary>
    public required PlanePoint Place { get; init; }

    /// <summary>Where it ends; null where it began.</summary>
    public PlanePoint? EndPlace { get; init; }

    /// <summary>The pass to drag along, from <see cref="Place"/> on; empty for a single place.</summary>
    public IReadOnlyList<PlanePoint> Pass { get; init; } = [];

    /// <summary>Depth of the bottom to fish, m.</summary>
    public required double DepthM { get; init; }

    /// <summary>Expected bites per hour by time, undisturbed.</summary>
    public required RateTable Bites { get; init; }

    /// <summary>Doubt of the rate as a share of it (standard deviation over mean); 0.7 when nothing is known.</summary>
    public double RateDoubtShare { get; init; } = 0.7;

    /// <summary>How fast a place tires while it is fished, per hour: the rate falls as e to the minus this times hours.</summary>
    public double TiringPerH { get; init; } = 0.6;

    /// <summary>Fished already today, H: a replan goes on where the place was left.</summary>
    public double FishedH { get; init; }

    /// <summary>Shortest stay worth a stop, s.</summary>
    public double LeastStayS { get; init; } = 1200;

    /// <summary>Bites per hour if the lake has turned overnight; null takes a third of <see cref="Bites"/>.</summary>
    public RateTable? BitesIfMixed { get; init; }

    /// <summary>Kind of bottom, such as <c>bluff end</c>: practice covers kinds.</summary>
    public string Form { get; init; } = "";

    /// <summary>Chance that the bottom lies within reach of the thermocline, 0 to 1.</summary>
    public double ChanceInReach { get; init; } = 0.5;

    /// <summary>Name of the rod or slot to fish it with; null leaves it open.</summary>
    public string? RigSlot { get; init; }

    /// <summary>How to fish it, such as <c>27 ft, pass west, 0.6 mph</c>.</summary>
    public string How { get; init; } = "";

    /// <summary>The first reason in words, without 'because'.</summary>
    public string Why { get; init; } = "";
}
