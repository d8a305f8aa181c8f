using System.Globalization;
using SecondShore.Engine.Core.Geo;
using SecondShore.Records;

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

    /// <summary>Bait or fish seen on the sounder.</summary>
    Sighting,

    /// <summary>Takes the row it replaces back without putting another in its place.</summary>
    Withdrawn,
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

    /// <summary>Bites that an effort drew, for those who log by the stretch; null when bites have rows of their own.</summary>
    public int? Bites { get; init; }

    /// <summary>Where.</summary>
    public GeoPoint? Place { get; init; }

    /// <summary>How far off the place may be, m.</summary>
    public double? AccuracyM { get; init; }

    /// <summary>Name or id of the spot.</summary>
    public string Spot { get; init; } = "";

    /// <summary>Number of the pass at the spot, from 1.</summary>
    public int? Pass { get; init; }

    /// <summary>Bottom form at the place.</summary>
    public string Form { get; init; } = "";

    /// <summary>Depth of the bottom, m.</summary>
    public double? BottomDepthM { get; init; }

    /// <summary>Depth of the step (haze) on the sounder, m.</summary>
    public double? StepDepthM { get; init; }

    /// <summary>Depth of the thermocline at that place and hour as the tool reckoned it, m: no reading.</summary>
    public double? LayerDepthM { get; init; }

    /// <summary>Surface temperature, degC.</summary>
    public double? SurfaceTempC { get; init; }

    /// <summary>Secchi depth, m.</summary>
    public double? SecchiM { get; init; }

    /// <summary>Wind, m s-1.</summary>
    public double? WindMps { get; init; }

    /// <summary>Where the wind came from, degrees.</summary>
    public double? WindFromDeg { get; init; }

    /// <summary>Hours since the wind turned by more than 45 degrees or doubled, H.</summary>
    public double? SinceWindChangeH { get; init; }

    /// <summary>Sky in words.</summary>
    public string Sky { get; init; } = "";

    /// <summary>Bait seen, in words.</summary>
    public string Bait { get; init; } = "";

    /// <summary>What the sounder showed: bait or fish; empty for nothing said.</summary>
    public string Sighted { get; init; } = "";

    /// <summary>Its depth, m.</summary>
    public double? SightedDepthM { get; init; }

    /// <summary>Where it stood: bottom, cover or layer.</summary>
    public string SightedWhere { get; init; } = "";

    /// <summary>What the fish had eaten, such as crayfish.</summary>
    public string Ate { get; init; } = "";

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

    /// <summary>What the one rule of standing asks of the row.</summary>
    public EntryLink Link => new(Id, Replaces, Kind == LogKind.Withdrawn, At.UtcDateTime.ToString("O", CultureInfo.InvariantCulture));

    /// <summary>The rows that hold, in the order given: one of each entry, none of those taken back.</summary>
    public static IReadOnlyList<LogRow> Standing(IReadOnlyList<LogRow> rows)
    {
        HashSet<LogRow> standing = new(StandingRule.Of(rows, row => row.Link), ReferenceEqualityComparer.Instance);
        return [.. rows.Where(standing.Contains)];
    }
}
