using SecondShore.Engine.Core.Numerics;
using SecondShore.Engine.Season;

namespace SecondShore.App.Compute.Views;

/// <summary>The outlook as the page shows it. SI throughout.</summary>
public sealed record OutlookView
{
    /// <summary>The instant it stands for.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>State of the lake.</summary>
    public required LayerState State { get; init; }

    /// <summary>Thermocline depth, m; null without one.</summary>
    public Spread? ThermoclineM { get; init; }

    /// <summary>Depth below which oxygen is likely too little, m; null when there is enough.</summary>
    public Spread? OxygenFloorM { get; init; }

    /// <summary>Surface temperature, degC.</summary>
    public Spread SurfaceTempC { get; init; }

    /// <summary>Days from <see cref="At"/> to turnover; null when none is seen.</summary>
    public Spread? TurnoverInDays { get; init; }

    /// <summary>Members' days to turnover, for the bars.</summary>
    public IReadOnlyList<double> TurnoverDays { get; init; } = [];

    /// <summary>Depths of the profile, m.</summary>
    public required double[] DepthM { get; init; }

    /// <summary>Temperatures now, degC.</summary>
    public required Spread[] TempC { get; init; }

    /// <summary>What was measured near this time: depth m, temperature degC.</summary>
    public IReadOnlyList<MeasuredPoint> Measured { get; init; } = [];

    /// <summary>First day of the course.</summary>
    public required DateOnly FirstDay { get; init; }

    /// <summary>Daily course: median temperatures, [days * depths].</summary>
    public required float[] SeasonTempC { get; init; }

    /// <summary>Daily course: thermocline, m; null on days without one.</summary>
    public required Spread?[] SeasonThermoclineM { get; init; }

    /// <summary>Arms, deepest first.</summary>
    public required IReadOnlyList<ArmView> Arms { get; init; }

    /// <summary>Why: one sentence without its full stop, lower case start.</summary>
    public string Because { get; init; } = "";

    /// <summary>What had to be assumed.</summary>
    public required IReadOnlyList<string> Assumed { get; init; }

    /// <summary>Readings not followed.</summary>
    public required IReadOnlyList<string> Doubted { get; init; }
}

/// <summary>An arm in the list.</summary>
public sealed record ArmView(string Name, LayerState State, Spread? ThermoclineM, Spread? TurnoverInDays);

/// <summary>One measured temperature.</summary>
public sealed record MeasuredPoint(double DepthM, double TempC);
