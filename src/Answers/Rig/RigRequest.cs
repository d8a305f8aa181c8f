using SecondShore.Engine.Rig;

namespace SecondShore.Answers.Rig;

/// <summary>What is asked of the rig: by hand without any lake, from a stop in the plan, or on the boat.</summary>
public sealed record RigRequest
{
    /// <summary>Depth of the bottom, m.</summary>
    public required double DepthM { get; init; }

    /// <summary>Drag speed over the bottom, m s-1.</summary>
    public required double SpeedMps { get; init; }

    /// <summary>Standard deviation of depth along the pass, m; null assumes a twentieth of the depth.</summary>
    public double? DepthSdM { get; init; }

    /// <summary>Standard deviation of drag speed, m s-1; null assumes 15 %.</summary>
    public double? SpeedSdMps { get; init; }

    /// <summary>Current by height over the bottom; null assumes still water, with doubt.</summary>
    public CurrentProfile? Current { get; init; }

    /// <summary>Standard deviation of the current along the track, m s-1; null assumes 0.02.</summary>
    public double? CurrentSdMps { get; init; }

    /// <summary>Line out from the rod tip, m; null takes twice the depth below the rod tip.</summary>
    public double? LineOutM { get; init; }

    /// <summary>Height of the rod tip over the water, m; null assumes 0.6.</summary>
    public double? TipHeightM { get; init; }

    /// <summary>Kind of bottom.</summary>
    public BottomKind Bottom { get; init; }

    /// <summary>Slope of the bottom along the pass, rad, positive uphill.</summary>
    public double SlopeRad { get; init; }

    /// <summary>How the line moves.</summary>
    public TowMotion Motion { get; init; }

    /// <summary>Water; null is fresh water of 15 degC.</summary>
    public RigWater? Water { get; init; }

    /// <summary>Line; null takes the first owned fluorocarbon, then any owned line, then 15 lb fluorocarbon.</summary>
    public FishingLine? Line { get; init; }

    /// <summary>What the user owns.</summary>
    public Tackle Tackle { get; init; } = Tackle.None;

    /// <summary>Shape, material, skirt and trailer when sizes of the trade are asked for, or nothing is owned.</summary>
    public Jig? Kind { get; init; }

    /// <summary>Whether to choose among the trade's sizes although jigs are owned.</summary>
    public bool AnySize { get; init; }

    /// <summary>A weight to work out beside the chosen one, kg; null for none.</summary>
    public double? AskedKg { get; init; }

    /// <summary>What counts as keeping the bottom.</summary>
    public HoldRule Rule { get; init; } = HoldRule.Usual;

    /// <summary>Whether brush, stumps or timber stand within reach of the pass.</summary>
    public bool NearTimber { get; init; }

    /// <summary>Units of the words, and whether sizes are fractions of an ounce or grams.</summary>
    public UnitSystem Units { get; init; } = UnitSystem.Feet;

    /// <summary>Depths of the table's rows, m; null takes five about the depth, none draws no table.</summary>
    public IReadOnlyList<double>? TableDepthsM { get; init; }

    /// <summary>Speeds of the table's columns, m s-1; null takes usual dragging speeds, none draws no table.</summary>
    public IReadOnlyList<double>? TableSpeedsMps { get; init; }

    /// <summary>Samples of the doubt, 20 to 100000.</summary>
    public int Samples { get; init; } = 200;

    /// <summary>Seed of the samples.</summary>
    public ulong Seed { get; init; } = 1;
}
