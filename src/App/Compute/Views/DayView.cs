using SecondShore.Engine.Core.Numerics;

namespace SecondShore.App.Compute.Views;

/// <summary>A day's plan. SI throughout.</summary>
public sealed record DayView
{
    /// <summary>The day.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>The ramp.</summary>
    public required string Ramp { get; init; }

    /// <summary>When to launch.</summary>
    public required DateTimeOffset Launch { get; init; }

    /// <summary>When to be home.</summary>
    public required DateTimeOffset Home { get; init; }

    /// <summary>Stops in order.</summary>
    public required IReadOnlyList<StopView> Stops { get; init; }

    /// <summary>Length of the way on the water, m.</summary>
    public double RouteM { get; init; }

    /// <summary>Thermocline depth that day, m.</summary>
    public Spread? ThermoclineM { get; init; }

    /// <summary>The plan in words.</summary>
    public IReadOnlyList<string> Words { get; init; } = [];

    /// <summary>Cautions that bear on the plan.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>Wind by hour.</summary>
    public IReadOnlyList<HourView> Hours { get; init; } = [];

    /// <summary>What had to be assumed.</summary>
    public IReadOnlyList<string> Assumed { get; init; } = [];

    /// <summary>What the chart draws.</summary>
    public RouteChart? Chart { get; init; }
}

/// <summary>A stop.</summary>
public sealed record StopView(string Letter, string Name, double XM, double YM, double DepthM, DateTimeOffset Arrive, DateTimeOffset Leave, string Rig, string Pass, string Why);

/// <summary>An hour's wind.</summary>
public sealed record HourView(DateTimeOffset At, double WindMps, double? GustMps, double? FromDeg, bool Dark);

/// <summary>The way and the passes: x, y pairs in the lake's plane.</summary>
public sealed record RouteChart(IReadOnlyList<IReadOnlyList<double>> Legs, IReadOnlyList<PassMark> Passes, string Next);
