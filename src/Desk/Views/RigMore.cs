namespace SecondShore.Desk.Views;

/// <summary>What a rig is asked with beside depth, speed and line. Empty words and nulls take the usual, as the command line does.</summary>
public sealed record RigMore
{
    /// <summary>Bounds of the weight to judge, g.</summary>
    public const double LeastWeightG = 0.5, MostWeightG = 1000;

    /// <summary>Bounds of how surely it must stay down.</summary>
    public const double LeastSure = 0.5, MostSure = 0.99;

    /// <summary>Head: ball, broad, slim, pointed or flat.</summary>
    public string Head { get; init; } = "";

    /// <summary>Trailer: none, slim, bulky, flapping or swimming.</summary>
    public string Trailer { get; init; } = "";

    /// <summary>Material of the head: lead, tungsten, bismuth, brass, steel, tin or zinc.</summary>
    public string Material { get; init; } = "";

    /// <summary>Bottom: mud, clay, sand, gravel, rock or wood.</summary>
    public string Bottom { get; init; } = "";

    /// <summary>Line: fluorocarbon, nylon or braid.</summary>
    public string LineKind { get; init; } = "";

    /// <summary>Current the way the boat goes, m/s; against it is negative.</summary>
    public double? CurrentMps { get; init; }

    /// <summary>Current across the track, to the left positive, m/s.</summary>
    public double? CrossMps { get; init; }

    /// <summary>Height of the rod tip over the water, m.</summary>
    public double? TipM { get; init; }

    /// <summary>Line out from the rod tip, m.</summary>
    public double? LineOutM { get; init; }

    /// <summary>A weight of which it is also said what it would do, g.</summary>
    public double? WeightG { get; init; }

    /// <summary>How surely it must stay down, 0.5 to 0.99.</summary>
    public double? Sure { get; init; }

    /// <summary>Whether the boat stands and the jig is worked in.</summary>
    public bool WorkedIn { get; init; }

    /// <summary>Whether brush, stumps or timber stand near.</summary>
    public bool Timber { get; init; }

    /// <summary>Whether to choose among the trade's sizes although the box holds jigs.</summary>
    public bool AnySize { get; init; }
}
