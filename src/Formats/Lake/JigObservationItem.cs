namespace SecondShore.Formats.Lake;

/// <summary>Something the user saw of a jig, as filed under <c>observations</c>.</summary>
public sealed record JigObservationItem
{
    /// <summary>What was seen: one of <see cref="Kinds"/>.</summary>
    public required string Kind { get; init; }

    /// <summary>Depth, m.</summary>
    public required double DepthM { get; init; }

    /// <summary>Drag speed over the bottom, m s-1; null for a fall.</summary>
    public double? SpeedMps { get; init; }

    /// <summary>Line out from the rod tip, m; null for a fall.</summary>
    public double? LineOutM { get; init; }

    /// <summary>Current along the track, m s-1, positive the way the boat goes; null is still water.</summary>
    public double? CurrentMps { get; init; }

    /// <summary>Time of a fall on slack line, s; null otherwise.</summary>
    public double? Seconds { get; init; }

    /// <summary>Name of the line it was seen on; empty is the first.</summary>
    public string LineName { get; init; } = "";

    /// <summary>When, as the user wrote it.</summary>
    public string Time { get; init; } = "";

    /// <summary>The user's words.</summary>
    public string Note { get; init; } = "";

    /// <summary>Known kinds: the jig just leaves the bottom, held it, was off it, or took so long to fall.</summary>
    public static IReadOnlyList<string> Kinds { get; } = ["leaves_bottom", "holds_bottom", "off_bottom", "fall"];
}
