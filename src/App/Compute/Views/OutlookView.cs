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

    /// <summary>That a warm skin of the day lies over it, in words; null without a strong one.</summary>
    public string? WarmSkin { get; init; }

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

    /// <summary>Share of members with a thermocline, 0 to 1.</summary>
    public double ChanceStratified { get; init; }

    /// <summary>Whether neither weather nor a reading is on file, so that all rests on a made-up climate.</summary>
    public bool IsRoughGuess { get; init; }

    /// <summary>Members of the ensemble.</summary>
    public int Members { get; init; }

    /// <summary>The last haze seen, when it still tells something.</summary>
    public HazeSeen? Haze { get; init; }

    /// <summary>What had to be assumed.</summary>
    public required IReadOnlyList<string> Assumed { get; init; }

    /// <summary>Readings not followed.</summary>
    public required IReadOnlyList<string> Doubted { get; init; }

    /// <summary>The reading that would teach most, in a sentence; null where none would teach much.</summary>
    public string? Next { get; init; }

    /// <summary>Readings that cannot be true and play no part.</summary>
    public IReadOnlyList<RefusedView> Refused { get; init; } = [];

    /// <summary>Readings that play no part by their date.</summary>
    public IReadOnlyList<UnusedView> Unused { get; init; } = [];
}

/// <summary>A reading that plays no part in the outlook.</summary>
/// <param name="Source">The record's id, or file and line.</param>
/// <param name="At">When it was made, by its own date.</param>
/// <param name="IsEarlier">Whether it is of an earlier season; else it is dated after the instant that the outlook stands for.</param>
public sealed record UnusedView(string Source, DateTimeOffset At, bool IsEarlier);

/// <summary>A reading that cannot be true.</summary>
/// <param name="Source">The record's id, or file and line.</param>
/// <param name="Why">What is wrong with it, in words that open a sentence.</param>
public sealed record RefusedView(string Source, string Why);

/// <summary>An arm in the list.</summary>
public sealed record ArmView(string Name, LayerState State, Spread? ThermoclineM, Spread? TurnoverInDays);

/// <summary>One measured temperature.</summary>
public sealed record MeasuredPoint(double DepthM, double TempC);

/// <summary>Haze seen on the sounder.</summary>
/// <param name="DepthM">Depth, m.</param>
/// <param name="At">When.</param>
/// <param name="Own">Whether it was kept on this device.</param>
public sealed record HazeSeen(double DepthM, DateTimeOffset At, bool Own);
