using SecondShore.Engine.Core.Geo;

namespace SecondShore.Formats.Lake;

/// <summary>What a log row tells.</summary>
public enum LogKind
{
    /// <summary>Time spent fishing a place in one way.</summary>
    Effort,

    /// <summary>A bite not landed.</summary>
    Bite,

    /// <summary>A fish.</summary>
    Fish,

    /// <summary>Hung up, with or without loss.</summary>
    Snag,

    /// <summary>Nothing here: a blank, with its effort.</summary>
    Nothing,

    /// <summary>A remark.</summary>
    Note,
}

/// <summary>One row of log.csv in SI; null or empty where the row says nothing. Immutable.</summary>
public sealed record LogRow
{
    /// <summary>Line in the file, from 1; 0 for a row not yet filed.</summary>
    public int Line { get; init; }

    /// <summary>The row's own id; empty when it has none.</summary>
    public string Id { get; init; } = "";

    /// <summary>Id of an earlier row that this one corrects; empty for none.</summary>
    public string Replaces { get; init; } = "";

    /// <summary>When it happened, or when the effort began.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>What it tells.</summary>
    public required LogKind Kind { get; init; }

    /// <summary>How long the effort lasted, minutes.</summary>
    public double? Minutes { get; init; }

    /// <summary>How many (bites, fish, snags); 1 when not given.</summary>
    public int Count { get; init; } = 1;

    /// <summary>Where.</summary>
    public GeoPoint? Place { get; init; }

    /// <summary>Name or id of the spot.</summary>
    public string Spot { get; init; } = "";

    /// <summary>Bottom form at the place.</summary>
    public string Form { get; init; } = "";

    /// <summary>Depth of the bottom, m.</summary>
    public double? BottomDepthM { get; init; }

    /// <summary>Depth of the step (haze) on the sounder, m.</summary>
    public double? StepDepthM { get; init; }

    /// <summary>Surface temperature, degC.</summary>
    public double? SurfaceTempC { get; init; }

    /// <summary>Secchi depth, m.</summary>
    public double? SecchiM { get; init; }

    /// <summary>Wind, m s-1.</summary>
    public double? WindMps { get; init; }

    /// <summary>Where the wind came from, degrees.</summary>
    public double? WindFromDeg { get; init; }

    /// <summary>Sky in words.</summary>
    public string Sky { get; init; } = "";

    /// <summary>Bait seen, in words.</summary>
    public string Bait { get; init; } = "";

    /// <summary>Jig, by its name in tackle.json.</summary>
    public string Jig { get; init; } = "";

    /// <summary>Weight of the jig, g.</summary>
    public double? JigWeightG { get; init; }

    /// <summary>Trailer, by its name in tackle.json.</summary>
    public string Trailer { get; init; } = "";

    /// <summary>Colour family.</summary>
    public string Colour { get; init; } = "";

    /// <summary>Line, by its name in tackle.json.</summary>
    public string FishingLine { get; init; } = "";

    /// <summary>Way of presenting: drag, hop, swim, fall.</summary>
    public string Presentation { get; init; } = "";

    /// <summary>Speed of the drag, m s-1.</summary>
    public double? SpeedMps { get; init; }

    /// <summary>Species.</summary>
    public string Species { get; init; } = "";

    /// <summary>Length of the fish, m.</summary>
    public double? FishLengthM { get; init; }

    /// <summary>Weight of the fish, g.</summary>
    public double? FishWeightG { get; init; }

    /// <summary>The user's words.</summary>
    public string Note { get; init; } = "";
}
